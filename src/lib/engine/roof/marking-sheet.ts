import type { BondName } from './bonds.ts';
import type { SlopeLayout } from './layout.ts';
import type { Datum } from './perps.ts';
import type { SlateSpec } from './slate-spec.ts';
import type { UndereavePattern } from './undereave.ts';

/** Length of the printed line by which a reader checks that the sheet came out to scale, mm. */
export const SCALE_CHECK_MM = 100;

/** One line of the gauge rod. */
export interface GaugeRodLine {
  /** 0 carries the undereave slates, n the heads of course n. */
  readonly batten: number;
  /** From the undereave's batten along the rod, as marked: whole mm. */
  readonly markMm: number;
  /** The same, exact. */
  readonly exactMm: number;
  readonly fromEaveMm: number;
  readonly stepMm: number;
  /** Whether a shorter set begins here, nearer than its gauge. */
  readonly isDrop: boolean;
}

/** One mark of a bond. */
export interface PerpMark {
  /** 1 at the datum. */
  readonly slate: number;
  readonly markMm: number;
  readonly exactMm: number;
}

/** Everything a slater marks a slope out by, as data for a printed sheet. */
export interface MarkingSheet {
  readonly slopeId: string;
  readonly name: string;
  readonly gaugeMm: number;
  readonly headlapMm: number;
  readonly fullCourses: number;
  readonly gaugeRod: readonly GaugeRodLine[];
  readonly perps: {
    readonly datum: Datum;
    /** From the roof's own corner or middle at the eave to the datum; negative out over a verge. */
    readonly datumMm: number;
    readonly jointMm: Readonly<Record<BondName, number>>;
    readonly marks: Readonly<Record<BondName, readonly PerpMark[]>>;
    /** Courses that begin with each bond: odd courses A, even courses and the undereave B. */
    readonly firstCourse: Readonly<Record<BondName, number>>;
  };
  readonly slate: {
    readonly lengthMm: number;
    readonly widthMm: number;
    readonly holeFromTailMm: number;
  };
  readonly undereave: UndereavePattern & {
    readonly slates: number;
    readonly slateAndAHalves: number;
  };
  readonly scaleCheckMm: number;
}

/**
 * The marking sheet of one slope: gauge rod, both sets of perp marks, slate and undereave pattern
 * with their holes.
 *
 * Marks are rounded to whole mm from the exact distance to the datum, so that rounding never adds up
 * along a rafter or a course.
 *
 * @param laid a slope of a layout; not modified
 * @param spec the slate it was laid out with
 * @returns plain data; marks strictly rising
 * @example markingSheet(roof.slopes[0], roof.spec).gaugeRod[1].markMm // 193 at a gauge of 193.27 mm
 */
export function markingSheet(laid: SlopeLayout, spec: SlateSpec): MarkingSheet {
  const { slope, perps, undereave } = laid;
  const marksOf = (bond: BondName) =>
    perps.bonds[bond].marksMm.map((exactMm, index) => ({
      slate: index + 1,
      markMm: Math.round(exactMm),
      exactMm
    }));
  const drops = new Set(laid.courses.filter(({ isDrop }) => isDrop).map(({ course }) => course));
  return {
    slopeId: slope.id,
    name: slope.name,
    gaugeMm: laid.gaugeMm,
    headlapMm: laid.headlapMm,
    fullCourses: laid.courses.filter(({ kind }) => kind === 'full').length,
    gaugeRod: laid.battens.map(({ batten, fromFirstMm, fromEaveMm, stepMm }) => ({
      batten,
      markMm: Math.round(fromFirstMm),
      exactMm: fromFirstMm,
      fromEaveMm,
      stepMm,
      isDrop: drops.has(batten)
    })),
    perps: {
      datum: perps.datum,
      datumMm: perps.datumMm,
      jointMm: { A: perps.bonds.A.jointMm, B: perps.bonds.B.jointMm },
      marks: { A: marksOf('A'), B: marksOf('B') },
      firstCourse: { A: 1, B: 2 }
    },
    slate: {
      lengthMm: spec.lengthMm,
      widthMm: spec.widthMm,
      holeFromTailMm: laid.holeFromTailMm
    },
    undereave: {
      lengthMm: undereave.lengthMm,
      widthMm: undereave.widthMm,
      holeFromTailMm: undereave.holeFromTailMm,
      holeFromHeadMm: undereave.holeFromHeadMm,
      slates: laid.totals.undereaveSlates,
      slateAndAHalves: laid.totals.undereaveSlateAndAHalves
    },
    scaleCheckMm: SCALE_CHECK_MM
  };
}
