import { isTrimmed, type PieceKind } from './bonds.ts';
import type { CourseLine } from './courses.ts';
import type { SlopeBond } from './perps.ts';
import type { SlateSpec } from './slate-spec.ts';
import { type Slope, leftAtMm, openingsAsSlated, rightAtMm } from './slope-shape.ts';

/** One slate of a course as it lies, in the slope's own coordinates, mm. */
export interface Piece {
  readonly kind: PieceKind;
  /** Whether it is cut from its slate: narrower, raked, or notched at an opening. */
  readonly isCut: boolean;
  /** Left end and extent of what shows of it; raked sides lie within. */
  readonly leftMm: number;
  readonly widthMm: number;
  /** Width left at its tail, at the next course's tail, and at its own head. */
  readonly tailWidthMm: number;
  readonly marginWidthMm: number;
  readonly headWidthMm: number;
}

/** Neighbouring pieces without an opening between them, left to right. */
export interface PieceRun {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly pieces: readonly Piece[];
}

/** Widths within this are one width. */
const SAME_MM = 0.01;

/** A stretch of a course between two boundaries, each a function of the height up the rafter. */
interface Stretch {
  leftAt(fromEaveMm: number): number;
  rightAt(fromEaveMm: number): number;
}

/** A piece with the places it came from, so that two can be made one. */
interface Place {
  readonly kind: PieceKind;
  readonly leftMm: number;
  readonly rightMm: number;
}

/**
 * The pieces of one course: its bond, cut by the slope's sides and by the openings.
 *
 * A piece is laid wherever some of it shows between the course's tail and the next course's tail. A
 * strip no wider than the widest joint is left to the joint. An opening that takes the whole margin
 * splits the course into runs; one that takes a part only notches the slates it meets. An end piece
 * narrower than the limit is laid as one slate-and-a-half with its neighbour where that reaches.
 *
 * @param slope sound; not modified
 * @param bond the course's bond
 * @returns runs left to right, none empty; no run where the slope has closed or an opening takes all
 *
 * Accuracy: pieces and joints cover each run's width at the tail within one joint at each raked end.
 * Cost: linear in the pieces of the bond.
 * Source: common practice, no source.
 */
export function piecesInCourse(
  slope: Slope,
  line: Pick<CourseLine, 'tailMm' | 'headMm' | 'marginMm'>,
  bond: SlopeBond,
  spec: SlateSpec
): PieceRun[] {
  const marginTopMm = Math.min(line.tailMm + line.marginMm, slope.rafterLengthMm);
  const headMm = Math.min(line.headMm, slope.rafterLengthMm);
  const openings = openingsAsSlated(slope);
  const runs: PieceRun[] = [];
  for (const stretch of stretchesOf(slope, line.tailMm, marginTopMm)) {
    const widthAt = (place: Place, atMm: number) => clippedWidth(place, stretch, atMm);
    const shows = (place: Place) =>
      Math.max(widthAt(place, line.tailMm), widthAt(place, marginTopMm));
    const showing = bond.places
      .map(({ kind, leftMm, widthMm }) => ({ kind, leftMm, rightMm: leftMm + widthMm }))
      .filter((place) => shows(place) > spec.jointMaxMm + SAME_MM);
    if (showing.length === 0) continue;

    const extentOf = (place: Place) => {
      const leftMm = Math.max(
        place.leftMm,
        Math.min(stretch.leftAt(line.tailMm), stretch.leftAt(marginTopMm))
      );
      const rightMm = Math.min(
        place.rightMm,
        Math.max(stretch.rightAt(line.tailMm), stretch.rightAt(marginTopMm))
      );
      return { leftMm, rightMm };
    };
    const pieces = joinNarrowEnds(showing, shows, extentOf, slope.setOutFrom, spec).map(
      (place): Piece => {
        const { leftMm, rightMm } = extentOf(place);
        const wholeMm = place.rightMm - place.leftMm;
        const tailWidthMm = widthAt(place, line.tailMm);
        const headWidthMm = widthAt(place, headMm);
        const isWhole =
          Math.abs(tailWidthMm - wholeMm) < SAME_MM && Math.abs(headWidthMm - wholeMm) < SAME_MM;
        const isNotched = openings.some(
          (opening) =>
            opening.fromLeftMm < rightMm - SAME_MM &&
            opening.fromLeftMm + opening.widthMm > leftMm + SAME_MM &&
            opening.fromEaveMm < headMm - SAME_MM &&
            opening.fromEaveMm + opening.heightMm > line.tailMm + SAME_MM
        );
        const isWide =
          place.kind === 'slate-and-a-half' && rightMm - leftMm > spec.widthMm + SAME_MM;
        const isCut =
          !isWhole || isNotched || isTrimmed({ kind: place.kind, widthMm: rightMm - leftMm }, spec);
        return {
          kind: isWide ? 'slate-and-a-half' : isCut ? 'cut' : 'full',
          isCut,
          leftMm,
          widthMm: rightMm - leftMm,
          tailWidthMm,
          marginWidthMm: widthAt(place, marginTopMm),
          headWidthMm
        };
      }
    );
    const last = pieces[pieces.length - 1];
    runs.push({ leftMm: pieces[0].leftMm, rightMm: last.leftMm + last.widthMm, pieces });
  }
  return runs;
}

