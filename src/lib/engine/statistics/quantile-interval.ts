import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import { EngineError, requireWhole } from '../errors.ts';
import { requireConfidence } from './confidence.ts';

/** Two readings, counted from the thinnest, that enclose a quantile of the stock. */
export interface RankInterval {
  readonly ok: true;
  /** Ranks from 1 (thinnest) to the number of readings. */
  readonly lowRank: number;
  readonly highRank: number;
  /** Chance that the readings of these ranks enclose the quantile, at least the one asked for. */
  readonly level: number;
}

/**
 * Which two of the sorted readings enclose a quantile of the stock, whatever the shape of its
 * spread.
 *
 * @param count readings, a random sample, at least 1
 * @param share the quantile's share, strictly between 0 and 1
 * @param confidence at least this, between 0 and 1
 * @returns ranks and their exact level; or `too-few` where even the thinnest and thickest readings
 * do not reach it, with the readings that would
 *
 * Definition: the number of readings below the quantile is binomial(count, share), so ranks r < s
 * enclose it with chance P(r ≤ number ≤ s − 1). Each tail is kept to half of what is left, which is
 * the conservative choice. Exact for a continuous spread, on the safe side for readings that tie.
 * Cost: count binomial sums.
 *
 * @throws EngineError `not-whole`, `out-of-range`
 * @source Conover, Practical Nonparametric Statistics (method from memory; figures computed)
 * @example quantileRanks(10, 0.5, 0.95); // ranks 2 and 9, level 0.978515625
 */
export function quantileRanks(
  count: number,
  share: number,
  confidence: number
): RankInterval | { readonly ok: false; readonly reason: 'too-few'; readonly needed: number } {
  requireWhole(count, 1, 'count');
  requireConfidence(confidence);
  if (!(share > 0 && share < 1))
    throw new EngineError('out-of-range', `share is ${share}; give more than 0, below 1`);
  const tail = (1 - confidence) / 2;
  const upTo = (below: number) => binomialCdf(below, count, share);
  let lowRank = 0;
  while (lowRank < count && upTo(lowRank) <= tail) lowRank++;
  let highRank = count + 1;
  while (highRank > 1 && 1 - upTo(highRank - 2) <= tail) highRank--;
  if (lowRank < 1 || highRank > count)
    return { ok: false, reason: 'too-few', needed: fewestReadings(share, tail) };
  return { ok: true, lowRank, highRank, level: upTo(highRank - 1) - upTo(lowRank - 1) };
}

/** Readings from which the thinnest and the thickest leave no more than `tail` on either side. */
function fewestReadings(share: number, tail: number): number {
  return Math.ceil(Math.log(tail) / Math.log(Math.max(share, 1 - share)) - 1e-12);
}

/**
 * Readings after which the extremes of the sample can speak for nearly the whole stock, whatever
 * the shape of its spread.
 *
 * @param share of the stock that is to lie beyond the thinnest reading (one-sided), or between the
 * thinnest and the thickest (two-sided), strictly between 0 and 1
 * @param confidence between 0 and 1
 * @returns the fewest readings, whole
 *
 * Definition: one-sided 1 − shareⁿ, two-sided 1 − n·shareⁿ⁻¹ + (n − 1)·shareⁿ, at least the
 * confidence (Wilks 1941, from memory). Cost: one step a reading.
 *
 * @throws EngineError `out-of-range`
 * @example fewestForTolerance(0.95, 0.95, 'one-sided'); // 59; two-sided 93
 */
export function fewestForTolerance(
  share: number,
  confidence: number,
  sides: 'one-sided' | 'two-sided'
): number {
  requireConfidence(confidence);
  if (!(share > 0 && share < 1))
    throw new EngineError('out-of-range', `share is ${share}; give more than 0, below 1`);
  let count = sides === 'one-sided' ? 1 : 2;
  while (toleranceConfidence(count, share, sides) < confidence) count++;
  return count;
}

/** Confidence that the extremes of `count` readings take in at least `share` of the stock. */
export function toleranceConfidence(
  count: number,
  share: number,
  sides: 'one-sided' | 'two-sided'
): number {
  return sides === 'one-sided'
    ? 1 - share ** count
    : 1 - count * share ** (count - 1) + (count - 1) * share ** count;
}
