export {
  LOWEST_HUNDREDTHS,
  HIGHEST_HUNDREDTHS,
  type ThicknessBins,
  binsFromPairs,
  mergeBins,
  totalCount
} from './bins.ts';
