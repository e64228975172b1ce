export { FIRST_SIZE, setOfSize, sizeOfPallet, sizeProblemsOf } from './size-view.ts';
export { sizesLaidOut, viewOfSize, type SizesLaidOut, type SizesNotLaidOut } from './size-roof.ts';
export { actOfSize } from './size-acts.ts';
export { type SizeToLay, longerBelow, misplacedSizes, sizesToLay } from './size-order.ts';
export { type LaidElsewhere } from './laid-sizes.ts';
