export type { PalletSample } from './pallet-sample.ts';
export { type Cluster, type ClusterEstimate, type NoEstimate, twoStageMean } from './clusters.ts';
export { type MeanEstimate, type GradeEstimate, estimateMean, estimateGrade } from './two-stage.ts';
export {
  type GroupComparison,
  type NoComparison,
  oneWayRandomEffects,
  comparePallets,
  intraclassCorrelationAtMost
} from './between-pallets.ts';
export { type UnseenMean, type NoUnseenMean, meanOfUnseen } from './unseen-groups.ts';
export { type OutlierPallet, outlierPallets } from './outlier-pallets.ts';
export { type OrderedRow, type OrderedFit, orderedRegression } from './ordered-regression.ts';
export {
  type SpotCheck,
  type Hand,
  type UnknownHand,
  FEWEST_CHECKS_A_PILE,
  learnHand,
  logPileChances
} from './hand.ts';
export { tapsBetweenChecks } from './spot-checks.ts';
export { tapPosterior } from './tap-posterior.ts';
export {
  type TappedPallet,
  type DoubleSample,
  type NoDoubleSample,
  doubleSample
} from './double-sampling.ts';
export {
  type DoubleSampledGrade,
  type DoubleSampledMean,
  gradeByDoubleSample,
  meanByDoubleSample
} from './double-sampling-figures.ts';
export {
  type AdvisedSample,
  type SampleAdvice,
  type FirstSample,
  sampleAdvice
} from './sample-advice.ts';
export type { GaugeReadings, NoGaugeStudy } from './gauge-readings.ts';
export { type AverageRangeStudy, averageRangeStudy } from './gauge-average-range.ts';
export { type VarianceLine, type AnovaStudy, anovaStudy } from './gauge-anova.ts';
export { FEWEST_FOR_DRIFT, type PalletSince, type Drift, stockDrift } from './drift.ts';
