import { requireFinite, requireWhole } from '../errors.ts';
import type { FullCheck } from '../slate-checks.ts';
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
  /** Allowed departure of a single slate from nominal, per cent; left out, none is agreed. */
  readonly thicknessTolerancePercent?: number;
  /** Where the order or contract says so. */
  readonly thicknessToleranceWhere?: string;
  /** The other limits that the buyer confirmed from the order or contract, one by one. */
  readonly agreed?: AgreedLimits;
  readonly texture: Texture;
  /** Slates ordered. */
  readonly slatesOrdered: number;
}

/** A limit that the buyer found in the order or contract. */
export interface AgreedLimit {
  /** Where it says so. */
  readonly where: string;
  /** The figure there, mm, where it is another than the customary one. */
  readonly limitMm?: number;
}

/** By measured check other than thickness, by `ring`, or by the name of a defect. */
export type AgreedLimits = Readonly<Record<string, AgreedLimit | undefined>>;

/** Measured checks of one slate that have a limit in millimetres. */
export type MeasuredCheck = 'thickness' | FullCheck;

/** What a measurement must lie within, and what says so. */
export interface ToleranceLimit {
  readonly lowMm: number;
  readonly highMm: number;
  /** Whether the upper limit itself still passes. The lower one always does. */
  readonly highIncluded: boolean;
  readonly basis: Basis;
}

/** The limits of an order; thickness is undefined where no tolerance is agreed. */
export interface ProductLimits extends Readonly<Record<FullCheck, ToleranceLimit>> {
  readonly thickness: ToleranceLimit | undefined;
  /** What a dull ring and each defect rest on. */
  readonly agreed: AgreedLimits;
}

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
 * as published by trade bodies; where the buyer confirmed a limit, that, with where it is written.
 * Thickness: the order alone.
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
  const { thicknessTolerancePercent: percent, thicknessToleranceWhere: where, agreed = {} } = order;
  const band =
    percent === undefined ? undefined : thicknessBand(nominalThicknessMm, percent, where);
  if (band?.ok === false) return band;
  const customary = customaryLimits(order);
  return {
    ok: true,
    limits: {
      thickness: band?.limit,
      length: sizeLimit(lengthMm, customary.length, agreed.length),
      width: sizeLimit(widthMm, customary.width, agreed.width),
      squareness: upTo(customary.squareness, agreed.squareness),
      edge: upTo(customary.edge, agreed.edge),
      flatness: { ...upTo(customary.flatness, agreed.flatness), highIncluded: false },
      agreed
    }
  };
}

/** A figure that holds unless the order says otherwise, mm, and what says so. */
export interface CustomaryLimit {
  readonly limitMm: number;
  readonly basis: Basis;
}

/**
 * The customary limits of a size and texture, mm: ± for length and width, at most for the others.
 *
 * @throws EngineError `not-finite`, `out-of-range` unless the length is above 0
 */
export function customaryLimits({
  lengthMm,
  texture
}: Pick<DeliveryOrder, 'lengthMm' | 'texture'>): Readonly<Record<FullCheck, CustomaryLimit>> {
  const of = (limitMm: number, clause: string): CustomaryLimit => ({
    limitMm,
    basis: QUOTED(clause)
  });
  return {
    length: of(SIZE_TOLERANCE_MM, 'length'),
    width: of(SIZE_TOLERANCE_MM, 'width'),
    squareness: of(lengthMm / 100, 'squareness'),
    edge: of(edgeLimitMm(lengthMm), 'straightness of edges'),
    flatness: of(flatnessLimitMm(lengthMm, texture), 'deviation from flatness')
  };
}

/**
 * The band that the thickness of a single slate must lie in; both ends included.
 *
 * @param tolerancePercent 0 to 100, as the order says
 * @param where where the order says so
 * @throws EngineError `not-finite`, `out-of-range` unless the nominal thickness is above 0
 * @example thicknessBand(6, 35) // 3.90 to 8.10 mm
 */
export function thicknessBand(
  nominalThicknessMm: number,
  tolerancePercent: number,
  where?: string
):
  | { readonly ok: true; readonly limit: ToleranceLimit }
  | { readonly ok: false; readonly reason: 'tolerance-over-100' } {
  requirePositive(nominalThicknessMm, 'nominal thickness');
  requireFinite(tolerancePercent, 'thickness tolerance');
  if (tolerancePercent < 0 || tolerancePercent > 100)
    return { ok: false, reason: 'tolerance-over-100' };
  return {
    ok: true,
    limit: {
      lowMm: nominalThicknessMm * (1 - tolerancePercent / 100),
      highMm: nominalThicknessMm * (1 + tolerancePercent / 100),
      highIncluded: true,
      basis: agreedBasis(where)
    }
  };
}

/** What a limit rests on that the order states or the buyer confirmed. */
export function agreedBasis(where: string | undefined): Basis {
  return { standing: 'set by the order', source: where || 'the order' };
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

function sizeLimit(
  declaredMm: number,
  customary: CustomaryLimit,
  agreed: AgreedLimit | undefined
): ToleranceLimit {
  const eitherWayMm = agreed?.limitMm ?? customary.limitMm;
  return {
    lowMm: declaredMm - eitherWayMm,
    highMm: declaredMm + eitherWayMm,
    highIncluded: true,
    basis: agreed ? agreedBasis(agreed.where) : customary.basis
  };
}

function upTo(customary: CustomaryLimit, agreed: AgreedLimit | undefined): ToleranceLimit {
  return {
    lowMm: 0,
    highMm: agreed?.limitMm ?? customary.limitMm,
    highIncluded: true,
    basis: agreed ? agreedBasis(agreed.where) : customary.basis
  };
}
