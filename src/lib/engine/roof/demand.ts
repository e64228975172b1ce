import type { CourseDemand, CourseRun } from './course-demand.ts';
import type { CourseLine } from './courses.ts';
import type { PieceRun } from './pieces.ts';

/** Pieces counted by what they take from the stock. */
export interface PieceCounts {
  /** Full slates laid whole. */
  readonly full: number;
  /** Pieces cut from a full slate; each uses one up. */
  readonly cut: number;
  /** Slate-and-a-halves, cut or not. */
  readonly slateAndAHalf: number;
  /** Of the slate-and-a-halves, those that are cut. */
  readonly slateAndAHalfCut: number;
}

/** Counts the pieces of some runs. */
export function countPieces(runs: readonly PieceRun[]): PieceCounts {
  let [full, cut, slateAndAHalf, slateAndAHalfCut] = [0, 0, 0, 0];
  for (const run of runs)
    for (const piece of run.pieces) {
      if (piece.kind === 'full') full++;
      else if (piece.kind === 'cut') cut++;
      else {
        slateAndAHalf++;
        slateAndAHalfCut += Number(piece.isCut);
      }
    }
  return { full, cut, slateAndAHalf, slateAndAHalfCut };
}

/** Adds counts up. */
export function addCounts(parts: Iterable<PieceCounts>): PieceCounts {
  let [full, cut, slateAndAHalf, slateAndAHalfCut] = [0, 0, 0, 0];
  for (const part of parts) {
    full += part.full;
    cut += part.cut;
    slateAndAHalf += part.slateAndAHalf;
    slateAndAHalfCut += part.slateAndAHalfCut;
  }
  return { full, cut, slateAndAHalf, slateAndAHalfCut };
}

/** Slates that some pieces use up, slate-and-a-halves apart: one for every full and cut piece. */
export function slatesUsed(counts: PieceCounts): number {
  return counts.full + counts.cut;
}

/** All pieces of a count. */
export function piecesCounted(counts: PieceCounts): number {
  return counts.full + counts.cut + counts.slateAndAHalf;
}

/**
 * What a run of pieces asks of the stock. A slate-and-a-half that is a run's only piece is counted
 * at its left end.
 */
export function runDemand(run: PieceRun): CourseRun {
  const { pieces } = run;
  const isWide = (index: number) => pieces[index]?.kind === 'slate-and-a-half';
  const startsWithSlateAndAHalf = isWide(0);
  const endsWithSlateAndAHalf = pieces.length > 1 && isWide(pieces.length - 1);
  return {
    slates: pieces.length - Number(startsWithSlateAndAHalf) - Number(endsWithSlateAndAHalf),
    startsWithSlateAndAHalf,
    endsWithSlateAndAHalf
  };
}

/** What a course asks of the stock: the planner's input. */
export function courseDemand(
  slopeId: string,
  line: Pick<CourseLine, 'course' | 'heightMm'>,
  runs: readonly PieceRun[]
): CourseDemand {
  return { slopeId, course: line.course, heightMm: line.heightMm, runs: runs.map(runDemand) };
}
