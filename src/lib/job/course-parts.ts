import type { CoursePart } from '$lib/engine/courses';
import { type CourseDemand, piecesInRun } from '$lib/engine/roof';
import type { BodyOf } from '$lib/journal';

/** Pieces of a course by pile, from its left end to its right end, as an event keeps them. */
export type PiecesByPile = readonly { readonly pile: number; readonly pieces: number }[];

/**
 * The pieces of a course by pile, told apart into slates and slate-and-a-halves: the piles are laid
 * out along the course from its left end. Pieces beyond the course's own are taken for slates, so
 * that a course whose slope was changed later still accounts for every piece. Linear in the pieces.
 *
 * @example
 * // a slate-and-a-half and 9 slates, 4 pieces of pile 1, then 6 of pile 2
 * // gives 3 slates and 1 slate-and-a-half of pile 1, 6 slates of pile 2
 */
export function partsOfPieces(demand: CourseDemand, piles: PiecesByPile): CoursePart[] {
  const isWide = demand.runs.flatMap((run) => {
    const pieces = piecesInRun(run);
    return Array.from(
      { length: pieces },
      (_piece, place) =>
        (place === 0 && run.startsWithSlateAndAHalf) ||
        (place === pieces - 1 && run.endsWithSlateAndAHalf)
    );
  });
  let from = 0;
  return piles.map(({ pile, pieces }) => {
    const slateAndAHalves = isWide.slice(from, from + pieces).filter(Boolean).length;
    from += pieces;
    return { pile, slates: pieces - slateAndAHalves, slateAndAHalves };
  });
}

/** The same the other way: pieces by pile of a course's parts; parts without a piece left out. */
export function piecesOfParts(parts: readonly CoursePart[]): { pile: number; pieces: number }[] {
  return parts
    .map(({ pile, slates, slateAndAHalves }) => ({ pile, pieces: slates + slateAndAHalves }))
    .filter(({ pieces }) => pieces > 0);
}

/** The numbers of the piles that an entry of a course takes slates from, its undereave row among them. */
export function pilesOfEntry({
  piles,
  undereave
}: Pick<BodyOf<'courseLaid'>, 'piles' | 'undereave'>): number[] {
  return [...piles, ...(undereave?.piles ?? [])].map(({ pile }) => pile);
}

/** Parts of a course from left to right; neighbours of one pile are one part. */
export function joinParts(...rows: readonly (readonly CoursePart[])[]): CoursePart[] {
  const joined: CoursePart[] = [];
  for (const part of rows.flat()) {
    const last = joined.at(-1);
    if (last?.pile === part.pile)
      joined[joined.length - 1] = {
        pile: part.pile,
        slates: last.slates + part.slates,
        slateAndAHalves: last.slateAndAHalves + part.slateAndAHalves
      };
    else if (part.slates + part.slateAndAHalves > 0) joined.push({ ...part });
  }
  return joined;
}
