import {
  type ThicknessBins,
  type ThicknessInterval,
  countBetween,
  momentsOfBins,
  totalCount
} from '../thickness/index.ts';
import { requireConfidence } from './confidence.ts';
import type { FusedPallet } from './fuse-pallets.ts';
import type { FusedErrors } from './fused-trials.ts';
import type { PalletSample } from './pallet-sample.ts';
import { estimateGrade } from './two-stage.ts';

/** Slates of a grade by gauge and taps together, with the interval to say aloud. */
export interface FusedGrade {
  /** Share of all slates, 0 to 1. */
  readonly share: number;
  /** Share times all slates; not rounded. */
  readonly count: number;
  /** Whole slates, rounded outward, never fewer than were gauged of the grade. */
  readonly countLow: number;
  /** Whole slates, rounded outward, never more than may still be of the grade. */
  readonly countHigh: number;
}

/** Share below which a grade is taken as not seen at all. */
const NONE = 1e-9;

/** Mean thickness by gauge and taps together, with its interval, mm. */
export interface FusedMean {
  readonly meanMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * Number of the slates of a delivery that belong to a grade, by gauge and taps together.
 *
 * @param pallets every pallet with its gauged slates; not modified
 * @param fused the same pallets with their taps, in the same order; not modified
 * @param errors how far such an estimate strays; not modified
 * @param interval thickness of the grade: its lower bound belongs to it, its upper one does not
 * @param confidence of the interval (0.95 unless given)
 *
 * Definition: pallets weighed by their slates, those of which nothing is known left out. The interval
 * reaches as far to either side of the estimate as `confidence` of the errors in the trials keep
 * within, on the scale arcsin √share, on which a share's scatter does not depend on the share. Of a
 * grade that nobody saw, or that all belong to, no trial can tell how far off that is: its interval is
 * that of {@link estimateGrade}, by the gauge alone.
 * Accuracy: that of the trials' number, and the boundary moved to a bin of theirs. Cost:
 * bins, and trials sorted once.
 *
 * @throws EngineError `out-of-range` for a confidence, `wrong-order` for a band that runs backwards
 * @source symmetric bootstrap interval, Hall 1988, from memory
 * @example
 * fusedGrade(pallets, fused.pallets, errors, { fromMm: 6.5, toMm: Infinity }); // { count: 601.4, countLow: 512, countHigh: 688, … }
 */
export function fusedGrade(
  pallets: readonly PalletSample[],
  fused: readonly FusedPallet[],
  errors: FusedErrors,
  interval: ThicknessInterval,
  confidence = 0.95
): FusedGrade {
  requireConfidence(confidence);
  const share = Math.min(
    1,
    weighed(fused, (bins) => countBetween(bins, interval) / totalCount(bins))
  );
  const [from, to] = [binFrom(errors, interval.fromMm), binFrom(errors, interval.toMm)];
  const width = errors.hundredths.length;
  const strayed = Float64Array.from({ length: errors.trials }, (_, trial) => {
    const inTrial = (shares: Float32Array): number =>
      (from < width ? shares[trial * width + from] : 0) -
      (to < width ? shares[trial * width + to] : 0);
    return angle(inTrial(errors.toldShares)) - angle(inTrial(errors.trueShares));
  });
  const margin = reachOf(strayed, confidence);

  const all = pallets.reduce((sum, { slates }) => sum + slates, 0);
  const seen = pallets.reduce((sum, { bins }) => sum + countBetween(bins, interval), 0);
  const others = pallets.reduce((sum, { bins }) => sum + totalCount(bins), 0) - seen;
  const count = share * all;
  if (share < NONE || share > 1 - NONE) {
    const byGauge = estimateGrade(pallets, interval, confidence);
    if (byGauge.ok) {
      const { countLow, countHigh } = byGauge;
      return { share, count, countLow, countHigh };
    }
  }
  const lowShare = shareAt(angle(share) - margin);
  const highShare = shareAt(angle(share) + margin);
  return {
    share,
    count,
    countLow: Math.min(Math.floor(count), Math.max(seen, Math.floor(all * lowShare))),
    countHigh: Math.max(Math.ceil(count), Math.min(all - others, Math.ceil(all * highShare)))
  };
}

/**
 * Mean thickness of a delivery by gauge and taps together.
 *
 * @param fused every pallet with its taps; not modified
 * @param errors how far such an estimate strays; not modified
 * @param confidence of the interval (0.95 unless given)
 *
 * Definition: pallets weighed by their slates; the estimate and, to either side, as much as
 * `confidence` of the errors in the trials keep within. Cost: bins, and trials sorted once.
 *
 * @throws EngineError `out-of-range` for a confidence
 * @example fusedMean(fused.pallets, errors); // { meanMm: 6.07, lowMm: 6.02, highMm: 6.12 }
 */
export function fusedMean(
  fused: readonly FusedPallet[],
  errors: FusedErrors,
  confidence = 0.95
): FusedMean {
  requireConfidence(confidence);
  const meanMm = weighed(fused, (bins) => {
    const moments = momentsOfBins(bins);
    return moments.ok ? moments.meanMm : 0;
  });
  const margin = reachOf(errors.meanErrorsMm, confidence);
  return { meanMm, lowMm: meanMm - margin, highMm: meanMm + margin };
}

/** A figure of each known pallet, weighed by its slates. */
function weighed(fused: readonly FusedPallet[], figure: (bins: ThicknessBins) => number): number {
  const known = fused.filter(({ bins }) => bins.counts.length > 0);
  const all = known.reduce((sum, { slates }) => sum + slates, 0);
  return known.reduce((sum, { slates, bins }) => sum + (slates / all) * figure(bins), 0);
}

/** First bin of the trials at least so thick, to the nearest edge between bins. */
function binFrom({ hundredths }: FusedErrors, thicknessMm: number): number {
  const bin = hundredths.findIndex((value) => value >= Math.round(thicknessMm * 100));
  return bin < 0 ? hundredths.length : bin;
}

function angle(share: number): number {
  return Math.asin(Math.sqrt(Math.min(1, Math.max(0, share))));
}

function shareAt(at: number): number {
  return Math.sin(Math.min(Math.PI / 2, Math.max(0, at))) ** 2;
}

/** The size that `confidence` of the errors keep within; the k-th of n sizes stands for k / (n + 1). */
function reachOf(errors: Float64Array, confidence: number): number {
  const sizes = errors.map(Math.abs).sort();
  return sizes[Math.min(sizes.length, Math.ceil(confidence * (sizes.length + 1))) - 1];
}
