export { EngineError, type EngineErrorCode, requireFinite, requireWhole } from './errors.ts';
export {
  MM_PER_INCH,
  inchesToMm,
  mmToInches,
  toHundredths,
  fromHundredths,
  formatFeetInches
} from './units.ts';
export { FULL_CHECKS, type FullCheck } from './slate-checks.ts';
export { type Random, createRandom, randomBelow, randomNormal, shuffled } from './random.ts';
