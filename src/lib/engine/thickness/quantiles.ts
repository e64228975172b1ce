import { EngineError } from '../errors.ts';
import { type ThicknessBins, totalCount } from './bins.ts';
import type { NothingRead } from './moments.ts';

/**
 * Quantiles of a spread of slates: the median, the quarters, the thin and thick twentieths.
 *
 * @param bins slates by thickness; not modified
 * @param shares each from 0 to 1, in any order; not modified
 * @returns one thickness in mm for each share, in the same order; or `empty`
 *
 * Definition: type 7, linear between the order statistics around rank (n − 1)·share counted from 0.
 * With fractional counts the slate of rank r is the one in whose bin the running count passes r.
 * Accuracy: a few units in the last place. Cost: linear in the bins for each share.
 *
 * @throws EngineError `out-of-range` for a share outside 0 to 1 or NaN
 * @example
 * quantilesMm(binsFromPairs([[400, 1], [500, 1], [700, 1], [800, 1]]), [0.25, 0.5]);
 * // { ok: true, quantilesMm: [4.75, 6] }
 */
export function quantilesMm(
  bins: ThicknessBins,
  shares: readonly number[]
): { readonly ok: true; readonly quantilesMm: readonly number[] } | NothingRead {
  for (const share of shares)
    if (!(share >= 0 && share <= 1))
      throw new EngineError('out-of-range', `share is ${share}; give 0 to 1`);
  const count = totalCount(bins);
  if (count === 0) return { ok: false, reason: 'empty' };
  return {
    ok: true,
    quantilesMm: shares.map((share) => {
      const rank = Math.max(0, count - 1) * share;
      const whole = Math.floor(rank);
      const below = slateOfRank(bins, whole);
      if (rank === whole) return below / 100;
      return (below + (rank - whole) * (slateOfRank(bins, whole + 1) - below)) / 100;
    })
  };
}

/** Thickness in hundredths of the slate of a rank counted from 0, thinnest first. */
function slateOfRank(bins: ThicknessBins, rank: number): number {
  let passed = 0;
  for (let bin = 0; bin < bins.counts.length; bin++) {
    passed += bins.counts[bin];
    if (passed > rank) return bins.hundredths[bin];
  }
  return bins.hundredths[bins.hundredths.length - 1];
}
