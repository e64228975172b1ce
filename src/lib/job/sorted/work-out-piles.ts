import type { JobView } from '$lib/journal';
import type { PilesWorkedOut } from '../piles-worked-out.ts';
import { kicksOf } from '../plan-request.ts';
import { roofLayoutOf } from '../roof-of.ts';
import { stockOf } from '../stock.ts';
import { createPilesAsSorted } from './piles-as-sorted.ts';

/** Works out what of a plan's ground takes long: for the worker, from a copy of the view. */
export function workOutPiles(view: JobView): PilesWorkedOut {
  const stock = stockOf(view);
  const sorted = createPilesAsSorted()(view, stock);
  return { stock, roof: roofLayoutOf(view), sorted, kicks: kicksOf(view, sorted.bins) };
}
