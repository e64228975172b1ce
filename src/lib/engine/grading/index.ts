export { kickProbabilityWithin, kickProbabilityBetween } from './kick-probability.ts';
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
