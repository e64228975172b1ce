import type { JobView } from '$lib/journal';
import { tallyPallets } from './queries.ts';
import { stockOf } from './stock.ts';

/**
 * Slates that left the pallets: put on piles or set aside one by one, and those that a count of the
 * piles found beyond that.
 *
 * @example 40 tapped, then 100 counted on their pile → 100
 */
export function slatesSorted(view: JobView): number {
  const logged = tallyPallets(view).reduce((sum, pallet) => sum + pallet.sorted, 0);
  return logged + slatesFoundByCount(view);
}

/** Slates that counts of the piles found beyond those logged: which pallets gave them is not known. */
export function slatesFoundByCount(view: JobView): number {
  return [...slatesFoundByPile(view).values()].reduce((sum, slates) => sum + slates, 0);
}

/** The same by the number of the pile. */
export function slatesFoundByPile(view: JobView): ReadonlyMap<number, number> {
  return new Map(stockOf(view).piles.map(({ number, unlogged }) => [number, unlogged]));
}