/** The stretches of a course between the slope's sides and the openings that take its margin. */
function stretchesOf(slope: Slope, tailMm: number, marginTopMm: number): Stretch[] {
  const blocking = openingsAsSlated(slope)
    .filter(
      ({ fromEaveMm, heightMm }) =>
        fromEaveMm <= tailMm + SAME_MM && fromEaveMm + heightMm >= marginTopMm - SAME_MM
    )
    .sort((one, other) => one.fromLeftMm - other.fromLeftMm);
  const stretches: Stretch[] = [];
  let leftAt = (atMm: number) => leftAtMm(slope, atMm);
  for (const { fromLeftMm, widthMm } of blocking) {
    stretches.push({ leftAt, rightAt: () => fromLeftMm });
    leftAt = () => fromLeftMm + widthMm;
  }
  stretches.push({ leftAt, rightAt: (atMm) => rightAtMm(slope, atMm) });
  return stretches;
}

function clippedWidth(place: Place, stretch: Stretch, atMm: number): number {
  return Math.max(
    0,
    Math.min(place.rightMm, stretch.rightAt(atMm)) - Math.max(place.leftMm, stretch.leftAt(atMm))
  );
}

/**
 * Lays an end piece below the limit as one slate-and-a-half with its neighbour, where it reaches.
 * The narrower end comes first; of two alike, the one on the side the slope is set out from.
 */
function joinNarrowEnds(
  places: readonly Place[],
  shows: (place: Place) => number,
  extentOf: (place: Place) => { leftMm: number; rightMm: number },
  firstSide: 'left' | 'right',
  spec: SlateSpec
): Place[] {
  const joined = [...places];
  const joinAt = (side: 'left' | 'right') => {
    const end = side === 'left' ? joined[0] : joined[joined.length - 1];
    if (joined.length < 2 || shows(end) >= spec.narrowestCutMm - SAME_MM) return;
    const [left, right] = side === 'left' ? joined.slice(0, 2) : joined.slice(-2);
    const reachMm = extentOf(right).rightMm - extentOf(left).leftMm;
    if (reachMm > spec.slateAndAHalfWidthMm + SAME_MM) return;
    joined.splice(side === 'left' ? 0 : -2, 2, {
      kind: 'slate-and-a-half',
      leftMm: left.leftMm,
      rightMm: right.rightMm
    });
  };
  const wider = shows(joined[0]) - shows(joined[joined.length - 1]);
  const leftFirst = Math.abs(wider) < SAME_MM ? firstSide === 'left' : wider < 0;
  joinAt(leftFirst ? 'left' : 'right');
  joinAt(leftFirst ? 'right' : 'left');
  return joined;
}
