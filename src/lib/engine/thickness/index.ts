export {
  LOWEST_HUNDREDTHS,
  HIGHEST_HUNDREDTHS,
  type ThicknessBins,
  binsFromPairs,
  sliceOfBins,
  mergeBins,
  mergeOfSameReadings,
  partOfBins,
  squaresOf,
  totalCount
} from './bins.ts';
export {
  MOST_POINTS,
  type ReadingHint,
  type SlateReading,
  type RefusedReading,
  readSlate
} from './reading.ts';
export {
  type ListMoments,
  type ThicknessMoments,
  type NothingRead,
  momentsOfBins,
  momentsOfList,
  lag1Autocorrelation
} from './moments.ts';
export { quantilesMm } from './quantiles.ts';
export { type ThicknessInterval, gradeIntervals, countBetween } from './interval.ts';
export { type HistogramBar, type Histogram, histogram } from './histogram.ts';
export { isBorderline } from './borderline.ts';
export {
  type KnownStack,
  type ThicknessOfPile,
  type PackedThickness,
  type PackingUnknown,
  type CountByHeight,
  packedThickness,
  countByHeight
} from './count-by-height.ts';
