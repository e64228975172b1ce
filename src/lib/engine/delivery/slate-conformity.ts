import { EngineError, requireFinite } from '../errors.ts';
import type { Basis } from './basis.ts';
import type { MeasuredCheck, ProductLimits, ToleranceLimit } from './product-tolerances.ts';

/** One slate as measured on the delivery. Anything left out was not measured. */
export interface MeasuredSlate {
  readonly palletId: string;
  /** Only a slate drawn at random before sorting judges the delivery. */
  readonly drawnAs: 'unsorted sample' | 'other';
  /** Up to four points of thickness, mm; its thickness is their mean. */
  readonly pointsMm: readonly number[];
  readonly lengthMm?: number;
  readonly widthMm?: number;
  /** Departure from square over the length, mm. */
  readonly squarenessMm?: number;
  /** Greatest departure of a long edge from straight, mm. */
  readonly edgeMm?: number;
  /** Greatest departure of the face from flat, mm. */
  readonly bowMm?: number;
  readonly ring?: 'clear' | 'dull';
  /** Defects seen; an empty list says that it was looked over and none was found. */
  readonly defects?: readonly string[];
}

export type SlateCheckName = MeasuredCheck | 'ring' | 'defects';

/** Every check of a slate, in the order it is shown. */
export const SLATE_CHECKS: readonly SlateCheckName[] = [
  'thickness',
  'length',
  'width',
  'squareness',
  'edge',
  'flatness',
  'ring',
  'defects'
];

/** How one slate fared in one check. */
export interface SlateCheck {
  readonly check: SlateCheckName;
  readonly outcome: 'pass' | 'fail' | 'not measured';
  /** What was measured, mm; absent for ring and defects and where nothing was measured. */
  readonly measuredMm?: number;
  readonly basis: Basis;
}

const RING_BASIS: Basis = { standing: 'common practice', source: '' };
const DEFECTS_BASIS: Basis = { standing: 'set by the order', source: 'the order' };

/** Binary rounding of decimal millimetres must not fail a slate that lies on its limit. */
const ROUNDING_MM = 1e-9;

/**
 * Checks one slate against the limits of the order.
 *
 * @param slate measurements in mm, each finite and 0 or more
 * @param limits from `productLimits`
 * @returns one entry for each of `SLATE_CHECKS`, in that order
 * @throws EngineError `not-finite`, `out-of-range` for a measurement below 0
 *
 * A slate on a limit passes, except on flatness, which must stay below its limit. Twist and taper
 * have no limit of their own here. Cost: constant. Source: named in each entry.
 */
export function checkSlate(slate: MeasuredSlate, limits: ProductLimits): SlateCheck[] {
  const measured: Record<MeasuredCheck, number | undefined> = {
    thickness: slateThicknessMm(slate),
    length: slate.lengthMm,
    width: slate.widthMm,
    squareness: slate.squarenessMm,
    edge: slate.edgeMm,
    flatness: slate.bowMm
  };
  const outcomeOf = (failed: boolean | undefined): SlateCheck['outcome'] =>
    failed === undefined ? 'not measured' : failed ? 'fail' : 'pass';
  return SLATE_CHECKS.map((check): SlateCheck => {
    if (check === 'ring')
      return {
        check,
        outcome: outcomeOf(slate.ring && slate.ring === 'dull'),
        basis: RING_BASIS
      };
    if (check === 'defects')
      return {
        check,
        outcome: outcomeOf(slate.defects && slate.defects.length > 0),
        basis: DEFECTS_BASIS
      };
    return checkLength(check, measured[check], limits[check]);
  });
}

function checkLength(
  check: MeasuredCheck,
  measuredMm: number | undefined,
  limit: ToleranceLimit
): SlateCheck {
  if (measuredMm === undefined) return { check, outcome: 'not measured', basis: limit.basis };
  requireFinite(measuredMm, check);
  if (measuredMm < 0)
    throw new EngineError('out-of-range', `${check} is ${measuredMm} mm; give 0 or more`);
  const inside =
    measuredMm >= limit.lowMm - ROUNDING_MM &&
    (limit.highIncluded
      ? measuredMm <= limit.highMm + ROUNDING_MM
      : measuredMm < limit.highMm - ROUNDING_MM);
  return { check, outcome: inside ? 'pass' : 'fail', measuredMm, basis: limit.basis };
}

/**
 * Thickness of a slate: the mean of its points, mm; undefined where none was taken.
 *
 * @throws EngineError `not-finite` for a point that is no number
 */
export function slateThicknessMm({ pointsMm }: MeasuredSlate): number | undefined {
  if (pointsMm.length === 0) return undefined;
  for (const pointMm of pointsMm) requireFinite(pointMm, 'thickness point');
  return pointsMm.reduce((sum, pointMm) => sum + pointMm, 0) / pointsMm.length;
}

/** Whether any check failed, none failed, or nothing was measured. */
export function slateOutcome(checks: readonly SlateCheck[]): SlateCheck['outcome'] {
  if (checks.some(({ outcome }) => outcome === 'fail')) return 'fail';
  return checks.some(({ outcome }) => outcome === 'pass') ? 'pass' : 'not measured';
}

/**
 * Whether a slate can go on the roof as a full slate. Thickness alone never bars it: that is what
 * piles are for. Any other failed check does.
 */
export function isUsable(checks: readonly SlateCheck[]): boolean {
  return !checks.some(({ check, outcome }) => outcome === 'fail' && check !== 'thickness');
}
