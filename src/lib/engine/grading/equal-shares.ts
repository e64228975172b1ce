import { requireWhole } from '../errors.ts';
import type { ThicknessBins } from '../thickness/index.ts';
import { bestPartition } from './best-partition.ts';
import type { TooFewThicknesses } from './natural-breaks.ts';
import { thresholdsAtCuts } from './threshold-between.ts';

export interface EqualShares {
  readonly ok: true;
  /** Bounds between piles, mm, strictly falling. */
  readonly thresholdsMm: readonly number[];
  /** Share of the spread on each pile, thickest first, summing to 1. */
  readonly shares: readonly number[];
}

/**
 * Boundaries that make the piles as near equal in number as the thicknesses allow, for sites where
 * floor space or handling decides.
 *
 * @param bins the spread; not modified
 * @param piles how many piles, 1 or more
 * @returns thresholds in mm, falling, and the share of each pile; or `too-few-thicknesses` where
 * there are fewer different thicknesses than piles
 *
 * Definition: slates of one thickness stay together and no pile is empty; among all such splits the
 * one with the least sum of squared differences between the share of each pile and 1 ÷ piles. Of
 * several such splits the one whose thickest pile is largest, then the next.
 * Accuracy: exact while counts are whole. Cost: piles × bins × log bins.
 *
 * @throws EngineError `not-whole`, `out-of-range` unless the number of piles is whole and 1 or more
 * @example
 * equalShares(binsFromPairs([[500, 2], [600, 1], [700, 1]]), 2); // threshold 5.5 mm, shares ½, ½
 */
export function equalShares(bins: ThicknessBins, piles: number): EqualShares | TooFewThicknesses {
  requireWhole(piles, 1, 'number of piles');
  const distinct = bins.hundredths.length;
  if (distinct < piles) return { ok: false, reason: 'too-few-thicknesses', distinct };

  const upTo = new Float64Array(distinct + 1);
  for (let bin = 0; bin < distinct; bin++) upTo[bin + 1] = upTo[bin] + bins.counts[bin];
  const total = upTo[distinct];
  const firsts = bestPartition(distinct, piles, (first, last) => {
    const surplus = (upTo[last + 1] - upTo[first]) * piles - total;
    return surplus * surplus;
  });
  const shares = firsts.map(
    (first, index) => (upTo[firsts[index + 1] ?? distinct] - upTo[first]) / total
  );
  return {
    ok: true,
    thresholdsMm: thresholdsAtCuts(bins, firsts.slice(1)),
    shares: shares.reverse()
  };
}
