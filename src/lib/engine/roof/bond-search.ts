import type { BondLayout, BondPiece } from './bond-layout.ts';
import type { SlateSpec } from './slate-spec.ts';

type BondSpec = Pick<
  SlateSpec,
  'widthMm' | 'slateAndAHalfWidthMm' | 'jointMinMm' | 'jointMaxMm' | 'narrowestCutMm' | 'headlapMm'
>;

/** Narrowest piece that holds a nail: a hole with 25 mm to each side. Common practice, no source. */
export const NARROWEST_NAILED_MM = 50;

/** Lengths closer than this are one length. */
const SAME_MM = 1e-6;

/** Steps between the widths tried for a first piece, mm. */
const STEP_MM = 5;

/**
 * The side lap asked for between neighbouring courses, edge to edge, mm: the headlap, or what
 * half bond leaves of a slate too narrow for it, half its width less two of the widest joints.
 *
 * Source: side lap no less than the headlap is common practice, no source.
 * @example askedSideLapMm(slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 70 })) // 70
 */
export function askedSideLapMm(
  spec: Pick<SlateSpec, 'widthMm' | 'jointMaxMm' | 'headlapMm'>
): number {
  return Math.max(0, Math.min(spec.headlapMm, spec.widthMm / 2 - 2 * spec.jointMaxMm));
}

/**
 * The least side lap between two bonds, every joint counted, those beside cut pieces too.
 *
 * @returns mm, from edge to edge, 0 where two joints overlap; Infinity where a bond has no joint
 * Cost: linear in the pieces.
 */
export function sideLapBetweenMm(one: BondLayout, other: BondLayout): number {
  let least = Infinity;
  let [i, k] = [1, 1];
  while (i < one.pieces.length && k < other.pieces.length) {
    const mine = jointBefore(one.pieces, i);
    const theirs = jointBefore(other.pieces, k);
    const gap = Math.max(mine.leftMm - theirs.rightMm, theirs.leftMm - mine.rightMm);
    least = Math.min(least, Math.max(0, gap));
    if (mine.leftMm < theirs.leftMm) i++;
    else k++;
  }
  return least;
}

function jointBefore(pieces: readonly BondPiece[], index: number) {
  const left = pieces[index - 1];
  return { leftMm: left.leftMm + left.widthMm, rightMm: pieces[index].leftMm };
}

/** Whether two bonds keep the side lap asked for and every piece holds its nail. */
export function isSoundPair(A: BondLayout, B: BondLayout, spec: BondSpec): boolean {
  return (
    sideLapBetweenMm(A, B) >= askedSideLapMm(spec) - SAME_MM &&
    [...A.pieces, ...B.pieces].every(({ widthMm }) => widthMm >= NARROWEST_NAILED_MM - SAME_MM)
  );
}

/**
 * Two bonds across a width that keep the side lap asked for, cut at either end or at both.
 *
 * Pairs whose uncut slates lie half a slate apart go first, within the widest joint.
 * Each bond is a first piece, full slates and a last piece; first and last are any width from what
 * holds a nail up to a slate-and-a-half. Of all such pairs at the joints given, the one with the
 * fewest cuts below the limit, then the fewest cuts, then the smallest joint.
 *
 * @param joints joint widths to try, rising, mm
 * @returns nothing where no pair tried keeps the side lap
 * Cost: joints × first pieces squared × slates of a course, at the worst.
 */
export function searchBonds(
  totalMm: number,
  joints: readonly number[],
  spec: BondSpec
): [BondLayout, BondLayout] | undefined {
  const halves = leastBurden(totalMm, joints, spec, (A, B) => isHalfBond(A, B, spec));
  return halves ?? leastBurden(totalMm, joints, spec, () => true);
}

function leastBurden(
  totalMm: number,
  joints: readonly number[],
  spec: BondSpec,
  suits: (A: BondLayout, B: BondLayout) => boolean
): [BondLayout, BondLayout] | undefined {
  let best: { pair: [BondLayout, BondLayout]; burden: number } | undefined;
  for (const jointMm of joints) {
    const bonds = bondsAt(totalMm, jointMm, spec)
      .map((bond) => ({ bond, burden: burdenOf(bond, spec) }))
      .sort((one, other) => one.burden - other.burden);
    for (const [index, one] of bonds.entries()) {
      if (best && 2 * one.burden >= best.burden) break;
      for (const other of bonds.slice(index)) {
        const burden = one.burden + other.burden;
        if (best && burden >= best.burden) break;
        if (!isSoundPair(one.bond, other.bond, spec) || !suits(one.bond, other.bond)) continue;
        best = { pair: [one.bond, other.bond], burden };
      }
    }
  }
  return best?.pair;
}

