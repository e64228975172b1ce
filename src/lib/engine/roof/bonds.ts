import { EngineError, requireFinite } from '../errors.ts';
import type { BondLayout, BondPiece, PieceKind } from './bond-layout.ts';
import { isSoundPair, searchBonds } from './bond-search.ts';
import type { SlateSpec } from './slate-spec.ts';

export type { BondLayout, BondName, BondPiece, PieceKind } from './bond-layout.ts';

/** Both bonds across one width. */
export interface BondPair {
  readonly A: BondLayout;
  readonly B: BondLayout;
  /** Whether both bonds finish without a cut piece. */
  readonly isWhole: boolean;
  /** Pieces that had to be cut, a trimmed slate-and-a-half among them. */
  readonly cutPieces: number;
  /** Width of the narrowest cut piece; left out where nothing is cut. */
  readonly narrowestCutMm?: number;
  /** The width nearest to the one given at which both bonds finish whole. */
  readonly nearestWholeWidthMm: number;
  /** Whether joints keep the side lap asked for and every piece its nail; if not, never lay it. */
  readonly isSound: boolean;
}

type BondSpec = Pick<
  SlateSpec,
  'widthMm' | 'slateAndAHalfWidthMm' | 'jointMinMm' | 'jointMaxMm' | 'narrowestCutMm' | 'headlapMm'
>;

/** Lengths closer than this are one length: far below a pencil line, far above rounding. */
const SAME_MM = 1e-6;

/**
 * The two bonds across a width that is square at both ends, so that both finish whole if any joint
 * within its range allows it.
 *
 * Bond A is full slates from the first end; bond B starts with a slate-and-a-half, so its perps lie
 * half a slate on. Over an even number of half-slates bond A ends with a full slate and bond B with
 * a second slate-and-a-half; over an odd number bond A ends with the slate-and-a-half. The joints of
 * the two bonds may differ by what one more joint in the same width makes; both stay in the range.
 *
 * Where no joint does, both bonds keep one joint from the range and finish with a piece cut at the
 * far end: a slate-and-a-half trimmed where it reaches, else a cut slate not narrower than the
 * limit, else the shortfall is taken off its neighbour, else a narrow cut, which
 * `narrowestCutMm` then tells. The joint is the one with the fewest narrow cuts, then the fewest
 * cuts, then the smallest. Only pairs that keep the side lap asked for are taken; where none of
 * these does, the bonds are cut at the other end or at both, see `searchBonds`.
 *
 * @param totalMm the width to cover, overhangs in, mm; at least one slate
 * @param spec sound slate; not modified
 * @returns both layouts from the first end; ties go to the smallest joint, so the most slates
 *
 * Accuracy: pieces and joints sum to the width within 0.000001 mm.
 * Cost: linear in the slates of a course, times the whole ways near the width (few).
 * Source: slate-and-a-half in alternate courses from trade guides; narrowest cut from BS 5534:2014
 * as reported by trade guides.
 * @throws EngineError `out-of-range` for a width below one slate, `not-finite`
 * @example
 * // 250 mm slates over 2527 mm: ten full slates with nine joints of 3 mm in bond A,
 * // two slate-and-a-halves and seven slates with eight joints of 3.375 mm in bond B
 */
export function layBonds(totalMm: number, spec: BondSpec): BondPair {
  requireFinite(totalMm, 'width');
  if (totalMm < spec.widthMm)
    throw new EngineError(
      'out-of-range',
      `width is ${totalMm} mm; one slate needs ${spec.widthMm} mm`
    );
  const ways = wholeWays(totalMm, spec);
  const nearestWholeWidthMm = nearestWidth(totalMm, ways);
  const fitting = ways.findLast((way) => contains(way, totalMm));
  if (fitting) {
    const [A, B] = wholePair(totalMm, fitting, spec);
    if (isSoundPair(A, B, spec))
      return { A, B, isWhole: true, cutPieces: 0, nearestWholeWidthMm, isSound: true };
  }
  return { ...cutPair(totalMm, spec), isWhole: false, nearestWholeWidthMm };
}

