import type { BodyOf, Register, Setting } from '$lib/journal';
import type { PiecesByPile } from './course-parts.ts';

/** Pieces of a course that were laid in one go, counted from its left end. */
export interface LaidStretch {
  /** The event that says so. */
  readonly id: string;
  readonly start: number;
  /** The first piece beyond it. */
  readonly end: number;
}

/** A course as far as it lies. */
export interface CourseLying {
  /** The end it was begun from. */
  readonly from: 'left' | 'right';
  /** All that lies, from left to right. */
  readonly piles: PiecesByPile;
  readonly pieces: number;
  /** Pieces of the course to the left of the first that lies. */
  readonly first: number;
  /** In the order in which they were laid. */
  readonly stretches: readonly LaidStretch[];
}

/**
 * What of a course lies and which event laid which piece. Each event of a part says how much lies in
 * all; what it says beyond the one before was laid with it. One that says less puts the ones before
 * right. A course laid whole holds against parts entered later, as by a mate who did not know.
 *
 * @param parts what was said of parts of it, in order of ids; not modified
 * @param laid the event that laid it whole, where there is one
 * @param pieces of the whole course, from one end of which parts are counted
 *
 * @example 18 from the left, then 30, then the whole of 51: 1–18, 19–30 and 31–51
 */
export function courseLying(
  parts: Register<BodyOf<'coursePartLaid'>>,
  laid: Setting<BodyOf<'courseLaid'>> | undefined,
  pieces: number
): CourseLying {
  const before = laid ? parts.filter(({ id }) => id < laid.id) : parts;
  const from = before.at(-1)?.value.from ?? 'left';
  let reached: { id: string; upTo: number }[] = [];
  const reach = (id: string, upTo: number): void => {
    reached = reached.filter((_one, at) => at === 0 || reached[at - 1].upTo < upTo);
    const last = reached.at(-1);
    if (last && last.upTo > upTo) last.upTo = upTo;
    else if ((last?.upTo ?? 0) < upTo) reached.push({ id, upTo });
  };
  for (const [at, { id, value }] of before.entries()) {
    if (at > 0 && before[at - 1].value.from !== value.from) reached = [];
    reach(id, sumOf(value.piles));
  }
  const piles = laid?.value.piles ?? before.at(-1)?.value.piles ?? [];
  const lying = sumOf(piles);
  if (laid) reach(laid.id, lying);
  const whole = Math.max(pieces, lying);
  const lain = reached.filter(({ upTo }) => upTo > 0);
  const stretches = lain.map(({ id, upTo }, at) => {
    const start = at > 0 ? lain[at - 1].upTo : 0;
    return from === 'left'
      ? { id, start, end: upTo }
      : { id, start: whole - upTo, end: whole - start };
  });
  return { from, piles, pieces: lying, first: from === 'left' ? 0 : whole - lying, stretches };
}

/**
 * The pieces by pile of a stretch of a row of pieces, from `start` up to, not including, `end`; both
 * counted from its left end.
 */
export function slicePieces(
  piles: PiecesByPile,
  start: number,
  end: number
): { pile: number; pieces: number }[] {
  let first = 0;
  return piles.flatMap(({ pile, pieces }) => {
    const own = Math.min(end, first + pieces) - Math.max(start, first);
    first += pieces;
    return own > 0 ? [{ pile, pieces: own }] : [];
  });
}

function sumOf(piles: PiecesByPile): number {
  return piles.reduce((sum, { pieces }) => sum + pieces, 0);
}
