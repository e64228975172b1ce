import { printMark } from '$lib/app';
import type { OfferedSlate } from '$lib/job';
import { tallyPallets } from '$lib/job';
import { type BodyOf, type JobView, type Setting, partOf } from '$lib/journal';

/** A mark of all that a claim rests on: the order, the pallets, lists, slates that judge and stacks. */
export function groundMark(view: JobView, judging: readonly OfferedSlate[]): string {
  const { delivery, draws, stacks } = partOf(view, 'job');
  return printMark([
    delivery.at(-1)?.value,
    tallyPallets(view).map(({ palletId, label, slates }) => [palletId, label, slates]),
    draws.map(({ id }) => id),
    stacks.map(({ id }) => id),
    judging.map(({ id }) => id)
  ]);
}

/**
 * Whether what a claim rests on is another than when it was signed. Where an older release signed, only
 * what came later is known, not what was taken back.
 */
export function isGroundChanged(
  signed: Setting<BodyOf<'verdictSigned'>>,
  view: JobView,
  judging: readonly OfferedSlate[]
): boolean {
  const { ground } = signed.value;
  if (ground) return ground !== groundMark(view, judging);
  const { delivery, draws, stacks } = partOf(view, 'job');
  return [...delivery, ...draws, ...stacks, ...judging].some(({ id }) => id > signed.id);
}