/** A number of pieces with which both bonds finish whole, and the widths over which they do. */
interface WholeWay {
  /** Full slates in bond A. */
  readonly fullSlates: number;
  /** Whether bond A ends with a slate-and-a-half, and so bond B with a full slate. */
  readonly isOdd: boolean;
  readonly leastMm: number;
  readonly mostMm: number;
}

/** Every whole way from one below the width to one above it, least widths rising. */
function wholeWays(totalMm: number, spec: BondSpec): WholeWay[] {
  const { widthMm: slate, slateAndAHalfWidthMm: wide, jointMinMm: least, jointMaxMm: most } = spec;
  const fewest = Math.max(1, Math.floor(totalMm / (slate + most)) - 3);
  const greatest = Math.ceil(totalMm / (slate + least)) + 3;
  const ways: WholeWay[] = [];
  for (let fullSlates = fewest; fullSlates <= greatest; fullSlates++) {
    if (fullSlates >= 3) {
      const inA = fullSlates * slate;
      const inB = 2 * wide + (fullSlates - 3) * slate;
      ways.push({
        fullSlates,
        isOdd: false,
        leastMm: Math.max(inA + (fullSlates - 1) * least, inB + (fullSlates - 2) * least),
        mostMm: Math.min(inA + (fullSlates - 1) * most, inB + (fullSlates - 2) * most)
      });
    }
    const inBoth = fullSlates * slate + wide;
    ways.push({
      fullSlates,
      isOdd: true,
      leastMm: inBoth + fullSlates * least,
      mostMm: inBoth + fullSlates * most
    });
  }
  return ways
    .filter((way) => way.leastMm <= way.mostMm + SAME_MM)
    .sort((one, other) => one.leastMm - other.leastMm);
}

function contains(way: WholeWay, totalMm: number): boolean {
  return totalMm >= way.leastMm - SAME_MM && totalMm <= way.mostMm + SAME_MM;
}

function nearestWidth(totalMm: number, ways: readonly WholeWay[]): number {
  let nearest = totalMm;
  let smallest = Infinity;
  for (const way of ways) {
    const width = Math.min(Math.max(totalMm, way.leastMm), Math.max(way.leastMm, way.mostMm));
    const change = Math.abs(width - totalMm);
    if (change < smallest) {
      smallest = change;
      nearest = width;
    }
  }
  return nearest;
}

function wholePair(totalMm: number, way: WholeWay, spec: BondSpec): [BondLayout, BondLayout] {
  const { fullSlates, isOdd } = way;
  const full = (count: number) => Array<PieceKind>(count).fill('full');
  return isOdd
    ? [
        spread(totalMm, [...full(fullSlates), 'slate-and-a-half'], spec),
        spread(totalMm, ['slate-and-a-half', ...full(fullSlates)], spec)
      ]
    : [
        spread(totalMm, full(fullSlates), spec),
        spread(totalMm, ['slate-and-a-half', ...full(fullSlates - 3), 'slate-and-a-half'], spec)
      ];
}

/** Lays whole pieces end to end over a width, the joints sharing what is left equally. */
function spread(totalMm: number, kinds: readonly PieceKind[], spec: BondSpec): BondLayout {
  const widthOf = (kind: PieceKind) => (kind === 'full' ? spec.widthMm : spec.slateAndAHalfWidthMm);
  const covered = kinds.reduce((sum, kind) => sum + widthOf(kind), 0);
  const jointMm = kinds.length > 1 ? (totalMm - covered) / (kinds.length - 1) : spec.jointMinMm;
  let slates = 0;
  const pieces = kinds.map((kind, index): BondPiece => {
    const leftMm = slates + index * jointMm;
    slates += widthOf(kind);
    return { kind, leftMm, widthMm: widthOf(kind) };
  });
  return { jointMm, pieces };
}

