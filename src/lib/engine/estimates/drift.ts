import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { type ThicknessBins, momentsOfBins } from '../thickness/index.ts';
import { requireConfidence } from './confidence.ts';

/** Fewest slates on either side of the comparison. */
export const FEWEST_FOR_DRIFT = 10;

/** Where the bound on the running mean is tightest, in sorted slates. */
const TIGHTEST_AT = 100;

/** How far the stock being sorted lies from the sample that set the grades. */
export interface Drift {
  readonly ok: true;
  /** Whether the interval excludes 0: the stock has drifted. */
  readonly drifted: boolean;
  /** Mean of the sorted slates less mean of the sample, mm; above 0 where the stock runs thicker. */
  readonly shiftMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * Whether the stock has drifted from the sample the grades came from, to be asked as often as one
 * likes while sorting goes on.
 *
 * @param sample slates of the sample by thickness; not modified
 * @param sorted gauged slates that were sorted since, by thickness, the sample's not among them; not
 * modified
 * @param confidence that a stock without drift is never called drifted, however often this is asked
 * (0.95 unless given)
 * @returns the shift with an interval that holds at all times together; or `too-few` where either
 * side has fewer than ten slates or the slates do not differ
 *
 * Definition: half of the allowed error goes to a t interval for the sample's mean, half to the
 * normal-mixture confidence sequence of the running mean,
 * s √(2(nρ² + 1)/(n²ρ²) · log(√(nρ² + 1)/(α/2))), tightest at 100 slates, with s the larger of
 * the two SDs (Robbins 1970; Waudby-Smith et al., asymptotic confidence sequences; from memory).
 * Slates must come in no order of thickness: a pallet that differs from the sampled ones is a drift,
 * and is meant to be seen. Cost: linear in the bins.
 *
 * @throws EngineError `out-of-range` for the confidence
 * @example
 * // sample 5 and 6 mm × 20 each, sorted 6 and 7 mm × 30 each: shift 1 mm, between 0.597 and 1.403 mm
 * stockDrift(binsFromPairs([[500, 20], [600, 20]]), binsFromPairs([[600, 30], [700, 30]]));
 */
export function stockDrift(
  sample: ThicknessBins,
  sorted: ThicknessBins,
  confidence = 0.95
): Drift | { readonly ok: false; readonly reason: 'too-few' } {
  requireConfidence(confidence);
  const before = momentsOfBins(sample);
  const since = momentsOfBins(sorted);
  if (!before.ok || !since.ok || Math.min(before.count, since.count) < FEWEST_FOR_DRIFT)
    return { ok: false, reason: 'too-few' };
  const sdBefore = before.sdMm ?? 0;
  const sd = Math.max(sdBefore, since.sdMm ?? 0);
  if (sd === 0) return { ok: false, reason: 'too-few' };

  const half = (1 - confidence) / 2;
  const ofSample = (tQuantile(1 - half / 2, before.count - 1) * sdBefore) / Math.sqrt(before.count);
  const reach = ofSample + sd * runningMeanReach(since.count, half);
  const shiftMm = since.meanMm - before.meanMm;
  return {
    ok: true,
    drifted: Math.abs(shiftMm) > reach,
    shiftMm,
    lowMm: shiftMm - reach,
    highMm: shiftMm + reach
  };
}

/** Half-width, in SDs, of a confidence sequence for a running mean after `count` values. */
function runningMeanReach(count: number, error: number): number {
  const budget = -2 * Math.log(error);
  const mixing = (budget + Math.log(budget + 1)) / TIGHTEST_AT;
  const grown = count * mixing + 1;
  return Math.sqrt(((2 * grown) / (count * count * mixing)) * Math.log(Math.sqrt(grown) / error));
}
