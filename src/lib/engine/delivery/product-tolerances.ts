import { requireFinite, requireWhole } from '../errors.ts';
import type { Basis } from './basis.ts';
import { requirePositive } from './requirements.ts';

/** How smooth the face is declared to be; it sets how far a slate may bow. */
export type Texture = 'very smooth' | 'smooth' | 'normal' | 'textured';

/** What was ordered, as far as single slates are judged by it. */
export interface DeliveryOrder {
  /** Declared length, mm. */
  readonly lengthMm: number;
  /** Declared width, mm. */
  readonly widthMm: number;
  /** Declared (nominal) thickness, mm. */
  readonly nominalThicknessMm: number;
  /** Allowed departure of a single slate from nominal, per cent; left out, 35 from memory. */
  readonly thicknessTolerancePercent?: number;
  readonly texture: Texture;
  /** Slates ordered. */
  readonly slatesOrdered: number;
}

/** Measured checks of one slate that have a limit in millimetres. */
export type MeasuredCheck = 'thickness' | 'length' | 'width' | 'squareness' | 'edge' | 'flatness';

/** What a measurement must lie within, and what says so. */
export interface ToleranceLimit {
  readonly lowMm: number;
  readonly highMm: number;
  /** Whether the upper limit itself still passes. The lower one always does. */
  readonly highIncluded: boolean;
  readonly basis: Basis;
}

export type ProductLimits = Readonly<Record<MeasuredCheck, ToleranceLimit>>;

/** Individual thickness tolerance used when the order names none, per cent. From memory. */
export const REMEMBERED_THICKNESS_TOLERANCE_PERCENT = 35;

const QUOTED = (clause: string): Basis => ({
  standing: 'quoted',
  source: `EN 12326-1, ${clause}, as published by trade bodies`
});

/** Bow allowed for each texture, per cent of the length; a slate must stay below it. */
const FLATNESS_PERCENT: Record<Texture, number> = {
  'very smooth': 0.9,
  smooth: 1,
  normal: 1.5,
  textured: 2
};

/** Length and width may each depart from the declared size by this much, mm. */
const SIZE_TOLERANCE_MM = 5;

/** Why an order cannot be judged by. */
export type OrderRefusal = {
  readonly ok: false;
  readonly reason: 'size-missing' | 'thickness-missing' | 'count-zero' | 'tolerance-over-100';
};

/**
 * The limits that one slate is held to under an order.
 *
 * @param order declared size and thickness in mm; tolerance in per cent of nominal
 * @returns a limit with its basis for each measured check. Refused, with the reason: a size or
 *   thickness that is not above 0, an order of no slates, a tolerance over 100 % (or below 0).
 * @throws EngineError `not-finite`, `not-whole` for a count that is not whole
 *
 * Sources: length and width ±5 mm, squareness 1 % of the length, edge 5 mm up to a length of
 * 500 mm and 1 % above, flatness strictly below 0.9, 1.0, 1.5 or 2.0 % of the length: EN 12326-1
 * as published by trade bodies. Thickness: the order; or, named as such, 35 % from memory.
 * @example
 * // 500 × 250 mm, 5 mm nominal, smooth: thickness 3.25 to 6.75 mm, flatness below 5 mm
 */
export function productLimits(
  order: DeliveryOrder
): { readonly ok: true; readonly limits: ProductLimits } | OrderRefusal {
  const { lengthMm, widthMm, nominalThicknessMm } = order;
  requireFinite(lengthMm, 'length');
  requireFinite(widthMm, 'width');
  requireFinite(nominalThicknessMm, 'nominal thickness');
  requireWhole(order.slatesOrdered, 0, 'slates ordered');
  if (lengthMm <= 0 || widthMm <= 0) return { ok: false, reason: 'size-missing' };
  if (nominalThicknessMm <= 0) return { ok: false, reason: 'thickness-missing' };
  if (order.slatesOrdered === 0) return { ok: false, reason: 'count-zero' };
  const band = thicknessBand(nominalThicknessMm, order.thicknessTolerancePercent);
  if (!band.ok) return band;
  return {
    ok: true,
    limits: {
      thickness: band.limit,
      length: sizeLimit(lengthMm, 'length'),
      width: sizeLimit(widthMm, 'width'),
      squareness: upTo(lengthMm / 100, QUOTED('squareness')),
      edge: upTo(edgeLimitMm(lengthMm), QUOTED('straightness of edges')),
      flatness: {
        ...upTo(flatnessLimitMm(lengthMm, order.texture), QUOTED('deviation from flatness')),
        highIncluded: false
      }
    }
  };
}

/**
 * The band that the thickness of a single slate must lie in; both ends included.
 *
 * @param tolerancePercent 0 to 100; left out, 35 % from memory, and the basis says so
 * @throws EngineError `not-finite`, `out-of-range` unless the nominal thickness is above 0 and
 *   the tolerance 0 to 100
 * @example thicknessBand(6) // 3.90 to 8.10 mm, from memory
 */
export function thicknessBand(
  nominalThicknessMm: number,
  tolerancePercent?: number
):
  | { readonly ok: true; readonly limit: ToleranceLimit }
  | { readonly ok: false; readonly reason: 'tolerance-over-100' } {
  requirePositive(nominalThicknessMm, 'nominal thickness');
  const percent = tolerancePercent ?? REMEMBERED_THICKNESS_TOLERANCE_PERCENT;
  requireFinite(percent, 'thickness tolerance');
  if (percent < 0 || percent > 100) return { ok: false, reason: 'tolerance-over-100' };
  return {
    ok: true,
    limit: {
      lowMm: nominalThicknessMm * (1 - percent / 100),
      highMm: nominalThicknessMm * (1 + percent / 100),
      highIncluded: true,
      basis:
        tolerancePercent === undefined
          ? { standing: 'from memory', source: 'EN 12326-1, individual thickness; check the order' }
          : { standing: 'set by the order', source: 'the order' }
    }
  };
}

/**
 * Bow that a slate must stay below, mm: 0.9, 1.0, 1.5 or 2.0 % of the length.
 *
 * @throws EngineError `not-finite`, `out-of-range` unless the length is above 0
 */
export function flatnessLimitMm(lengthMm: number, texture: Texture): number {
  requirePositive(lengthMm, 'length');
  return (lengthMm * FLATNESS_PERCENT[texture]) / 100;
}

/**
 * Departure of an edge from straight that still passes, mm: 5 up to 500 mm long, then 1 %.
 *
 * @throws EngineError `not-finite`, `out-of-range` unless the length is above 0
 */
export function edgeLimitMm(lengthMm: number): number {
  requirePositive(lengthMm, 'length');
  return lengthMm <= 500 ? 5 : lengthMm / 100;
}

function sizeLimit(declaredMm: number, clause: string): ToleranceLimit {
  return {
    lowMm: declaredMm - SIZE_TOLERANCE_MM,
    highMm: declaredMm + SIZE_TOLERANCE_MM,
    highIncluded: true,
    basis: QUOTED(clause)
  };
}

function upTo(highMm: number, basis: Basis): ToleranceLimit {
  return { lowMm: 0, highMm, highIncluded: true, basis };
}
