import { tailToBattenMm } from './gauge.ts';
import type { FieldProblem } from './field-problem.ts';
import type { SlateSpec } from './slate-spec.ts';
import { type Slope, isSquare } from './slope-shape.ts';

/** A point of a slope: x along the eave from its left corner, y square up from it, mm. */
interface Corner {
  readonly xMm: number;
  readonly yMm: number;
}

/** How far a slope that was meant to be a rectangle is out of square. All mm. */
export interface OutOfSquare {
  /** Rafters as measured at the left, in the middle and at the right. */
  readonly leftMm: number;
  readonly middleMm: number;
  readonly rightMm: number;
  /** How much longer the right side is than the left; negative where it is shorter. */
  readonly ridgeRisesMm: number;
  /** How far the middle lies above the straight line between the ends; negative below. */
  readonly bowMm: number;
  /** How much wider the ridge is than the eave; negative narrower; 0 where it was not measured. */
  readonly ridgeWiderMm: number;
  /**
   * How far each verge has moved inwards at the ridge, square to the eave; negative outwards.
   * Undefined where no diagonal was measured.
   */
  readonly verges?: { readonly leftMm: number; readonly rightMm: number };
}

/** A batten's centre line up the left edge, the middle and the right edge, from the eave line, mm. */
export interface SharedBatten {
  readonly batten: number;
  readonly leftMm: number;
  readonly middleMm: number;
  readonly rightMm: number;
}

/** Rafters that differ by less are one: a tape on a roof reads no better. Ours. */
const TAPE_MM = 3;

type Measured = Pick<
  Slope,
  | 'rafterLengthMm'
  | 'eaveWidthMm'
  | 'rafterLeftMm'
  | 'rafterRightMm'
  | 'ridgeWidthMm'
  | 'diagonalMm'
>;

/** Whether somebody measured a slope for square. */
function isMeasured(slope: Measured): boolean {
  const { rafterLeftMm, rafterRightMm, ridgeWidthMm, diagonalMm } = slope;
  return rafterLeftMm > 0 || rafterRightMm > 0 || ridgeWidthMm > 0 || diagonalMm > 0;
}

/**
 * How far a slope is out of square, from its measures; undefined where it was not measured for it, or
 * is square to within 3 mm.
 *
 * The rafter is the middle one; a side of 0 was not measured and counts as the middle. With the ridge
 * and the diagonal from the eave's left corner to the ridge's right corner, the four corners are those
 * of the two triangles that the diagonal makes (three sides give a triangle: law of cosines, Euclid II
 * 12 and 13).
 *
 * @param slope measures in mm, sound by `outOfSquareProblems`; not modified
 */
export function outOfSquareOf(slope: Measured): OutOfSquare | undefined {
  if (!isMeasured(slope)) return undefined;
  const middleMm = slope.rafterLengthMm;
  const leftMm = slope.rafterLeftMm || middleMm;
  const rightMm = slope.rafterRightMm || middleMm;
  const corners = cornersOf(slope);
  const found: OutOfSquare = {
    leftMm,
    middleMm,
    rightMm,
    ridgeRisesMm: rightMm - leftMm,
    bowMm: middleMm - (leftMm + rightMm) / 2,
    ridgeWiderMm: slope.ridgeWidthMm > 0 ? slope.ridgeWidthMm - slope.eaveWidthMm : 0,
    ...(corners && {
      verges: {
        leftMm: corners.ridgeLeft.xMm,
        rightMm: slope.eaveWidthMm - corners.ridgeRight.xMm
      }
    })
  };
  const offs = [
    found.ridgeRisesMm,
    found.bowMm,
    found.ridgeWiderMm,
    found.verges?.leftMm ?? 0,
    found.verges?.rightMm ?? 0
  ];
  return offs.some((off) => Math.abs(off) >= TAPE_MM) ? found : undefined;
}

