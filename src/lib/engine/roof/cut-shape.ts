import type { HoledLine, Piece } from './pieces.ts';
import { type Slope, insetAtTopMm, leftAtMm, openingsAsSlated, rightAtMm } from './slope-shape.ts';

type Side = 'left' | 'right';

/** How a hip or valley cuts the slates along it. */
export interface EdgeCut {
  readonly side: Side;
  /** Which way the cut leans as it goes from tail to head. */
  readonly leans: Side;
  /** Angle between the cut and the side of the slate, degrees: 0 would be square to the eave. */
  readonly angleDegrees: number;
}

/** A side of a piece that a hip or valley cuts. */
export interface RakedSide extends EdgeCut {
  /** How far up the side the slate keeps its own edge, mm: 0 where the cut takes the whole side. */
  readonly keptMm: number;
}

/** A rectangle that an opening takes out of a piece, seen from the left side of the uncut slate and its tail. */
export interface Notch {
  readonly fromLeftMm: number;
  readonly widthMm: number;
  readonly fromTailMm: number;
  readonly heightMm: number;
}

/** A cut piece in full, from its tail to its head, as it is marked on the slate. */
export interface CutShape {
  readonly from: 'slate' | 'slate-and-a-half';
  readonly lengthMm: number;
  readonly tailWidthMm: number;
  readonly headWidthMm: number;
  /** Corners from the right of the tail, against the clock, in the slope's own coordinates, mm. */
  readonly corners: readonly (readonly [alongMm: number, upMm: number])[];
  readonly rakes: readonly RakedSide[];
  readonly notches: readonly Notch[];
  readonly holdsNail: boolean;
}

/** Lengths closer than this are one length. */
const SAME_MM = 1e-6;

/**
 * How a piece is cut in full: what `piecesInCourse` gives of it is what shows between two tails, while
 * the slate runs on under the courses above, and its cut with it.
 *
 * @param piece of the course
 * @param line the course's tail and head up the rafter, mm
 * @param slope the slope the piece lies on, as laid
 * @returns widths at the piece's own tail and head, corners, raked sides, notches; a piece that a hip
 * takes to a point has a head of 0 and ends below it
 *
 * Accuracy: exact for straight edges. Cost: linear in the openings.
 * Source: geometry identity. A hip that moves inwards by i on a rafter r leans by atan(i / r) on the
 * slates; of equal pitches p at a square corner that is atan(cos p), the jack's side cut of the steel square.
 * @example
 * // equal pitches of 8 in 12 at a square corner: 39.8°, 12 in 14.42
 */
export function cutShape(
  piece: Piece,
  line: Pick<HoledLine, 'tailMm' | 'headMm'>,
  slope: Slope
): CutShape {
  const { tailMm } = line;
  const headMm = Math.min(line.headMm, slope.rafterLengthMm);
  const leftAt = (atMm: number) => Math.max(piece.slateLeftMm, leftAtMm(slope, atMm));
  const rightAt = (atMm: number) => Math.min(piece.slateRightMm, rightAtMm(slope, atMm));
  const inner = (atMm: number) => atMm > tailMm + SAME_MM && atMm < headMm - SAME_MM;
  const crossings = [
    heightAt(slope, 'left', piece.slateLeftMm),
    heightAt(slope, 'right', piece.slateRightMm)
  ].filter(inner);
  const stops = [tailMm, ...crossings.toSorted((one, other) => one - other), headMm];
  const [footMm, apexMm] = stretchOf(stops, (atMm) => rightAt(atMm) - leftAt(atMm));
  const heights = [
    footMm,
    ...stops.filter((atMm) => atMm > footMm && atMm < apexMm),
    apexMm
  ].filter((atMm, index, all) => index === 0 || atMm - all[index - 1] > SAME_MM);
  const corners = [
    ...heights.map((atMm) => [rightAt(atMm), atMm] as const),
    ...heights.toReversed().map((atMm) => [leftAt(atMm), atMm] as const)
  ].filter(([x, y], index, all) => {
    const [lastX, lastY] = all.at(index - 1)!;
    return Math.hypot(x - lastX, y - lastY) > SAME_MM;
  });
  const widthAt = (atMm: number) => Math.max(0, rightAt(atMm) - leftAt(atMm));
  return {
    from: piece.kind === 'slate-and-a-half' ? 'slate-and-a-half' : 'slate',
    lengthMm: headMm - tailMm,
    tailWidthMm: widthAt(tailMm),
    headWidthMm: widthAt(headMm),
    corners,
    rakes: (['left', 'right'] as const).flatMap((side) =>
      rakeOf(side, piece, slope, footMm, apexMm)
    ),
    notches: openingsAsSlated(slope).flatMap((opening): Notch[] => {
      const leftMm = Math.max(opening.fromLeftMm, piece.slateLeftMm);
      const rightMm = Math.min(opening.fromLeftMm + opening.widthMm, piece.slateRightMm);
      const fromMm = Math.max(opening.fromEaveMm, tailMm);
      const toMm = Math.min(opening.fromEaveMm + opening.heightMm, headMm);
      if (rightMm - leftMm <= SAME_MM || toMm - fromMm <= SAME_MM) return [];
      return [
        {
          fromLeftMm: leftMm - piece.slateLeftMm,
          widthMm: rightMm - leftMm,
          fromTailMm: fromMm - tailMm,
          heightMm: toMm - fromMm
        }
      ];
    }),
    holdsNail: piece.holdsNail
  };
}

