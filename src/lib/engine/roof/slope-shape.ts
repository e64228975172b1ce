/** What bounds a slope on one side. */
export type EdgeKind = 'verge' | 'hip' | 'valley' | 'abutment';

/**
 * One side of a slope. Its line is straight from eave to ridge, given either by how far it has
 * moved inwards at the ridge (negative outwards, as a valley does), or by its angle to the eave on
 * plan, 90° being square to the eave.
 */
export type SlopeEdge =
  | { readonly kind: EdgeKind; readonly insetAtTopMm: number }
  | { readonly kind: EdgeKind; readonly planAngleDegrees: number };

/** A rectangle that no slate covers, in the slope's own coordinates. */
export interface Opening {
  readonly kind: 'rooflight' | 'chimney';
  /** From the eave's left corner along the eave, mm. */
  readonly fromLeftMm: number;
  readonly widthMm: number;
  /** From the eave line up the rafter, mm. */
  readonly fromEaveMm: number;
  readonly heightMm: number;
}

/**
 * One slope of a roof, as measured on its surface. Coordinates: x along the eave from its left
 * corner seen from outside, y up the rafter from the eave line, both in mm.
 */
export interface Slope {
  readonly id: string;
  readonly name: string;
  readonly rafterLengthMm: number;
  /** Along the eave between the two edges, without overhang. */
  readonly eaveWidthMm: number;
  readonly pitchDegrees: number;
  /** Height of this slope's eave above the lowest eave of the job. */
  readonly eaveHeightMm: number;
  readonly left: SlopeEdge;
  readonly right: SlopeEdge;
  readonly openings: readonly Opening[];
  /** How far the tails of the first course reach past the eave line. */
  readonly eaveOverhangMm: number;
  /** How far the slates reach past each verge. */
  readonly vergeOverhangMm: number;
  /** From the top batten's centre line up to the ridge line. */
  readonly ridgeGapMm: number;
  /** The side the bonds are set out from where both sides are square to the eave. */
  readonly setOutFrom: 'left' | 'right';
  /** Rafters at the left and right edge, the rafter being the middle one; 0 where not measured. */
  readonly rafterLeftMm: number;
  readonly rafterRightMm: number;
  /** Width along the ridge, and from the eave's left corner to the ridge's right; 0 likewise. */
  readonly ridgeWidthMm: number;
  readonly diagonalMm: number;
}

/** What must be given of a slope; the rest has a customary value. */
export type SlopeInput = Partial<Slope> &
  Pick<Slope, 'id' | 'rafterLengthMm' | 'eaveWidthMm' | 'pitchDegrees'>;

const SQUARE_VERGE: SlopeEdge = Object.freeze({ kind: 'verge', insetAtTopMm: 0 });

/**
 * A full slope from the fields given: verges on both sides, eave and verge overhang 50 mm, top
 * batten 25 mm below the ridge line, set out from the left.
 *
 * Source: eave and verge overhang from a trade manual; ridge gap is common practice, no source.
 * @example makeSlope({ id: 'a', rafterLengthMm: 4000, eaveWidthMm: 6000, pitchDegrees: 35 })
 */
export function makeSlope(given: SlopeInput): Slope {
  return {
    name: '',
    eaveHeightMm: 0,
    left: SQUARE_VERGE,
    right: SQUARE_VERGE,
    openings: [],
    eaveOverhangMm: 50,
    vergeOverhangMm: 50,
    ridgeGapMm: 25,
    setOutFrom: 'left',
    rafterLeftMm: 0,
    rafterRightMm: 0,
    ridgeWidthMm: 0,
    diagonalMm: 0,
    ...given
  };
}

/**
 * How far an edge has moved inwards at the ridge, mm; negative for an edge that widens the slope.
 *
 * An edge at plan angle a moves inwards by run / tan a, the run being rafter × cos pitch; a valley
 * moves outwards by as much. Equal pitches meet at 45° on plan.
 * @example
 * // a hip at 45° on plan on a 5000 mm rafter at 36.87° (run 4000 mm) moves inwards by 4000 mm
 */
export function insetAtTopMm(
  slope: Pick<Slope, 'rafterLengthMm' | 'pitchDegrees'>,
  edge: SlopeEdge
): number {
  if ('insetAtTopMm' in edge) return edge.insetAtTopMm;
  if (edge.planAngleDegrees === 90) return 0;
  const runMm = slope.rafterLengthMm * Math.cos(radians(slope.pitchDegrees));
  const movedMm = runMm / Math.tan(radians(edge.planAngleDegrees));
  return edge.kind === 'valley' ? -movedMm : movedMm;
}

