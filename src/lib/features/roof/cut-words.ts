import { type CourseLayout, type CutShape, type Slope, cutShape } from '$lib/engine/roof';

/** Widths closer than this are one width on site, mm. */
const SAME_MM = 0.5;

/** The cut pieces of a course in full, left to right. */
export function cutsOf(course: CourseLayout, slope: Slope): CutShape[] {
  return course.runs
    .flatMap(({ pieces }) => pieces)
    .filter(({ isCut }) => isCut)
    .map((piece) => cutShape(piece, course, slope));
}

/** Whether a piece is as wide at its head as at its tail. */
export function isStraight({ tailWidthMm, headWidthMm }: CutShape): boolean {
  return Math.abs(tailWidthMm - headWidthMm) <= SAME_MM;
}

/** A cut piece as short as it goes: 250/120, with × where it cannot be nailed. */
export function cutMark(shape: CutShape, mark: (lengthMm: number) => string): string {
  const { tailWidthMm, headWidthMm, holdsNail } = shape;
  const widths = isStraight(shape)
    ? mark(tailWidthMm)
    : `${mark(tailWidthMm)}/${mark(headWidthMm)}`;
  return holdsNail ? widths : `${widths}×`;
}
