import { EngineError, requireFinite } from '../errors.ts';

const MM3_PER_M3 = 1e9;

/** A figure with the range it may lie in. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Density of slate where no pallet was weighed, kg/m³. 2,800 is common practice, no source; 2,650
 * is the lowest class of NF P 32-302; 2,900 is from memory.
 */
export const CUSTOMARY_DENSITY: Ranged = Object.freeze({ value: 2800, low: 2650, high: 2900 });

/** A size for weighing, mm. */
export interface WeighedSize {
  readonly lengthMm: number;
  readonly widthMm: number;
}

function requireRange({ value, low, high }: Ranged, name: string): void {
  for (const figure of [value, low, high]) requireFinite(figure, name);
  if (!(low > 0 && low <= value && value <= high))
    throw new EngineError('out-of-range', `${name}: ${low} to ${high} does not hold ${value}`);
}

function requireAboveZero(value: number, name: string): void {
  requireFinite(value, name);
  if (value <= 0) throw new EngineError('out-of-range', `${name} is ${value}; give more than 0`);
}

/**
 * How many slates a weight is: mass / (density × length × width × thickness).
 *
 * Thickness and density err apart, so their relative errors are joined as independent ones, each
 * side by itself: the range holds the count about as surely as the two ranges hold theirs.
 *
 * @param massKg slates alone, kg, above 0
 * @param size declared or measured, mm
 * @param thicknessMm mean thickness with its range, mm
 * @param density kg/m³ with its range
 * @returns whole slates: the likeliest, and the range rounded outwards
 * @throws EngineError `not-finite`, `out-of-range`
 * Source: density from common practice, no source; held to printed weights of a square in the tests.
 * @example
 * // 2.1 t of 500 × 250 at 6 mm: 1000 slates
 */
export function countByWeight(
  massKg: number,
  size: WeighedSize,
  thicknessMm: Ranged,
  density: Ranged = CUSTOMARY_DENSITY
): Ranged {
  requireAboveZero(massKg, 'mass');
  requireAboveZero(size.lengthMm, 'length');
  requireAboveZero(size.widthMm, 'width');
  requireRange(thicknessMm, 'thickness');
  requireRange(density, 'density');
  const eachKg = (density.value * size.lengthMm * size.widthMm * thicknessMm.value) / MM3_PER_M3;
  const exact = massKg / eachKg;
  const parts = [thicknessMm, density];
  const below = Math.hypot(...parts.map(({ value, high }) => high / value - 1));
  const above = Math.hypot(...parts.map(({ value, low }) => value / low - 1));
  return {
    value: Math.round(exact),
    low: Math.floor(exact / (1 + below)),
    high: Math.ceil(exact * (1 + above))
  };
}

/**
 * Density of the slates of one weighed pallet whose slates were counted, to take the place of the
 * customary one.
 *
 * @param massKg slates alone, kg
 * @param scaleErrorKg what the scale may be out by, kg, 0 or more, below the mass
 * @param slates counted, whole
 * @param thicknessMm mean thickness of that pallet with its range, mm
 * @returns kg/m³ with its range, errors of scale and thickness joined as independent ones
 * @throws EngineError `not-finite`, `out-of-range`; `inconsistent` where no slate is as light or as
 * heavy (below 2,000 or above 3,500 kg/m³): look at the weight, the count and the size again
 * Source: density = mass / volume; limits are ours, wide enough for any slate.
 */
export function densityOfPallet(
  massKg: number,
  scaleErrorKg: number,
  slates: number,
  size: WeighedSize,
  thicknessMm: Ranged
): Ranged {
  requireAboveZero(massKg, 'mass');
  requireAboveZero(slates, 'slates');
  requireFinite(scaleErrorKg, 'error of the scale');
  if (scaleErrorKg < 0 || scaleErrorKg >= massKg)
    throw new EngineError(
      'out-of-range',
      `a scale out by ${scaleErrorKg} kg cannot weigh ${massKg} kg`
    );
  requireRange(thicknessMm, 'thickness');
  const volumeM3 = (slates * size.lengthMm * size.widthMm * thicknessMm.value) / MM3_PER_M3;
  requireAboveZero(volumeM3, 'volume');
  const value = massKg / volumeM3;
  if (value < 2000 || value > 3500)
    throw new EngineError('inconsistent', `density comes to ${value} kg/m³`);
  const scale = scaleErrorKg / massKg;
  const below = Math.hypot(scale, thicknessMm.high / thicknessMm.value - 1);
  const above = Math.hypot(scale, thicknessMm.value / thicknessMm.low - 1);
  return { value, low: value / (1 + below), high: value * (1 + above) };
}
