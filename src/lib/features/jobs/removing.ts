import type { Removal } from '$lib/storage';
import { journalStore } from '$lib/app';
import { crewHolding, forgetCrew } from '$lib/app/crew';

/** Why a job stays, or that it is gone. */
export type RemovalAnswer =
  | { readonly kind: 'removed' }
  | { readonly kind: 'only-here' | 'keeper'; readonly entries: number }
  | { readonly kind: 'open-elsewhere' };

/**
 * Removes a job from this device, and all that the device kept of it beside the journal: the link to
 * its crew, half-measured slates, drafts. Refused while anything of it is only here.
 */
export async function removeFromDevice(jobId: string): Promise<RemovalAnswer> {
  const { isShared, isKeeper, numbers } = await crewHolding(jobId);
  const remove = (): Promise<Removal> => journalStore().remove(jobId, numbers);
  // A page that shares the job now would take it in again from the hub.
  const removal = isShared ? await whenUnshared(jobId, remove) : await remove();
  if (!removal) return { kind: 'open-elsewhere' };
  if (!removal.ok) return { kind: isKeeper ? 'keeper' : 'only-here', entries: removal.onlyHere };
  await forgetCrew(jobId);
  forgetDrafts(jobId);
  return { kind: 'removed' };
}

/** Does some work while no page of the device shares the job; undefined where one does. */
async function whenUnshared<T>(jobId: string, work: () => Promise<T>): Promise<T | undefined> {
  if (!('locks' in navigator)) return work();
  return navigator.locks.request(
    `evencourse crew ${jobId}`,
    { ifAvailable: true },
    async (lock): Promise<T | undefined> => (lock ? work() : undefined)
  );
}

/** What was typed or measured and not saved yet is kept under names that end in the job's id. */
function forgetDrafts(jobId: string): void {
  try {
    for (const key of Object.keys(localStorage))
      if (key.startsWith('evencourse.') && key.endsWith(jobId)) localStorage.removeItem(key);
  } catch {
    // Forbidden: then nothing is kept there either.
  }
}
