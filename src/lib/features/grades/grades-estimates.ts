/**
 * What the Grades screen reckons with distributions: a module of its own, so that the first paint
 * does without them. Import it with `await import()` only.
 */
import {
  type GradeEstimate,
  type NoEstimate,
  type PalletSample,
  comparePallets,
  estimateGrade,
  estimateMean,
  outlierPallets
} from '$lib/engine/statistics';
import { type ThicknessInterval, gradeIntervals } from '$lib/engine/thickness';

export { type SorterHand, handsOf } from '$lib/job/sorted';
export { type TapsAndGauge, tapsAndGauge } from '$lib/job/sorted';
export { type TwistOfJob, twistOf } from '$lib/job/sorted';
export { type AsSorted, sortedByGauge, sortedByHands } from './grades-as-sorted.ts';
export {
  anovaStudy,
  averageRangeStudy,
  gradeByDoubleSample,
  meanByDoubleSample,
  sampleAdvice,
  stockDrift
} from '$lib/engine/statistics';

/** Estimated slates of each pile, thickest first, with 95 % intervals; or what is missing. */
export function pileEstimates(
  samples: readonly PalletSample[],
  thresholdsMm: readonly number[]
): (GradeEstimate | NoEstimate)[] {
  return gradeIntervals(thresholdsMm).map((interval) => estimateGrade(samples, interval));
}

/** Estimated slates of the stock in each bar of a histogram; undefined where nothing tells. */
export function barEstimates(
  samples: readonly PalletSample[],
  bars: readonly ThicknessInterval[]
): ({ low: number; high: number } | undefined)[] {
  return bars.map((bar) => {
    const estimate = estimateGrade(samples, bar);
    return estimate.ok ? { low: estimate.countLow, high: estimate.countHigh } : undefined;
  });
}

/** Mean of the whole stock, pallets compared, and those that stand out. */
export function palletsCompared(samples: readonly PalletSample[]) {
  return {
    mean: estimateMean(samples),
    compared: comparePallets(samples),
    odd: outlierPallets(samples)
  };
}
