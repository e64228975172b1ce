import { type CourseDemand, type SharedBatten, type SlopeLayout, filledMm } from '$lib/engine/roof';
import { partsOfPieces, stockOf } from '$lib/job';
import { cutMark, cutsOf } from './cut-words.ts';
import type { JobView } from '$lib/journal';
import { current, partOf } from '$lib/journal';

/** One line of a setting-out sheet: a course, or the second pile of one. */
export interface SheetLine {
  /** 0 for the undereave. */
  readonly course: number;
  /** 0 for the first line of a course, 1 for its second pile. */
  readonly part: number;
  /** Centre line of its batten up the rafter from the eave; undefined for the top course, which shares one. */
  readonly battenMm?: number;
  /** The same from batten 0, as it stands on the gauge rod. */
  readonly rodMm?: number;
  /** Whether a shorter set begins here, nearer than its gauge. */
  readonly isDrop?: boolean;
  /** Slated width with its joints, openings out. */
  readonly widthMm: number;
  /** Up the left edge, the middle and the right edge, where the slope is out of square. */
  readonly shared?: Pick<SharedBatten, 'leftMm' | 'middleMm' | 'rightMm'>;
  readonly bond: string;
  readonly pile?: number;
  readonly slates: number;
  readonly wide: number;
  readonly cuts: number;
  /** Widths of the cut pieces in full, tail/head, from left to right. */
  readonly widths: string;
}

/** Pieces of each course of the plan in use by the places of the piles, by slope and course. */
export type PilesOfCourses = ReadonlyMap<
  string,
  readonly { readonly pile: number; readonly pieces: number }[]
>;

/** What the plan in use puts on each course; empty before a plan is used. */
export function pilesOfCourses(view: JobView): PilesOfCourses {
  const courses = current(partOf(view, 'plans').plans)?.courses ?? [];
  const places = new Map(stockOf(view).piles.map(({ number, pile }) => [number, pile]));
  return new Map(
    courses.map(({ slopeId, course, piles }) => [
      `${slopeId}|${course}`,
      piles.map((part) => ({ ...part, pile: places.get(part.pile) ?? part.pile }))
    ])
  );
}

/**
 * The lines of one slope, the undereave first where these courses begin at the eave, then its courses
 * from the eaves up.
 */
export function sheetLines(
  laid: SlopeLayout,
  demand: readonly CourseDemand[],
  plan: PilesOfCourses,
  mark: (lengthMm: number) => string
): SheetLine[] {
  const last = laid.battens[laid.battens.length - 1].batten;
  const beginsAtEave = laid.courses[0].course === 1;
  const undereave = laid.undereave;
  const first: SheetLine = {
    course: 0,
    part: 0,
    ...(beginsAtEave && battenOf(laid, 0)),
    bond: 'B',
    slates: undereave.counts.full + undereave.counts.cut,
    wide: undereave.counts.slateAndAHalf,
    cuts: undereave.counts.cut + undereave.counts.slateAndAHalfCut,
    widths: '',
    widthMm: filledMm(undereave)
  };
  return [
    ...(beginsAtEave ? [first] : []),
    ...laid.courses.flatMap((course): SheetLine[] => {
      const piles = plan.get(`${laid.slope.id}|${course.course}`) ?? [];
      const needs = demand.find(
        (one) => one.slopeId === laid.slope.id && one.course === course.course
      );
      const own = course.counts.full + course.counts.cut;
      const line: SheetLine = {
        course: course.course,
        part: 0,
        ...battenOf(laid, Math.min(course.course, last)),
        ...(course.course > last && { battenMm: undefined, rodMm: undefined, shared: undefined }),
        ...(course.isDrop && { isDrop: true }),
        bond: course.bond,
        widthMm: filledMm(course),
        ...(piles[0] && { pile: piles[0].pile }),
        slates: own,
        wide: course.counts.slateAndAHalf,
        cuts: course.counts.cut + course.counts.slateAndAHalfCut,
        widths: cutsOf(course, laid.slope)
          .map((cut) => cutMark(cut, mark))
          .join(' · ')
      };
      if (piles.length < 2 || !needs) return [line];
      return partsOfPieces(needs, piles).map(({ pile, slates, slateAndAHalves }, part) => ({
        ...line,
        part,
        pile,
        slates,
        wide: slateAndAHalves
      }));
    })
  ];
}

function battenOf(
  laid: SlopeLayout,
  batten: number
): Pick<SheetLine, 'battenMm' | 'rodMm' | 'shared'> {
  const { fromEaveMm, fromFirstMm } = laid.battens[batten - laid.battens[0].batten];
  const shared = laid.outOfSquare?.battens[batten];
  return { battenMm: fromEaveMm, rodMm: fromFirstMm, ...(shared && { shared }) };
}
