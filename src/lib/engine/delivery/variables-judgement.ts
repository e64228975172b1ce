import betaCdf from '@stdlib/stats-base-dists-beta-cdf';
import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { requirePositive } from './requirements.ts';
import type { VariablesPlan } from './variables-plan.ts';
import { crossingOfRising } from './root.ts';

/** Limits a thickness must lie between, in the unit of the readings. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

/** How much of the lot is estimated to lie beyond each limit, 0 to 1. */
export interface ShareOutside {
  readonly below: number;
  readonly above: number;
  readonly total: number;
}

/**
 * The estimate without bias, of least variance, of the share of a normal lot beyond one limit.
 *
 * @param index distance of the limit from the mean in sample SDs (Q), positive when the mean is
 *   inside; ±Infinity is allowed and stands for an SD of 0
 * @param sampleSize readings behind the mean and SD, at least 3
 * @returns 0 to 1; exactly 0 when the limit is farther away than such a sample can tell
 *
 * Definition: I_z(n/2 − 1, n/2 − 1) with z = ½ − ½·Q·√n/(n − 1), z kept within 0 and 1.
 * Source: MIL-STD-414 / ANSI Z1.9 (standard deviation method).
 * @throws EngineError `not-whole`, `out-of-range` for fewer than 3 readings; `not-finite` when the
 *   index is NaN
 * @example shareBeyond(1.59, 5) // 0.02187090
 */
export function shareBeyond(index: number, sampleSize: number): number {
  requireWhole(sampleSize, 3, 'sample size');
  if (Number.isNaN(index)) throw new EngineError('not-finite', 'quality index is NaN');
  const z = 0.5 - (0.5 * index * Math.sqrt(sampleSize)) / (sampleSize - 1);
  if (z <= 0) return 0;
  if (z >= 1) return 1;
  const shape = sampleSize / 2 - 1;
  return betaCdf(z, shape, shape);
}

function estimate(
  mean: number,
  sd: number,
  sampleSize: number,
  limits: Limits,
  round: (index: number) => number
): ShareOutside {
  const inSds = (distance: number): number =>
    sd > 0 ? round(distance / sd) : distance >= 0 ? Infinity : -Infinity;
  const below = shareBeyond(inSds(mean - limits.low), sampleSize);
  const above = shareBeyond(inSds(limits.high - mean), sampleSize);
  return { below, above, total: Math.min(1, below + above) };
}

/**
 * Estimated share of a normal lot outside two limits, from the mean and SD of a sample.
 *
 * @param sd sample SD (n − 1), 0 or more; with an SD of 0 the share is 0 or 1
 * @param round what to do to each quality index before it is used; nothing by default. The
 *   standard's worked examples round to two decimals.
 * @throws EngineError `wrong-order` when the limits are not low then high
 */
export function estimateShareOutside(
  mean: number,
  sd: number,
  sampleSize: number,
  limits: Limits,
  round: (index: number) => number = (index) => index
): ShareOutside {
  requireFinite(mean, 'mean');
  requireFinite(sd, 'SD');
  if (sd < 0) throw new EngineError('out-of-range', `SD is ${sd}; give 0 or more`);
  if (!(limits.low < limits.high))
    throw new EngineError('wrong-order', `limits ${limits.low} to ${limits.high}`);
  return estimate(mean, sd, sampleSize, limits, round);
}

/** What the variables plan says of a sample. */
export interface VariablesJudgement {
  readonly accepted: boolean;
  readonly mean: number;
  readonly sd: number;
  readonly sampleSize: number;
  readonly shareOutside: ShareOutside;
  readonly allowedShare: number;
}

/**
 * Judges a sample of readings by a variables plan with a limit on either side.
 *
 * The rule assumes that thickness is near normal in the lot; a histogram beside it shows whether
 * that is fair.
 *
 * @param readings one thickness per slate, in the unit of the limits, at least 3, any order, not
 *   modified. More or fewer than the plan's sample are judged by the plan's allowed share and the
 *   actual number; the caller says so.
 * @returns `too-few` below 3 readings
 * @throws EngineError `not-finite`, `wrong-order`
 *
 * The result does not depend on the order of the readings, to the last bit.
 * Source: MIL-STD-414 / ANSI Z1.9, accept when the estimated share outside is at most M.
 * @example
 * judgeByVariables([197, 188, 184, 205, 201], { low: 180, high: 209 }, plan)
 * // mean 195, SD 8.803408, 2.799 % outside
 */
export function judgeByVariables(
  readings: readonly number[],
  limits: Limits,
  plan: Pick<VariablesPlan, 'allowedShare'>,
  round?: (index: number) => number
):
  | { readonly ok: true; readonly judgement: VariablesJudgement }
  | { readonly ok: false; readonly reason: 'too-few' } {
  const sampleSize = readings.length;
  if (sampleSize < 3) return { ok: false, reason: 'too-few' };
  const { mean, sd } = meanAndSd(readings);
  const shareOutside = estimateShareOutside(mean, sd, sampleSize, limits, round);
  return {
    ok: true,
    judgement: {
      accepted: shareOutside.total <= plan.allowedShare,
      mean,
      sd,
      sampleSize,
      shareOutside,
      allowedShare: plan.allowedShare
    }
  };
}

/**
 * Mean and SD (n − 1) of readings in any order, summed smallest first so that the order is nothing.
 * The SD of one reading, and both of none, are given as 0.
 *
 * @throws EngineError `not-finite` for a reading that is no number
 */
export function meanAndSd(readings: readonly number[]): { mean: number; sd: number } {
  const sorted = Float64Array.from(readings).sort();
  let mean = 0;
  let squares = 0;
  for (const [index, value] of sorted.entries()) {
    requireFinite(value, 'reading');
    const step = value - mean;
    mean += step / (index + 1);
    squares += step * (value - mean);
  }
  return { mean, sd: sorted.length > 1 ? Math.sqrt(squares / (sorted.length - 1)) : 0 };
}

/**
 * The largest SD at which a sample with this mean would still be accepted: what would have to
 * change for the variables plan to say the other thing.
 *
 * @returns the SD, in the unit of the limits; 0 when the mean itself lies on or beyond a limit, so
 *   that no SD is small enough
 * @throws EngineError `not-finite`, `out-of-range` unless the allowed share is above 0
 */
export function largestAcceptableSd(
  mean: number,
  sampleSize: number,
  limits: Limits,
  allowedShare: number
): number {
  requirePositive(allowedShare, 'allowed share');
  if (!(mean > limits.low && mean < limits.high)) return 0;
  const excess = (sd: number): number =>
    estimateShareOutside(mean, sd, sampleSize, limits).total - allowedShare;
  let high = limits.high - limits.low;
  while (excess(high) < 0 && high < 1e6 * (limits.high - limits.low)) high *= 2;
  return crossingOfRising(excess, 0, high);
}
