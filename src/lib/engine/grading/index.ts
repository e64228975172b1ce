export {
  kickProbabilityBetween,
  kickProbabilityWithin,
  kickProbabilityWithinPiles,
  pileVarianceMm2
} from './kick-probability.ts';
export { FEWEST_PILES, MOST_PILES, requireThresholds, pileOf, splitIntoPiles } from './piles.ts';
export { largestRemainder } from './apportion.ts';
export {
  type NaturalBreaks,
  type NaturalClass,
  type NaturalClasses,
  type TooFewThicknesses,
  naturalBreaks,
  naturalClasses
} from './natural-breaks.ts';
export { type EqualShares, equalShares } from './equal-shares.ts';
export { thresholdBetween } from './threshold-between.ts';
export { type PileEvenness, type KickWindows, kickWindows, pileEvenness } from './kick-windows.ts';
export {
  type CourseNeed,
  type FilledCourses,
  fillWholeCourses,
  usableSlates
} from './whole-courses.ts';
export { type ChanceAbove, misgradedPiles, pileChances } from './misgraded-piles.ts';
export {
  type NothingToLay,
  type RoofToSuit,
  type SuitedThresholds,
  suitTheRoof
} from './suit-the-roof.ts';
export { perfectOrderKickers } from './perfect-order.ts';
export {
  type GradeFigures,
  type GradingGround,
  type Kickers,
  type PileFigures,
  type PileThickness,
  gradeFigures
} from './grade-figures.ts';
export { type CutSpread, type GaugedPallet, crossValidationRound } from './cross-validation.ts';
export {
  ASSUMED_TAPER_SD_MM,
  type KickSoftness,
  kickBySteps,
  kickSoftness,
  stepSdMm
} from './soft-kick.ts';
export { type CutIntoPiles, type CurvePoint, kickerCurve } from './kicker-curve.ts';
export {
  type AgreementTable,
  type AgreementWeights,
  type Kappa,
  type NoKappa,
  agreementFromDisagreement,
  agreementTable,
  weightedKappa
} from './agreement.ts';
export { type HandBias, handBias } from './hand-bias.ts';
export {
  type RegradeAdvice,
  type SlatesToRecheck,
  type SlatesOnPile,
  regradeAdvice
} from './regrade-advice.ts';
