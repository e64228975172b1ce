import type { PalletStock, Plan } from '$lib/engine/courses';
import { largestRemainder } from '$lib/engine/grading';
import type { PlanGround } from './plan-request.ts';

/** Stands for the place where slate-and-a-halves are kept, which belong to no pallet. */
export const WIDE_STORE = 'slate-and-a-halves';

/**
 * What each pallet still has on each pile: the pallets' shares of the stock, worn down evenly to
 * what is left after laying and losses. Slate-and-a-halves stand in a store of their own.
 *
 * Whole numbers that sum to each pile, where any pallet is known to feed it.
 */
export function palletsForDraw({ stock, left }: PlanGround, plan: Plan): PalletStock[] {
  const ofPile = left.map(({ slates }, index) => {
    const weights = stock.pallets.map(({ slatesOfPile }) => slatesOfPile[index]);
    return weights.some((share) => share > 0)
      ? largestRemainder(weights, slates)
      : weights.map(() => 0);
  });
  return [
    ...stock.pallets.map(({ palletId }, place) => ({
      palletId,
      slates: ofPile.map((shares) => shares[place]),
      slateAndAHalves: ofPile.map(() => 0)
    })),
    {
      palletId: WIDE_STORE,
      slates: ofPile.map(() => 0),
      slateAndAHalves: plan.piles.map(({ slateAndAHalves }) => slateAndAHalves)
    }
  ];
}