/** How an edge of a slope cuts its slates; undefined for one that is square to the eave. */
export function edgeCut(slope: Slope, side: Side): EdgeCut | undefined {
  const insetMm = insetAtTopMm(slope, slope[side]);
  if (Math.abs(insetMm) < 0.5) return undefined;
  return {
    side,
    leans: insetMm > 0 === (side === 'left') ? 'right' : 'left',
    angleDegrees: (Math.atan(Math.abs(insetMm) / slope.rafterLengthMm) * 180) / Math.PI
  };
}

/** Where a slope's edge reaches a place along the eave, up the rafter; NaN for a square edge. */
function heightAt(slope: Slope, side: Side, alongMm: number): number {
  const edgeAt = side === 'left' ? leftAtMm : rightAtMm;
  const atEaveMm = edgeAt(slope, 0);
  const perMm = (edgeAt(slope, slope.rafterLengthMm) - atEaveMm) / slope.rafterLengthMm;
  return (alongMm - atEaveMm) / perMm;
}

/**
 * From where to where a piece has a width: a hip may bring it to a point below its head, a valley may
 * begin it above its tail. The width is a straight line between the heights given.
 */
function stretchOf(
  stops: readonly number[],
  widthAt: (atMm: number) => number
): [footMm: number, apexMm: number] {
  let [footMm, apexMm] = [stops[0], stops[stops.length - 1]];
  for (const [index, toMm] of stops.slice(1).entries()) {
    const fromMm = stops[index];
    const [below, above] = [widthAt(fromMm), widthAt(toMm)];
    const atMm = fromMm + ((toMm - fromMm) * below) / (below - above);
    if (below < 0 && above >= 0) footMm = atMm;
    if (below >= 0 && above < 0) apexMm = atMm;
  }
  return [footMm, apexMm];
}

function rakeOf(
  side: Side,
  piece: Piece,
  slope: Slope,
  fromMm: number,
  endMm: number
): RakedSide[] {
  const cut = edgeCut(slope, side);
  const edgeAt = side === 'left' ? leftAtMm : rightAtMm;
  const slateMm = side === 'left' ? piece.slateLeftMm : piece.slateRightMm;
  const takes = (atMm: number) =>
    side === 'left' ? edgeAt(slope, atMm) - slateMm : slateMm - edgeAt(slope, atMm);
  if (!cut || Math.max(takes(fromMm), takes(endMm)) <= SAME_MM) return [];
  const isHip = insetAtTopMm(slope, slope[side]) > 0;
  const meetsMm = heightAt(slope, side, slateMm);
  const isMet = meetsMm > fromMm && meetsMm < endMm;
  return [{ ...cut, keptMm: isMet ? (isHip ? meetsMm - fromMm : endMm - meetsMm) : 0 }];
}

/** The courses round an opening. */
export interface OpeningCourses {
  /** The last course that runs past whole below it, and the first above it; undefined where none does. */
  readonly below?: number;
  readonly above?: number;
  /** Courses that are cut round it, from the lowest to the highest. */
  readonly cut: readonly number[];
}

/**
 * Which courses an opening lies between, and which are cut round it: any whose slates reach into it
 * between tail and head.
 *
 * @param courses of the slope, from the eaves up
 * @param opening up the rafter, mm
 * @example
 * // tails every 200 mm from −50, slates of 500: an opening from 900 to 1500 cuts courses 4 to 8
 */
export function coursesRoundOpening(
  courses: readonly (Pick<HoledLine, 'tailMm' | 'headMm'> & { readonly course: number })[],
  opening: { readonly fromEaveMm: number; readonly heightMm: number }
): OpeningCourses {
  const topMm = opening.fromEaveMm + opening.heightMm;
  const below = courses.filter(({ headMm }) => headMm <= opening.fromEaveMm + SAME_MM).at(-1);
  const above = courses.find(({ tailMm }) => tailMm >= topMm - SAME_MM);
  return {
    ...(below && { below: below.course }),
    ...(above && { above: above.course }),
    cut: courses
      .filter(
        ({ tailMm, headMm }) => headMm > opening.fromEaveMm + SAME_MM && tailMm < topMm - SAME_MM
      )
      .map(({ course }) => course)
  };
}
