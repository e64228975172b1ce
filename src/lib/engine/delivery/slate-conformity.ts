import { EngineError, requireFinite } from '../errors.ts';
import { FULL_CHECKS } from '../slate-checks.ts';
import type { Basis } from './basis.ts';
import {
  type AgreedLimits,
  type MeasuredCheck,
  type ProductLimits,
  type ToleranceLimit,
  agreedBasis
} from './product-tolerances.ts';

/** One slate as measured on the delivery. Anything left out was not measured. */
export interface MeasuredSlate {
  readonly palletId: string;
  /** Only a slate drawn at random before sorting judges the delivery. */
  readonly drawnAs: 'unsorted sample' | 'other';
  /** Chance picked it for the full check: size, squareness, edge and bow. */
  readonly isFullCheck?: boolean;
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
  ...FULL_CHECKS,
  'ring',
  'defects'
];

/** How one slate fared in one check. */
export interface SlateCheck {
  readonly check: SlateCheckName;
  /** `no limit`: measured, and nothing is agreed that it could be held to. */
  readonly outcome: 'pass' | 'fail' | 'not measured' | 'no limit';
  /** What was measured, mm; absent for ring and defects and where nothing was measured. */
  readonly measuredMm?: number;
  readonly basis: Basis;
}

const CUSTOM: Basis = { standing: 'common practice', source: '' };
const NOT_AGREED: Basis = { standing: 'not agreed', source: '' };

/** A mark under the name that limits know it by: a slate set aside for its ring has a dull ring. */
const MARK_OF: Readonly<Record<string, string>> = { dullRing: 'ring' };

/** What it rests on that a mark, `ring` or a defect, puts a slate outside the order. */
export function basisOfMark(mark: string, agreed: AgreedLimits): Basis {
  const limit = agreed[MARK_OF[mark] ?? mark];
  return limit ? agreedBasis(limit.where) : CUSTOM;
}

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
        basis: basisOfMark('ring', limits.agreed)
      };
    if (check === 'defects')
      return {
        check,
        outcome: outcomeOf(slate.defects && slate.defects.length > 0),
        basis: firmestOf((slate.defects ?? []).map((mark) => basisOfMark(mark, limits.agreed)))
      };
    return checkLength(check, measured[check], limits[check]);
  });
}

/** A slate with several defects is outside for certain where one of them is. */
function firmestOf(bases: readonly Basis[]): Basis {
  return bases.find(isCertain) ?? bases[0] ?? CUSTOM;
}

/** Whether a failure on this rests on what the order states or the buyer confirmed from it. */
export function isCertain({ standing }: Basis): boolean {
  return standing === 'set by the order';
}

function checkLength(
  check: MeasuredCheck,
  measuredMm: number | undefined,
  limit: ToleranceLimit | undefined
): SlateCheck {
  const basis = limit?.basis ?? NOT_AGREED;
  if (measuredMm === undefined) return { check, outcome: 'not measured', basis };
  requireFinite(measuredMm, check);
  if (measuredMm < 0)
    throw new EngineError('out-of-range', `${check} is ${measuredMm} mm; give 0 or more`);
  if (!limit) return { check, outcome: 'no limit', measuredMm, basis };
  const inside =
    measuredMm >= limit.lowMm - ROUNDING_MM &&
    (limit.highIncluded
      ? measuredMm <= limit.highMm + ROUNDING_MM
      : measuredMm < limit.highMm - ROUNDING_MM);
  return { check, outcome: inside ? 'pass' : 'fail', measuredMm, basis };
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
export function slateOutcome(checks: readonly SlateCheck[]): 'pass' | 'fail' | 'not measured' {
  if (checks.some(({ outcome }) => outcome === 'fail')) return 'fail';
  return checks.every(({ outcome }) => outcome === 'not measured') ? 'not measured' : 'pass';
}

/**
 * Whether a slate can go on the roof as a full slate. Thickness alone never bars it: that is what
 * piles are for. Any other failed check does.
 */
export function isUsable(checks: readonly SlateCheck[]): boolean {
  return !checks.some(({ check, outcome }) => outcome === 'fail' && check !== 'thickness');
}
