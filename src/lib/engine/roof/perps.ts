import { askedSideLapMm } from './bond-search.ts';
import { type BondName, type BondPair, type BondPiece, layBonds } from './bonds.ts';
import type { SlateSpec } from './slate-spec.ts';
import { type Slope, insetAtTopMm, isSquare, leftAtMm, rightAtMm } from './slope-shape.ts';

/** Where a slope's bonds are set out from: a square side, or the middle between two raked ones. */
export type Datum = 'left' | 'right' | 'centre';

/** One bond over a whole slope: where it may be cut, and the marks to snap lines from. */
export interface SlopeBond {
  readonly jointMm: number;
  /** Places from left to right in the slope's own coordinates, as wide as the slope ever is. */
  readonly places: readonly BondPiece[];
  /**
   * Marks along a course, distances from the datum, strictly rising: the edge of each slate that
   * faces the datum. From the centre they hold to both sides.
   */
  readonly marksMm: readonly number[];
}

/** Both bonds of a slope. */
export interface PerpMarks {
  readonly datum: Datum;
  /** Where the datum lies, in the slope's own coordinates. */
  readonly datumMm: number;
  readonly bonds: Readonly<Record<BondName, SlopeBond>>;
  /** Whether both bonds finish whole; always false where a raked side cuts them. */
  readonly isWhole: boolean;
  /** How the width between two square sides came out; left out where a side is raked. */
  readonly finish?: Pick<BondPair, 'cutPieces' | 'narrowestCutMm' | 'nearestWholeWidthMm'>;
}

/** The bond of a course: courses take A and B in turn, the undereave (0) under A being B. */
export function bondOfCourse(course: number): BondName {
  return course % 2 === 0 ? 'B' : 'A';
}

/**
 * Sets out both bonds of a slope from one datum, so that a perp runs straight from eave to ridge.
 *
 * Between two square sides the bonds finish whole if the joint allows it: see `layBonds`. With one
 * square side they start there at the smallest joint, and the raked side cuts them. With two raked
 * sides they start from the middle of the eave, bond A with a joint on it and bond B with a slate,
 * so that both hips are cut alike. Random widths have no perps: theirs are slates of the mean width,
 * from the middle as well, to count and to draw by. The grid never shifts from course to course; hips, valleys and
 * openings only cut it.
 *
 * @param slope sound, see `slopeProblems`; not modified
 * @param spec sound slate
 * @returns places from the slope's leftmost to its rightmost point, and marks from the datum
 *
 * Accuracy: marks are computed from the datum, so errors do not add up along the course.
 * Source: common practice, no source.
 * @example
 * // 250 mm slates, 2427 mm between verges, overhang 50: marks of bond A 0, 253, 506, …, 2277
 */
export function setOutPerps(slope: Slope, spec: SlateSpec): PerpMarks {
  const isLeftSquare = isSquare(slope, slope.left);
  const isRightSquare = isSquare(slope, slope.right);
  const leftMm = leftAtMm(slope, 0);
  const rightMm = rightAtMm(slope, 0);

  if (isLeftSquare && isRightSquare && !spec.randomWidths) {
    const { A, B, isWhole, ...finish } = layBonds(rightMm - leftMm, spec);
    const datum = slope.setOutFrom;
    const datumMm = datum === 'left' ? leftMm : rightMm;
    const bonds = {
      A: fromSide(A.pieces, A.jointMm, datum, datumMm),
      B: fromSide(B.pieces, B.jointMm, datum, datumMm)
    };
    return { datum, datumMm, bonds, isWhole, finish };
  }

  const { fromMm, toMm } = widestExtent(slope);
  const jointMm = spec.jointMinMm;
  if ((isLeftSquare || isRightSquare) && !spec.randomWidths) {
    const datum = isLeftSquare ? 'left' : 'right';
    const datumMm = isLeftSquare ? leftMm : rightMm;
    const reachMm = isLeftSquare ? toMm - datumMm : datumMm - fromMm;
    const [first, second] = firstPieces(jointMm, spec);
    const bonds = {
      A: fromSide(runOf(first, reachMm, jointMm, spec), jointMm, datum, datumMm),
      B: fromSide(runOf(second, reachMm, jointMm, spec), jointMm, datum, datumMm)
    };
    return { datum, datumMm, bonds, isWhole: false };
  }

  const datumMm = (leftMm + rightMm) / 2;
  const reachMm = Math.max(toMm - datumMm, datumMm - fromMm);
  const bonds = {
    A: fromCentre(jointMm / 2, reachMm, jointMm, datumMm, spec),
    B: fromCentre(-spec.widthMm / 2, reachMm, jointMm, datumMm, spec)
  };
  return { datum: 'centre', datumMm, bonds, isWhole: false };
}

