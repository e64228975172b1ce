import { isTrimmed, type PieceKind } from './bonds.ts';
import type { CourseLine } from './courses.ts';
import { hasNailRoom } from './nail-room.ts';
import type { SlopeBond } from './perps.ts';
import type { SlateSpec } from './slate-spec.ts';
import { type Opening, type Slope, leftAtMm, openingsAsSlated, rightAtMm } from './slope-shape.ts';

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
  /** Where its slate would end if neither hip, valley nor notch cut it. */
  readonly slateLeftMm: number;
  readonly slateRightMm: number;
  /** Whether a hole on its hole line keeps 25 mm of slate round it: see `hasNailRoom`. */
  readonly holdsNail: boolean;
}

/** Neighbouring pieces without an opening between them, left to right. */
export interface PieceRun {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly pieces: readonly Piece[];
}

/** A course's tail, head and margin, and the hole line of its slates, up the rafter, mm. */
export interface HoledLine extends Pick<CourseLine, 'tailMm' | 'headMm' | 'marginMm'> {
  readonly holeMm: number;
}

/** Widths within this are one width. */
const SAME_MM = 0.01;

/** Left and right end of something along a course, mm. */
interface Extent {
  readonly leftMm: number;
  readonly rightMm: number;
}

/** A stretch of a course between two boundaries, where they cross its three lines. */
interface Stretch {
  readonly tail: Extent;
  readonly margin: Extent;
  readonly head: Extent;
  /** Around tail and margin together. */
  readonly around: Extent;
  /** The openings to both sides of it, without the slope's sides. */
  readonly between: Extent;
}

/** A place of a bond, or two that are filled with one slate-and-a-half. */
interface Place extends Extent {
  readonly kind: PieceKind;
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
  line: HoledLine,
  bond: SlopeBond,
  spec: SlateSpec
): PieceRun[] {
  const topMm = slope.rafterLengthMm;
  const lines = {
    tailMm: line.tailMm,
    marginMm: Math.min(line.tailMm + line.marginMm, topMm),
    headMm: Math.min(line.headMm, topMm)
  };
  const openings = openingsAsSlated(slope);
  const met = openings.filter((opening) =>
    overlaps(upRafter(opening), [lines.tailMm, lines.headMm])
  );
  const places = bond.places.map(({ kind, leftMm, widthMm }) => ({
    kind,
    leftMm,
    rightMm: leftMm + widthMm
  }));
  const runs: PieceRun[] = [];
  for (const stretch of stretchesOf(slope, lines, openings)) {
    const showing = places.filter((place) => shows(place, stretch) > spec.jointMaxMm + SAME_MM);
    if (showing.length === 0) continue;
    const pieces = joinNarrowEnds(showing, stretch, slope.setOutFrom, spec).map((place) =>
      pieceAt(place, stretch, met, spec, (sides) => hasNailRoom(sides, slope, met, line))
    );
    const last = pieces[pieces.length - 1];
    runs.push({ leftMm: pieces[0].leftMm, rightMm: last.leftMm + last.widthMm, pieces });
  }
  return runs;
}

/** What fills a place once the stretch and the openings it meets have cut it. */
function pieceAt(
  place: Place,
  stretch: Stretch,
  met: readonly Opening[],
  spec: SlateSpec,
  hasRoom: (sides: Extent) => boolean
): Piece {
  const { leftMm, rightMm } = clipped(place, stretch.around);
  const widthMm = rightMm - leftMm;
  const placeMm = place.rightMm - place.leftMm;
  const tailWidthMm = widthWithin(place, stretch.tail);
  const headWidthMm = widthWithin(place, stretch.head);
  const isWhole = Math.min(tailWidthMm, headWidthMm) > placeMm - SAME_MM;
  const isNotched = met.some((opening) => overlaps(alongEave(opening), [leftMm, rightMm]));
  // Of random widths a wider slate is one of them.
  const isWide =
    !spec.randomWidths && place.kind === 'slate-and-a-half' && widthMm > spec.widthMm + SAME_MM;
  const isCut = !isWhole || isNotched || isTrimmed({ kind: place.kind, widthMm }, spec);
  const sides = clipped(place, stretch.between);
  // What shows of a wide place may come from a plain slate: it keeps the side that is not cut.
  const ownMm = isWide ? spec.slateAndAHalfWidthMm : spec.widthMm;
  const slateMm = spec.randomWidths ? Infinity : ownMm;
  const isLeftCut = leftMm > place.leftMm + SAME_MM;
  const slateLeftMm = isLeftCut ? Math.max(sides.leftMm, rightMm - slateMm) : sides.leftMm;
  const slateRightMm = Math.min(sides.rightMm, slateLeftMm + slateMm);
  return {
    kind: isWide ? 'slate-and-a-half' : isCut ? 'cut' : 'full',
    isCut,
    leftMm,
    widthMm,
    tailWidthMm,
    marginWidthMm: widthWithin(place, stretch.margin),
    headWidthMm,
    slateLeftMm,
    slateRightMm,
    holdsNail: hasRoom({ leftMm: slateLeftMm, rightMm: slateRightMm })
  };
}

