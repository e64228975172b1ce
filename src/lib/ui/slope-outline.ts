import {
  type CourseLayout,
  type Piece,
  type Slope,
  type SlopeLayout,
  leftAtMm,
  rightAtMm
} from '$lib/engine/roof';

/** A slope's drawing in its own millimetres: x from the eave's left corner, y down from the ridge. */
export interface SlopeFrame {
  readonly minX: number;
  readonly minY: number;
  readonly width: number;
  readonly height: number;
}

/** The smallest frame around a slope, overhangs in, with a border at its sides, above and below. */
export function frameOf(slope: Slope, borderMm: number, aboveMm = borderMm): SlopeFrame {
  const heights = [-slope.eaveOverhangMm, slope.rafterLengthMm];
  const left = Math.min(...heights.map((atMm) => leftAtMm(slope, atMm)));
  const right = Math.max(...heights.map((atMm) => rightAtMm(slope, atMm)));
  return {
    minX: left - borderMm,
    minY: -aboveMm,
    width: right - left + 2 * borderMm,
    height: slope.rafterLengthMm + slope.eaveOverhangMm + 2 * aboveMm
  };
}

/** Down from the ridge line, from up the rafter. */
export function down(slope: Slope, fromEaveMm: number): number {
  return slope.rafterLengthMm - fromEaveMm;
}

/** The slope's outline as slated, from the tails at the eave to the ridge line. */
export function outlinePath(slope: Slope): string {
  const low = -slope.eaveOverhangMm;
  const high = slope.rafterLengthMm;
  const point = (x: number, fromEaveMm: number) => `${x} ${down(slope, fromEaveMm)}`;
  return `M${point(leftAtMm(slope, low), low)}L${point(rightAtMm(slope, low), low)}L${point(
    Math.max(rightAtMm(slope, high), leftAtMm(slope, high)),
    high
  )}L${point(leftAtMm(slope, high), high)}Z`;
}

/** Pieces of a course that are drawn alike. */
export type PieceTone = 'full' | 'slateAndAHalf' | 'cut';

/** What shows of a course's pieces of one tone, as one path. */
export function piecesPath(laid: SlopeLayout, course: CourseLayout, tone: PieceTone): string {
  const bottom = down(laid.slope, course.tailMm);
  const top = down(
    laid.slope,
    Math.min(course.tailMm + course.marginMm, laid.slope.rafterLengthMm)
  );
  return course.runs
    .flatMap((run) => run.pieces)
    .filter((piece) => toneOf(piece) === tone)
    .map(({ leftMm, widthMm }) => `M${leftMm} ${bottom}h${widthMm}V${top}h${-widthMm}Z`)
    .join('');
}

function toneOf(piece: Piece): PieceTone {
  if (piece.kind === 'slate-and-a-half') return 'slateAndAHalf';
  return piece.kind === 'cut' ? 'cut' : 'full';
}

/** The course at a height up the rafter; the nearest where the height lies outside. */
export function courseAt(laid: SlopeLayout, fromEaveMm: number): number {
  const found = laid.courses.findLast((course) => course.tailMm <= fromEaveMm);
  return found?.course ?? 1;
}

/**
 * Courses that carry their number on a drawing: the first, the last, and every so-manyth that is clear
 * of the last and of the one numbered below it.
 *
 * @param clearMm height that a number takes, in the slope's own millimetres
 */
export function numberedCourses<C extends { readonly course: number; readonly tailMm: number }>(
  courses: readonly C[],
  every: number,
  clearMm: number
): C[] {
  const last = courses[courses.length - 1];
  let belowMm = -Infinity;
  return courses.filter(({ course, tailMm }, index) => {
    const isEnd = index === 0 || index === courses.length - 1;
    const isClear = tailMm - belowMm > clearMm && last.tailMm - tailMm > clearMm;
    const isNumbered = isEnd || (course % every === 0 && isClear);
    if (isNumbered) belowMm = tailMm;
    return isNumbered;
  });
}