/** Both bonds at the one joint that gives the fewest narrow cuts, then cuts, then is smallest. */
function cutPair(
  totalMm: number,
  spec: BondSpec
): Pick<BondPair, 'A' | 'B' | 'cutPieces' | 'narrowestCutMm' | 'isSound'> {
  const joints = jointsToTry(totalMm, spec);
  const pairs = joints.map((jointMm): [BondLayout, BondLayout] => [
    layWithCut([], totalMm, jointMm, spec),
    layWithCut(['slate-and-a-half'], totalMm, jointMm, spec)
  ]);
  const sound = pairs.filter(([A, B]) => isSoundPair(A, B, spec));
  const found = sound.length > 0 ? undefined : searchBonds(totalMm, joints, spec);
  const isSound = sound.length > 0 || found !== undefined;
  const chosen = sound.length > 0 ? sound : found ? [found] : pairs;
  const tries = chosen.map(([A, B]) => {
    const cutWidths = [...A.pieces, ...B.pieces]
      .filter((piece) => isTrimmed(piece, spec))
      .map((piece) => piece.widthMm);
    const narrow = cutWidths.filter((width) => width < spec.narrowestCutMm - SAME_MM).length;
    return { A, B, cutWidths, narrow };
  });
  const best = tries.reduce((one, other) =>
    other.narrow < one.narrow ||
    (other.narrow === one.narrow && other.cutWidths.length < one.cutWidths.length)
      ? other
      : one
  );
  return {
    A: best.A,
    B: best.B,
    isSound,
    cutPieces: best.cutWidths.length,
    ...(best.cutWidths.length > 0 && { narrowestCutMm: Math.min(...best.cutWidths) })
  };
}

/** The smallest joint, and every joint of the range at which one bond alone finishes whole. */
function jointsToTry(totalMm: number, spec: BondSpec): number[] {
  const { widthMm: slate, slateAndAHalfWidthMm: wide, jointMinMm: least, jointMaxMm: most } = spec;
  const joints = new Set([least]);
  for (const wides of [0, 1, 2]) {
    const rest = totalMm - wides * wide;
    for (let full = 0; full <= rest / slate; full++) {
      const pieces = full + wides;
      const joint = (rest - full * slate) / (pieces - 1);
      if (pieces > 1 && joint >= least && joint <= most) joints.add(joint);
    }
  }
  return [...joints].sort((one, other) => one - other);
}

/** Lays a bond at a given joint and cuts its far end to the width. */
function layWithCut(
  start: readonly PieceKind[],
  totalMm: number,
  jointMm: number,
  spec: BondSpec
): BondLayout {
  const { widthMm: slate, slateAndAHalfWidthMm: wide, narrowestCutMm: limit } = spec;
  const pieces: BondPiece[] = [];
  let leftMm = 0;
  if (start.length > 0) {
    const kind = totalMm > slate + SAME_MM ? 'slate-and-a-half' : 'full';
    pieces.push({ kind, leftMm, widthMm: Math.min(wide, totalMm) });
    leftMm = wide + jointMm;
  }
  while (leftMm + slate <= totalMm + SAME_MM) {
    pieces.push({ kind: 'full', leftMm, widthMm: slate });
    leftMm += slate + jointMm;
  }
  const last = pieces[pieces.length - 1];
  const fromLast = totalMm - last.leftMm;
  const cutMm = totalMm - leftMm;
  if (fromLast <= last.widthMm + SAME_MM) return { jointMm, pieces };

  const shorten = (widthMm: number, kind: PieceKind) => {
    pieces[pieces.length - 1] = { kind, leftMm: last.leftMm, widthMm };
  };
  const addCut = (widthMm: number) =>
    pieces.push({ kind: 'cut', leftMm: totalMm - widthMm, widthMm });
  if (fromLast <= wide + SAME_MM) shorten(Math.min(fromLast, wide), 'slate-and-a-half');
  else if (cutMm >= limit) addCut(cutMm);
  else if (fromLast - jointMm >= 2 * limit) {
    const kept = fromLast - jointMm - limit;
    shorten(kept, kept > slate ? 'slate-and-a-half' : 'cut');
    addCut(limit);
  } else if (cutMm > 0) addCut(cutMm);
  return { jointMm, pieces };
}

/** Whether a piece is narrower than the slate it comes from. */
export function isTrimmed(
  piece: Pick<BondPiece, 'kind' | 'widthMm'>,
  spec: Pick<SlateSpec, 'slateAndAHalfWidthMm'>
): boolean {
  return (
    piece.kind === 'cut' ||
    (piece.kind === 'slate-and-a-half' && piece.widthMm < spec.slateAndAHalfWidthMm - SAME_MM)
  );
}
