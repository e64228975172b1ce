import { own } from '$lib/journal';
import { siblingPallet } from './pallet-of-size.ts';
import { preferences } from './preferences.svelte.ts';

/**
 * Takes another size of a job in hand; this device remembers it. The rest of a mixed pallet comes
 * along: its slates are taken one by one, of any length.
 */
export function takeInHand(jobId: string, sizeId: string): void {
  const { values } = preferences;
  const [current, ...others] = own(values.openPallets, jobId) ?? [];
  const sibling = current === undefined ? undefined : siblingPallet(current, sizeId);
  preferences.set({
    sizeInHand: { ...values.sizeInHand, [jobId]: sizeId },
    ...(sibling !== undefined && {
      openPallets: { ...values.openPallets, [jobId]: [sibling, ...others] }
    })
  });
}
