export { handKey } from './grade-keys.ts';
export { fusedBands, fusedSpread, toFuse, type Fused } from './grades-fused.ts';
export { courseNeeds, groundOf, samplesOf, slatesOf, weightedSpread } from './grades-ground.ts';
export { handsOf, type SorterHand } from './grades-hands.ts';
export { sampleAndSince, sortedUnder, type SortedUnder } from './grades-sorted.ts';
export { handSdMm, pileCounts, reservesWithinRisk, runOutChances } from './pile-counts.ts';
export { createPilesAsSorted, pilesAsSorted, type PilesAsSorted } from './piles-as-sorted.ts';