/** Whether an edge is square to the eave, so that slates finish against it uncut. */
export function isSquare(slope: Slope, edge: SlopeEdge): boolean {
  return Math.abs(insetAtTopMm(slope, edge)) < 0.5;
}

/** Edges that cross below the ridge by no more than this are taken to meet on it: tape error. */
export const MEETING_MM = 20;

/**
 * The slope with edges that cross just below the ridge made to meet on it, each giving way in
 * proportion. Measured hip ends seldom close to the millimetre; beyond `MEETING_MM` the slope is
 * left as it is and `slopeProblems` refuses it.
 */
export function meetingAtRidge(slope: Slope): Slope {
  const [left, right] = [insetAtTopMm(slope, slope.left), insetAtTopMm(slope, slope.right)];
  const crossedMm = left + right - slope.eaveWidthMm;
  if (crossedMm <= 0 || crossedMm > MEETING_MM) return slope;
  const share = slope.eaveWidthMm / (left + right);
  return {
    ...slope,
    left: { kind: slope.left.kind, insetAtTopMm: left * share },
    right: { kind: slope.right.kind, insetAtTopMm: slope.eaveWidthMm - left * share }
  };
}

/**
 * Left end of what is slated at a height up the rafter: the edge, less the overhang at a verge.
 * Below the eave line the edge runs on in its own direction.
 */
export function leftAtMm(slope: Slope, fromEaveMm: number): number {
  const moved = (insetAtTopMm(slope, slope.left) * fromEaveMm) / slope.rafterLengthMm;
  return moved - overhangAt(slope, slope.left);
}

/** Right end of what is slated at a height up the rafter: see {@link leftAtMm}. */
export function rightAtMm(slope: Slope, fromEaveMm: number): number {
  const moved = (insetAtTopMm(slope, slope.right) * fromEaveMm) / slope.rafterLengthMm;
  return slope.eaveWidthMm - moved + overhangAt(slope, slope.right);
}

/** Slated width at a height up the rafter, mm; openings are not taken off; never below 0. */
export function widthAtMm(slope: Slope, fromEaveMm: number): number {
  return Math.max(0, rightAtMm(slope, fromEaveMm) - leftAtMm(slope, fromEaveMm));
}

/**
 * The slope's openings as the slates meet them: one that reaches a verge takes its overhang too.
 */
export function openingsAsSlated(slope: Slope): Opening[] {
  return slope.openings.map((opening) => {
    const right = opening.fromLeftMm + opening.widthMm;
    const takesLeft = slope.left.kind === 'verge' && isSquare(slope, slope.left);
    const takesRight = slope.right.kind === 'verge' && isSquare(slope, slope.right);
    const from = takesLeft && opening.fromLeftMm <= 0 ? -slope.vergeOverhangMm : opening.fromLeftMm;
    const to =
      takesRight && right >= slope.eaveWidthMm ? slope.eaveWidthMm + slope.vergeOverhangMm : right;
    return { ...opening, fromLeftMm: from, widthMm: to - from };
  });
}

/**
 * Slated area between two heights up the rafter, overhangs in and openings out, mm².
 *
 * Exact: the edges are straight, so a strip is a trapezium. The slope must have no problem, in
 * particular its openings lie inside it and do not overlap.
 * @example
 * // 6000 mm wide with two 50 mm verge overhangs, 200 mm of rafter: 6100 × 200
 */
export function stripAreaMm2(slope: Slope, fromMm: number, toMm: number): number {
  const meanWidth = (widthAtMm(slope, fromMm) + widthAtMm(slope, toMm)) / 2;
  let area = meanWidth * (toMm - fromMm);
  for (const opening of openingsAsSlated(slope)) {
    const top = Math.min(toMm, opening.fromEaveMm + opening.heightMm);
    const bottom = Math.max(fromMm, opening.fromEaveMm);
    if (top > bottom) area -= opening.widthMm * (top - bottom);
  }
  return area;
}

/** The whole slated area of a slope, from the tails at the eave to the ridge line, mm². */
export function slopeAreaMm2(slope: Slope): number {
  return stripAreaMm2(slope, -slope.eaveOverhangMm, slope.rafterLengthMm);
}

function overhangAt(slope: Slope, edge: SlopeEdge): number {
  return edge.kind === 'verge' ? slope.vergeOverhangMm : 0;
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
