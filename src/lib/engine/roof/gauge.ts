import { EngineError, requireFinite } from '../errors.ts';
import type { SlateSpec } from './slate-spec.ts';

/** Square millimetres in one square metre. */
const MM2_PER_M2 = 1_000_000;
/** Square millimetres in one square, the trade's 100 square feet: exact, from 304.8 mm a foot. */
const MM2_PER_SQUARE = 100 * 304.8 * 304.8;
/** Guards a quotient that should be whole against its last binary digit. */
const WHOLE = 1e-9;

/** What a gauge needs to know of a slate. */
export type GaugeSpec = Pick<SlateSpec, 'lengthMm' | 'headlapMm' | 'nailing' | 'headNailLineMm'>;

/** The part of a slate above its nail line that gives no lap: none when centre-nailed. */
function aboveNailLineMm(spec: Pick<GaugeSpec, 'nailing' | 'headNailLineMm'>): number {
  return spec.nailing === 'head' ? spec.headNailLineMm : 0;
}

/**
 * The greatest batten spacing that still gives the headlap asked for.
 *
 * @param spec length, headlap, nailing and nail line, mm; not modified
 * @returns mm: (length − headlap) / 2 centre-nailed, (length − headlap − nail line) / 2 head-nailed
 *
 * Definition: headlap is the length by which a slate covers the next but one below it, measured
 * from that slate's head when centre-nailed and from its nail line when head-nailed.
 * Accuracy: exact to one rounding.
 * Source: Modern Buildings, vol. 1, ch. XXI; Building Construction, part 1, "Lap and gauge".
 * @throws EngineError `not-finite`
 * @example
 * maximumGaugeMm({ lengthMm: 500, headlapMm: 100, nailing: 'centre', headNailLineMm: 25 }) // 200
 */
export function maximumGaugeMm(spec: GaugeSpec): number {
  requireFinite(spec.lengthMm, 'length');
  requireFinite(spec.headlapMm, 'headlap');
  return (spec.lengthMm - spec.headlapMm - aboveNailLineMm(spec)) / 2;
}

/**
 * The headlap that a gauge gives, mm: {@link maximumGaugeMm} turned round.
 *
 * @throws EngineError `not-finite`, and as {@link maximumGaugeMm}
 */
export function headlapAtGaugeMm(
  spec: Pick<GaugeSpec, 'lengthMm' | 'nailing' | 'headNailLineMm'>,
  gaugeMm: number
): number {
  requireFinite(gaugeMm, 'gauge');
  return spec.lengthMm - aboveNailLineMm(spec) - 2 * gaugeMm;
}

/**
 * Length of the short slate laid under the first course, mm: length − gauge.
 *
 * It equals gauge + headlap when centre-nailed, gauge + headlap + nail line when head-nailed.
 * Source: Modern Buildings, vol. 1, ch. XXI.
 * @example undereaveLengthMm(500, 200) // 300
 */
export function undereaveLengthMm(lengthMm: number, gaugeMm: number): number {
  return lengthMm - gaugeMm;
}

/**
 * Where to hole a full slate, measured from its tail.
 *
 * @returns mm: length − gauge + clearance centre-nailed, which is just above the centre line of the
 * batten below the head; length − nail line head-nailed
 * Source: trade guides (clearance 3 to 15 mm, by guide); metric example with clearance 4 from an
 * article on BS 5534 by a roof consultant.
 * @throws EngineError `not-finite`
 * @example
 * // 500 mm slate at a gauge of 200 mm, clearance 4
 * holeFromTailMm({ lengthMm: 500, nailing: 'centre', headNailLineMm: 25, holeClearanceMm: 4 }, 200) // 304
 */
export function holeFromTailMm(
  spec: Pick<SlateSpec, 'lengthMm' | 'nailing' | 'headNailLineMm' | 'holeClearanceMm'>,
  gaugeMm: number
): number {
  requireFinite(gaugeMm, 'gauge');
  return spec.nailing === 'head'
    ? spec.lengthMm - spec.headNailLineMm
    : spec.lengthMm - gaugeMm + spec.holeClearanceMm;
}

/** From a slate's tail to the centre of the batten that carries its head, mm. */
export function tailToBattenMm(
  spec: Pick<SlateSpec, 'lengthMm' | 'nailing' | 'headNailLineMm'>
): number {
  return spec.lengthMm - aboveNailLineMm(spec);
}

/** A rafter's fixing length divided into equal spaces. */
export interface EqualGauge {
  /** Equal spaces between the first and the last batten. */
  readonly spaces: number;
  /** The spacing, mm; the greatest allowed when there is no space to divide. */
  readonly gaugeMm: number;
}

/**
 * Divides a fixing length into the least whole number of equal spaces, none above the maximum.
 *
 * @param fixingLengthMm from the first course's batten to the top batten, mm, 0 or more
 * @param maximumMm greatest spacing allowed, mm, above 0
 * @returns the spaces and their size; a length of 0 has no space. A length that is a whole multiple
 * of the maximum, up to one part in 10^9, takes exactly that many spaces
 * @throws EngineError `out-of-range`, `not-finite`
 * @example equalGauge(5025, 200) // { spaces: 26, gaugeMm: 193.269… }
 */
export function equalGauge(fixingLengthMm: number, maximumMm: number): EqualGauge {
  requireFinite(fixingLengthMm, 'fixing length');
  requireFinite(maximumMm, 'maximum gauge');
  if (fixingLengthMm < 0 || maximumMm <= 0)
    throw new EngineError(
      'out-of-range',
      `fixing length ${fixingLengthMm} mm at a gauge of ${maximumMm} mm at most`
    );
  const spaces = Math.ceil((fixingLengthMm / maximumMm) * (1 - WHOLE));
  return { spaces, gaugeMm: spaces === 0 ? maximumMm : fixingLengthMm / spaces };
}

/**
 * Slates that cover an area, each showing (width + joint) × gauge. Not rounded.
 *
 * @param areaMm2 area, mm²
 * @throws EngineError `out-of-range` where a slate would show nothing
 */
export function slatesPerArea(
  areaMm2: number,
  widthMm: number,
  jointMm: number,
  gaugeMm: number
): number {
  const showsMm2 = (widthMm + jointMm) * gaugeMm;
  if (!(showsMm2 > 0))
    throw new EngineError('out-of-range', `a slate would show ${showsMm2} mm² of itself`);
  return areaMm2 / showsMm2;
}

/** Slates per square metre. @example slatesPerM2(300, 5, 200) // 16.39… */
export function slatesPerM2(widthMm: number, jointMm: number, gaugeMm: number): number {
  return slatesPerArea(MM2_PER_M2, widthMm, jointMm, gaugeMm);
}

/** Slates per square of 100 square feet. @example slatesPerSquare(152.4, 0, 114.3) // 533.3… */
export function slatesPerSquare(widthMm: number, jointMm: number, gaugeMm: number): number {
  return slatesPerArea(MM2_PER_SQUARE, widthMm, jointMm, gaugeMm);
}

/**
 * Metres of batten per square metre of roof: 1000 / gauge.
 *
 * @throws EngineError `not-finite`, `out-of-range` unless the gauge is above 0
 * @example battenMPerM2(200) // 5
 */
export function battenMPerM2(gaugeMm: number): number {
  requireFinite(gaugeMm, 'gauge');
  if (gaugeMm <= 0)
    throw new EngineError('out-of-range', `gauge is ${gaugeMm} mm; give more than 0`);
  return 1000 / gaugeMm;
}
