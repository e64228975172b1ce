import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import type { SlateSpec } from './slate-spec.ts';
import { type Slope, leftAtMm, openingsAsSlated, rightAtMm } from './slope-shape.ts';

/** Nails to one piece, whatever its width. Common practice, no source. */
export const NAILS_PER_PIECE = 2;
/** What a nail needs beyond two thicknesses of slate, mm. Source: a trade manual. */
const NAIL_BEYOND_MM = { least: 20, most: 25 } as const;

const MM3_PER_M3 = 1e9;

/**
 * Metres of batten on one slope: each batten line across the roof without verge overhang, openings
 * taken off. Waste and laps at joints are not counted.
 *
 * @param linesMm centre lines of the battens from the eave, mm; lines below the eave count as at it
 */
export function battenLengthM(slope: Slope, linesMm: readonly number[]): number {
  const bare = { ...slope, vergeOverhangMm: 0 };
  let lengthMm = 0;
  for (const lineMm of linesMm) {
    const atMm = Math.min(Math.max(lineMm, 0), slope.rafterLengthMm);
    lengthMm += Math.max(0, rightAtMm(bare, atMm) - leftAtMm(bare, atMm));
    for (const opening of openingsAsSlated(bare))
      if (atMm > opening.fromEaveMm && atMm < opening.fromEaveMm + opening.heightMm)
        lengthMm -= opening.widthMm;
  }
  return lengthMm / 1000;
}

/** How long the nails for one thickness must be. */
export interface NailLength {
  readonly leastMm: number;
  readonly mostMm: number;
  /** The multiple of 5 mm within those bounds, as nails are sold. */
  readonly nearestSoldMm: number;
}

/**
 * Nail length for slates of one thickness: twice the thickness and 20 to 25 mm more.
 *
 * @param thicknessMm mean thickness of the pile, mm, above 0
 * @returns bounds in mm and the multiple of 5 mm in them (the lower of two)
 * Source: a trade manual, which also asks for at least 20 mm in the batten.
 * @throws EngineError `out-of-range`, `not-finite`
 * @example nailLength(6) // { leastMm: 32, mostMm: 37, nearestSoldMm: 35 }
 */
export function nailLength(thicknessMm: number): NailLength {
  requireAboveZero(thicknessMm, 'thickness');
  const leastMm = 2 * thicknessMm + NAIL_BEYOND_MM.least;
  return {
    leastMm,
    mostMm: 2 * thicknessMm + NAIL_BEYOND_MM.most,
    nearestSoldMm: Math.ceil(Number((leastMm / 5).toFixed(9))) * 5
  };
}

/** One pile's slates, by number and mean thickness. */
export interface PileToNail {
  readonly pile: number;
  readonly slates: number;
  readonly thicknessMm: number;
}

/** Nails of one pile. */
export interface PileNails extends NailLength {
  readonly pile: number;
  readonly nails: number;
}

/**
 * Nails for each pile by number and length, two to a piece; piles without slates ask for none.
 *
 * @throws EngineError `not-whole`, `out-of-range` for a count below 0 or in parts
 */
export function nailsByPile(piles: readonly PileToNail[]): PileNails[] {
  return piles.map(({ pile, slates, thicknessMm }) => {
    requireWhole(slates, 0, `slates of pile ${pile}`);
    return { pile, nails: slates * NAILS_PER_PIECE, ...nailLength(thicknessMm) };
  });
}

/**
 * Mass of slate laid on a square metre of roof, nails and battens not counted.
 *
 * @param densityKgPerM3 density, kg/m³
 * @param thicknessMm mean thickness, mm
 * @param lengthMm length of a slate, mm
 * @param gaugeMm batten spacing, mm
 * @returns kg/m²: density × thickness × length / gauge; joints are left out, which is 1 to 2 % high
 * @throws EngineError `out-of-range` for anything not above 0, `not-finite`
 * @example massLaidKgPerM2(2800, 5, 500, 200) // 35
 */
export function massLaidKgPerM2(
  densityKgPerM3: number,
  thicknessMm: number,
  lengthMm: number,
  gaugeMm: number
): number {
  requireAboveZero(densityKgPerM3, 'density');
  requireAboveZero(thicknessMm, 'thickness');
  requireAboveZero(lengthMm, 'length');
  requireAboveZero(gaugeMm, 'gauge');
  return (densityKgPerM3 * (thicknessMm / 1000) * lengthMm) / gaugeMm;
}

/** A stack for loading out. */
export interface Stack {
  readonly slates: number;
  /** Height of the stack laid flat, or length stood on edge, mm; gaps are not counted. */
  readonly heightMm: number;
  readonly massKg: number;
}

/**
 * Height and mass of a stack of slates of one declared size and measured thickness.
 *
 * @param slates whole, 0 or more
 * @throws EngineError `not-whole`, `not-finite`, `out-of-range`
 * @example
 * // 100 slates 500 × 250 × 6 mm at 2800 kg/m³: 600 mm, 210 kg
 */
export function stackOf(
  slates: number,
  thicknessMm: number,
  spec: Pick<SlateSpec, 'lengthMm' | 'widthMm' | 'densityKgPerM3'>
): Stack {
  requireWhole(slates, 0, 'slates');
  requireAboveZero(thicknessMm, 'thickness');
  const heightMm = slates * thicknessMm;
  const volumeM3 = (spec.lengthMm * spec.widthMm * heightMm) / MM3_PER_M3;
  return { slates, heightMm, massKg: spec.densityKgPerM3 * volumeM3 };
}

/**
 * How many slates one person carries in a go: as many as the mass allows, and one at least.
 *
 * @param massKg most that a person carries, kg, above 0
 * @param thicknessMm mean thickness, mm
 * @returns the slates as a stack: count, height in mm, mass in kg
 * Source: mass = density × volume; the limit is the job's own.
 * @throws EngineError `not-finite`, `out-of-range`
 * @example
 * // 500 × 250 × 6 mm at 2800 kg/m³ is 2.1 kg: 11 slates are 23.1 kg, 12 would be 25.2
 */
export function slatesCarried(
  massKg: number,
  thicknessMm: number,
  spec: Pick<SlateSpec, 'lengthMm' | 'widthMm' | 'densityKgPerM3'>
): Stack {
  requireAboveZero(massKg, 'mass carried');
  const one = stackOf(1, thicknessMm, spec);
  const slates = Math.max(1, Math.floor(Number((massKg / one.massKg).toFixed(9))));
  return stackOf(slates, thicknessMm, spec);
}

function requireAboveZero(value: number, name: string): void {
  requireFinite(value, name);
  if (value <= 0) throw new EngineError('out-of-range', `${name} is ${value}; give more than 0`);
}
