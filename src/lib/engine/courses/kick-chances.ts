import {
  type KickSoftness,
  kickProbabilityBetween,
  kickProbabilityWithin,
  kickProbabilityWithinPiles
} from '../grading/index.ts';
import type { ThicknessBins } from '../thickness/index.ts';
import type { KickChances } from './plan-types.ts';

/**
 * All chances of kicking that a plan is priced with: within each pile, between any two, and beside
 * slate-and-a-halves of a common stock where their thickness is known.
 *
 * @param piles thickness of each pile's slates, thickest pile first; for piles that are sorted with
 * errors, the spread that really stands there. Not modified.
 * @param kickAllowanceMm step between neighbours that is still accepted, mm
 * @param commonStock thickness of the common slate-and-a-halves
 * @param softness how far steps scatter about the difference of two slates; not at all if left out
 *
 * An empty pile makes no joint and has chances of 0; a pile known by one reading takes the mean of
 * the others. Cost: piles² × bins, × bins again with softness.
 */
export function kickChances(
  piles: readonly ThicknessBins[],
  kickAllowanceMm: number,
  commonStock?: ThicknessBins,
  softness?: KickSoftness
): KickChances {
  const within = kickProbabilityWithinPiles(piles, kickAllowanceMm, softness);
  const betweenTwo = (one: ThicknessBins, other: ThicknessBins) =>
    kickProbabilityBetween(one, other, kickAllowanceMm, softness);
  const between = piles.map(() => piles.map(() => 0));
  for (let thick = 0; thick < piles.length; thick++)
    for (let thin = thick + 1; thin < piles.length; thin++) {
      const chance = betweenTwo(piles[thick], piles[thin]);
      between[thick][thin] = between[thin][thick] = chance;
    }
  if (!commonStock) return { within, between };
  return {
    within,
    between,
    common: {
      withPile: piles.map((pile) => betweenTwo(pile, commonStock)),
      within: kickProbabilityWithin(commonStock, kickAllowanceMm, softness)
    }
  };
}

/** Kickers are counted in whole billionths, so that sums and ties of a plan are exact. */
export const BILLIONTHS = 1e9;

/** A chance in whole billionths, to the nearest. */
export function toBillionths(chance: number): number {
  return Math.round(chance * BILLIONTHS);
}

/** The chances of a request in whole billionths. */
export function chancesInBillionths(kicks: KickChances): KickChances {
  return {
    within: kicks.within.map(toBillionths),
    between: kicks.between.map((row) => row.map(toBillionths)),
    ...(kicks.common && {
      common: {
        withPile: kicks.common.withPile.map(toBillionths),
        within: toBillionths(kicks.common.within)
      }
    })
  };
}