/** The slope's leftmost and rightmost slated points between the eave's tails and the ridge. */
function widestExtent(slope: Slope): { fromMm: number; toMm: number } {
  const leftWidens = insetAtTopMm(slope, slope.left) < 0;
  const rightWidens = insetAtTopMm(slope, slope.right) < 0;
  const atMm = (widens: boolean) => (widens ? slope.rafterLengthMm : -slope.eaveOverhangMm);
  return {
    fromMm: leftAtMm(slope, atMm(leftWidens)),
    toMm: rightAtMm(slope, atMm(rightWidens))
  };
}

type FirstPiece = Pick<BondPiece, 'kind' | 'widthMm'>;

/**
 * What both bonds start with at a square side: a slate, and a slate-and-a-half. Where a
 * slate-and-a-half far from one and a half slates would bring the joints too close, the longer of
 * the two is cut so that they lie half a slate apart.
 */
function firstPieces(jointMm: number, spec: SlateSpec): [FirstPiece, FirstPiece] {
  const { widthMm: slate, slateAndAHalfWidthMm: wide } = spec;
  const lapMm = Math.min(wide - slate, 2 * slate - wide + jointMm) - jointMm;
  const halfMm = (slate + jointMm) / 2;
  const isFarEnough = lapMm >= askedSideLapMm(spec);
  const firstMm = isFarEnough ? slate : Math.min(slate, wide - halfMm);
  const secondMm = isFarEnough ? wide : Math.min(wide, firstMm + halfMm);
  return [
    { kind: firstMm < slate ? 'cut' : 'full', widthMm: firstMm },
    { kind: 'slate-and-a-half', widthMm: secondMm }
  ];
}

/** Places end to end from 0 until they reach past a distance. */
function runOf(first: FirstPiece, reachMm: number, jointMm: number, spec: SlateSpec): BondPiece[] {
  const places: BondPiece[] = [{ ...first, leftMm: 0 }];
  const secondMm = first.widthMm + jointMm;
  const moduleMm = spec.widthMm + jointMm;
  for (let full = 0; secondMm + full * moduleMm < reachMm; full++)
    places.push({ kind: 'full', leftMm: secondMm + full * moduleMm, widthMm: spec.widthMm });
  return places;
}

/** Turns places measured from a side into the slope's coordinates, left to right. */
function fromSide(
  pieces: readonly BondPiece[],
  jointMm: number,
  datum: 'left' | 'right',
  datumMm: number
): SlopeBond {
  const marksMm = pieces.map((piece) => piece.leftMm);
  const places =
    datum === 'left'
      ? pieces.map((piece) => ({ ...piece, leftMm: datumMm + piece.leftMm }))
      : pieces
          .map((piece) => ({ ...piece, leftMm: datumMm - piece.leftMm - piece.widthMm }))
          .reverse();
  return { jointMm, places, marksMm };
}

/** Full slates to both sides of a centre; the first one to the right of it starts at `firstMm`. */
function fromCentre(
  firstMm: number,
  reachMm: number,
  jointMm: number,
  datumMm: number,
  spec: SlateSpec
): SlopeBond {
  const moduleMm = spec.widthMm + jointMm;
  const toEachSide = Math.ceil((reachMm + spec.widthMm) / moduleMm);
  const places: BondPiece[] = [];
  for (let step = -toEachSide; step <= toEachSide; step++)
    places.push({
      kind: 'full',
      leftMm: datumMm + firstMm + step * moduleMm,
      widthMm: spec.widthMm
    });
  const marksMm = spec.randomWidths
    ? []
    : places.map((place) => place.leftMm - datumMm).filter((mark) => mark > 0);
  return { jointMm, places, marksMm };
}
