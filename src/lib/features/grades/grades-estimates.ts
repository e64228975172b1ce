/**
 * What the Grades screen reckons with distributions: a module of its own, so that the first paint
 * does without them. Import it with `await import()` only.
 */
import {
  type PalletSample,
  comparePallets,
  estimateMean,
  outlierPallets
} from '$lib/engine/statistics';

export { type SorterHand, handsOf } from '$lib/job/sorted';
export { type TapsAndGauge, tapsAndGauge } from '$lib/job/sorted';
export { type TwistOfJob, twistOf } from '$lib/job/sorted';
export { type AsSorted, sortedByGauge, sortedByHands } from './grades-as-sorted.ts';
export {
  anovaStudy,
  averageRangeStudy,
  estimateGrade,
  gradeByDoubleSample,
  meanByDoubleSample,
  sampleAdvice,
  stockDrift
} from '$lib/engine/statistics';

/** Mean of the whole stock, pallets compared, and those that stand out. */
export function palletsCompared(samples: readonly PalletSample[]) {
  return {
    mean: estimateMean(samples),
    compared: comparePallets(samples),
    odd: outlierPallets(samples)
  };
}