/** Whether uncut slates of both bonds lie half a slate apart, within the widest joint. */
function isHalfBond(A: BondLayout, B: BondLayout, spec: BondSpec): boolean {
  const [inA, inB] = [uncutMarks(A, spec), uncutMarks(B, spec)];
  // Full slates repeat, so both ends of one bond tell the whole of it.
  return [...inA.slice(0, 2), ...inA.slice(-2)].every((mark) =>
    inB.every((other) => {
      const apart = Math.abs(mark - other);
      const offMm = Math.abs(apart - (spec.widthMm + A.jointMm) / 2);
      return apart >= spec.widthMm || offMm <= spec.jointMaxMm + SAME_MM;
    })
  );
}

/** The left edges that follow a joint between two uncut pieces. */
function uncutMarks({ pieces }: BondLayout, spec: BondSpec): number[] {
  return pieces
    .filter((piece, index) => index > 0 && !isCut(piece, spec) && !isCut(pieces[index - 1], spec))
    .map((piece) => piece.leftMm);
}

/** Every bond at one joint: a first piece, full slates, a last piece that reaches the end. */
function bondsAt(totalMm: number, jointMm: number, spec: BondSpec): BondLayout[] {
  const { widthMm: slate, slateAndAHalfWidthMm: wide } = spec;
  if (totalMm <= wide + SAME_MM) return [{ jointMm, pieces: [pieceOf(0, totalMm, spec)] }];
  const halfMm = (slate + jointMm) / 2;
  const firsts = new Set([slate, wide, slate - halfMm, wide - halfMm]);
  for (let widthMm = NARROWEST_NAILED_MM; widthMm < wide; widthMm += STEP_MM) firsts.add(widthMm);
  const bonds: BondLayout[] = [];
  for (const firstMm of firsts) {
    if (firstMm < NARROWEST_NAILED_MM) continue;
    const restMm = totalMm - firstMm - jointMm;
    const least = Math.max(0, Math.ceil((restMm - wide - SAME_MM) / (slate + jointMm)));
    for (let full = least; ; full++) {
      const lastMm = restMm - full * (slate + jointMm);
      if (lastMm < NARROWEST_NAILED_MM) break;
      const lefts = [0];
      for (let index = 0; index < full; index++)
        lefts.push(firstMm + jointMm + index * (slate + jointMm));
      const pieces = [...lefts, totalMm - lastMm].map((leftMm, index) =>
        pieceOf(leftMm, index === 0 ? firstMm : index <= full ? slate : lastMm, spec)
      );
      if (!wouldJoin(pieces, spec)) bonds.push({ jointMm, pieces });
    }
  }
  return bonds;
}

function pieceOf(leftMm: number, widthMm: number, spec: BondSpec): BondPiece {
  const kind =
    Math.abs(widthMm - spec.widthMm) < SAME_MM
      ? 'full'
      : widthMm > spec.widthMm
        ? 'slate-and-a-half'
        : 'cut';
  return { kind, leftMm, widthMm };
}

/** Whether an end piece is so narrow that it would be laid as one with its neighbour. */
function wouldJoin(pieces: readonly BondPiece[], spec: BondSpec): boolean {
  const joins = (end: BondPiece, [one, other]: readonly BondPiece[]) =>
    end.widthMm < spec.narrowestCutMm - SAME_MM &&
    other.leftMm + other.widthMm - one.leftMm <= spec.slateAndAHalfWidthMm + 0.01;
  return joins(pieces[0], pieces.slice(0, 2)) || joins(pieces[pieces.length - 1], pieces.slice(-2));
}

/** Narrow cuts weigh more than any number of cuts. */
function burdenOf({ pieces }: BondLayout, spec: BondSpec): number {
  const cuts = pieces.filter((piece) => isCut(piece, spec));
  const narrow = cuts.filter(({ widthMm }) => widthMm < spec.narrowestCutMm - SAME_MM);
  return 100 * narrow.length + cuts.length;
}

function isCut({ kind, widthMm }: BondPiece, spec: BondSpec): boolean {
  if (kind !== 'slate-and-a-half') return kind === 'cut';
  return widthMm < spec.slateAndAHalfWidthMm - SAME_MM;
}