/** Both ends of the ridge; undefined without a diagonal, or where no slope has such sides. */
function cornersOf(slope: Measured): { ridgeLeft: Corner; ridgeRight: Corner } | undefined {
  const { eaveWidthMm: eave, diagonalMm: diagonal } = slope;
  const ridge = slope.ridgeWidthMm || eave;
  if (diagonal <= 0) return undefined;
  const left = slope.rafterLeftMm || slope.rafterLengthMm;
  const right = slope.rafterRightMm || slope.rafterLengthMm;
  // At the eave's left corner: from the eave to the diagonal, and from the diagonal to the left side.
  const toDiagonal = angleBetween(eave, diagonal, right);
  const toLeft = angleBetween(diagonal, left, ridge);
  if (toDiagonal === undefined || toLeft === undefined) return undefined;
  const at = (angle: number, distance: number): Corner => ({
    xMm: distance * Math.cos(angle),
    yMm: distance * Math.sin(angle)
  });
  return { ridgeRight: at(toDiagonal, diagonal), ridgeLeft: at(toDiagonal + toLeft, left) };
}

/** The angle between two sides of a triangle, from the side across; undefined where they do not close. */
function angleBetween(one: number, other: number, across: number): number | undefined {
  const cosine = (one ** 2 + other ** 2 - across ** 2) / (2 * one * other);
  return Math.abs(cosine) <= 1 ? Math.acos(cosine) : undefined;
}

/**
 * The slope that courses are set out on: as long as its longest line and as wide as its widest, so that
 * no gauge is above the largest and no course is short of a slate. A slope not measured for square is
 * given back as it is.
 */
export function asMeasured(slope: Slope): Slope {
  const found = outOfSquareOf(slope);
  if (!found) return slope;
  const widerLeft = Math.max(0, -(found.verges?.leftMm ?? 0));
  const widerRight = found.verges
    ? Math.max(0, -found.verges.rightMm)
    : Math.max(0, found.ridgeWiderMm);
  return {
    ...slope,
    rafterLengthMm: longestMm(slope, found),
    eaveWidthMm: slope.eaveWidthMm + widerLeft + widerRight,
    // Places are from the leftmost line up the slope, not from the eave's corner.
    openings: slope.openings.map((opening) => ({
      ...opening,
      fromLeftMm: opening.fromLeftMm + widerLeft
    }))
  };
}

/** The longest line up the slope, over the verges too, where a sloping ridge rises on. */
function longestMm(slope: Slope, { leftMm, middleMm, rightMm }: OutOfSquare): number {
  const perMm = (2 * Math.abs(Math.max(leftMm, rightMm) - middleMm)) / slope.eaveWidthMm;
  return Math.max(leftMm, middleMm, rightMm) + perMm * slope.vergeOverhangMm;
}

/**
 * Batten lines of a slope out of square, with the difference shared over its courses.
 *
 * The first two battens run along the eave, the top one along the ridge; between them every line has
 * the same number of equal spaces, so that each course turns by the same small amount. The number of
 * spaces is that of the longest line: no space is above it, and no headlap below the asked.
 *
 * @param slope sound; as measured, before `asMeasured`
 * @param spaces equal spaces between the batten of course 1 and the top batten
 * @returns battens 0 upwards; measured up each edge and up the middle from the eave line
 * Source: common practice, no source.
 */
export function sharedBattens(slope: Slope, spec: SlateSpec, spaces: number): SharedBatten[] {
  const found = outOfSquareOf(slope);
  const { leftMm, middleMm, rightMm } = found ?? {
    leftMm: slope.rafterLengthMm,
    middleMm: slope.rafterLengthMm,
    rightMm: slope.rafterLengthMm
  };
  const firstMm = tailToBattenMm(spec) - slope.eaveOverhangMm;
  const gauge = (rafterMm: number): number =>
    spaces === 0 ? 0 : (rafterMm - slope.ridgeGapMm - firstMm) / spaces;
  const [left, middle, right] = [gauge(leftMm), gauge(middleMm), gauge(rightMm)];
  return Array.from({ length: spaces + 2 }, (_, batten) => ({
    batten,
    leftMm: firstMm + (batten - 1) * left,
    middleMm: firstMm + (batten - 1) * middle,
    rightMm: firstMm + (batten - 1) * right
  }));
}