/** The stretches of a course between the slope's sides and the openings that take its margin. */
function stretchesOf(
  slope: Slope,
  lines: { readonly tailMm: number; readonly marginMm: number; readonly headMm: number },
  openings: readonly Opening[]
): Stretch[] {
  const blocking = openings
    .filter((opening) => {
      const [fromMm, toMm] = upRafter(opening);
      return fromMm <= lines.tailMm + SAME_MM && toMm >= lines.marginMm - SAME_MM;
    })
    .map(alongEave)
    .sort(([one], [other]) => one - other);
  const sides = (atMm: number) => ({
    leftMm: leftAtMm(slope, atMm),
    rightMm: rightAtMm(slope, atMm)
  });
  const [tail, margin, head] = [lines.tailMm, lines.marginMm, lines.headMm].map(sides);
  return [...blocking, undefined].map((next, index): Stretch => {
    const leftMm = index === 0 ? -Infinity : blocking[index - 1][1];
    const between = { leftMm, rightMm: next ? next[0] : Infinity };
    const stretch = {
      tail: clipped(tail, between),
      margin: clipped(margin, between),
      head: clipped(head, between)
    };
    const around = {
      leftMm: Math.min(stretch.tail.leftMm, stretch.margin.leftMm),
      rightMm: Math.max(stretch.tail.rightMm, stretch.margin.rightMm)
    };
    return { ...stretch, around, between };
  });
}

/** The greatest width at which a place shows, at the tail or at the top of the margin. */
function shows(place: Place, stretch: Stretch): number {
  return Math.max(widthWithin(place, stretch.tail), widthWithin(place, stretch.margin));
}

function clipped(one: Extent, other: Extent): Extent {
  return {
    leftMm: Math.max(one.leftMm, other.leftMm),
    rightMm: Math.min(one.rightMm, other.rightMm)
  };
}

function widthWithin(one: Extent, other: Extent): number {
  const width = Math.min(one.rightMm, other.rightMm) - Math.max(one.leftMm, other.leftMm);
  return Math.max(0, width);
}

function upRafter(opening: Opening): [fromMm: number, toMm: number] {
  return [opening.fromEaveMm, opening.fromEaveMm + opening.heightMm];
}

function alongEave(opening: Opening): [fromMm: number, toMm: number] {
  return [opening.fromLeftMm, opening.fromLeftMm + opening.widthMm];
}

function overlaps([from, to]: readonly number[], [otherFrom, otherTo]: readonly number[]): boolean {
  return from < otherTo - SAME_MM && otherFrom < to - SAME_MM;
}

/**
 * Lays an end piece below the limit as one slate-and-a-half with its neighbour, where it reaches.
 * The narrower end comes first; of two alike, the one on the side the slope is set out from.
 */
function joinNarrowEnds(
  places: readonly Place[],
  stretch: Stretch,
  firstSide: 'left' | 'right',
  spec: SlateSpec
): Place[] {
  const joined = [...places];
  const joinAt = (side: 'left' | 'right') => {
    const end = side === 'left' ? joined[0] : joined[joined.length - 1];
    if (joined.length < 2 || shows(end, stretch) >= spec.narrowestCutMm - SAME_MM) return;
    const [left, right] = side === 'left' ? joined.slice(0, 2) : joined.slice(-2);
    const reachMm = widthWithin({ leftMm: left.leftMm, rightMm: right.rightMm }, stretch.around);
    if (reachMm > spec.slateAndAHalfWidthMm + SAME_MM) return;
    joined.splice(side === 'left' ? 0 : -2, 2, {
      kind: 'slate-and-a-half',
      leftMm: left.leftMm,
      rightMm: right.rightMm
    });
  };
  const wider = shows(joined[0], stretch) - shows(joined[joined.length - 1], stretch);
  const leftFirst = Math.abs(wider) < SAME_MM ? firstSide === 'left' : wider < 0;
  joinAt(leftFirst ? 'left' : 'right');
  joinAt(leftFirst ? 'right' : 'left');
  return joined;
}

/** What the runs of a course fill, joints included, mm. Nothing is thrown. */
export function filledMm({ runs }: { readonly runs: readonly PieceRun[] }): number {
  return runs.reduce((sum, { leftMm, rightMm }) => sum + rightMm - leftMm, 0);
}
