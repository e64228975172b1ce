import type { RoofLayout } from '$lib/engine/roof';
import { type JobView, type SetAsideReason, palletIds, partOf } from '$lib/journal';
import { setAsideForUndereave } from './set-aside-for-undereave.ts';

/**
 * How many of the undereave slates that a roof takes can come from slates set aside, at most: those
 * that the sorter marked for the undereave row, less any whose reason says that they will not do.
 * They have the width of a slate, so none stands for a slate-and-a-half.
 */
export function undereaveServedAtMost(view: JobView, roof: RoofLayout): number {
  const unfit = setAsideForUndereave(view, roof.slopes[0].undereave)
    .filter(({ use }) => use.use === 'no')
    .map(({ reason }) => reason);
  let marked = 0;
  for (const palletId of palletIds(view))
    for (const [key, slates] of Object.entries(partOf(view, `pallet:${palletId}`).setAside)) {
      const [reason, use] = key.split('|');
      if (use === 'undereave' && !unfit.includes(reason as SetAsideReason)) marked += slates;
    }
  return Math.min(marked, roof.totals.undereaveSlates);
}
