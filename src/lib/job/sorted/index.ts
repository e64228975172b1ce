export { handKey } from './grade-keys.ts';
export { tapsAndGauge, type TapsAndGauge } from './taps-and-gauge.ts';
export { courseNeeds, groundOf, samplesOf, slatesOf, weightedSpread } from './grades-ground.ts';
export { handsOf, type SorterHand } from './grades-hands.ts';
export { sampleAndSince, sortedUnder, type SortedUnder } from './grades-sorted.ts';
export {
  breakagesOf,
  handSdMm,
  heldRiskOf,
  pileCounts,
  roofPlans,
  runOutChances
} from './pile-counts.ts';
export { thicknessOfPiles } from './thickness-of-piles.ts';
export { twistOf, type TwistOfJob } from './twist.ts';
export { workOutPiles } from './work-out-piles.ts';
export { createPilesAsSorted, pilesAsSorted, type PilesAsSorted } from './piles-as-sorted.ts';
