export { kickProbabilityWithin, kickProbabilityBetween } from './kick-probability.ts';
export { FEWEST_PILES, MOST_PILES, requireThresholds, pileOf, splitIntoPiles } from './piles.ts';
export { largestRemainder } from './apportion.ts';