/**
 * What keeps the measures of a slope out of square from being shared, field by field.
 *
 * Only a slope that was meant to be a rectangle can be shared out: a hip or valley cuts every course
 * anyway. A difference of more than one course is too much to share; a diagonal must fit the sides.
 *
 * @param gaugeMm the largest gauge of the slate, mm
 * @returns the rafters first, then ridge and diagonal; `nearest` is the limit to the side that works
 */
export function outOfSquareProblems(slope: Slope, gaugeMm: number): FieldProblem[] {
  if (!isMeasured(slope)) return [];
  const sides = [
    ['rafterLeftMm', slope.rafterLeftMm],
    ['rafterRightMm', slope.rafterRightMm]
  ] as const;
  if (!isSquare(slope, slope.left) || !isSquare(slope, slope.right)) {
    const [field, value] = [...sides, ['ridgeWidthMm', slope.ridgeWidthMm] as const].find(
      ([, own]) => own > 0
    ) ?? ['diagonalMm', slope.diagonalMm];
    return [{ field, code: 'square-sides-only', value, limit: 0, nearest: 0 }];
  }
  const problems: FieldProblem[] = [];
  const middleMm = slope.rafterLengthMm;
  for (const [field, value] of sides) {
    if (value <= 0 || Math.abs(value - middleMm) <= gaugeMm) continue;
    const limit = middleMm + Math.sign(value - middleMm) * gaugeMm;
    const nearest = value > middleMm ? Math.floor(limit) : Math.ceil(limit);
    problems.push({ field, code: 'out-by-a-course', value, limit, nearest });
  }
  const [leftMm, rightMm] = [slope.rafterLeftMm || middleMm, slope.rafterRightMm || middleMm];
  if (problems.length === 0 && Math.abs(rightMm - leftMm) > gaugeMm)
    problems.push({
      field: 'rafterRightMm',
      code: 'out-by-a-course',
      value: rightMm,
      limit: leftMm + Math.sign(rightMm - leftMm) * gaugeMm
    });
  const { ridgeWidthMm, diagonalMm, eaveWidthMm } = slope;
  if (ridgeWidthMm > 0 && Math.abs(ridgeWidthMm - eaveWidthMm) > 2 * gaugeMm)
    problems.push({
      field: 'ridgeWidthMm',
      code: 'out-by-a-course',
      value: ridgeWidthMm,
      limit: eaveWidthMm + Math.sign(ridgeWidthMm - eaveWidthMm) * 2 * gaugeMm
    });
  if (problems.length > 0 || diagonalMm <= 0) return problems;
  return diagonalProblems(slope, gaugeMm, leftMm, rightMm);
}

/** A diagonal closes a triangle with the sides on either side of it, and leans by no more than a course. */
function diagonalProblems(
  slope: Slope,
  gaugeMm: number,
  leftMm: number,
  rightMm: number
): FieldProblem[] {
  const { diagonalMm: value, eaveWidthMm: eave } = slope;
  const ridge = slope.ridgeWidthMm || eave;
  const wrong = (code: FieldProblem['code'], limit: number, nearest: number): FieldProblem[] => [
    { field: 'diagonalMm', code, value, limit, nearest }
  ];
  const most = Math.min(eave + rightMm, ridge + leftMm);
  if (value >= most) return wrong('no-such-diagonal', most, squareDiagonal(eave, rightMm));
  const least = Math.max(Math.abs(eave - rightMm), Math.abs(ridge - leftMm));
  if (value <= least) return wrong('no-such-diagonal', least, squareDiagonal(eave, rightMm));
  const corners = cornersOf(slope);
  const leansMm = corners
    ? Math.max(Math.abs(corners.ridgeLeft.xMm), Math.abs(eave - corners.ridgeRight.xMm))
    : Infinity;
  const squareMm = squareDiagonal(eave, rightMm);
  return leansMm > gaugeMm ? wrong('out-by-a-course', squareMm, squareMm) : [];
}

/** The diagonal of a slope that is square at the eave's right corner, to a whole mm. */
function squareDiagonal(eaveMm: number, rafterMm: number): number {
  return Math.round(Math.hypot(eaveMm, rafterMm));
}
