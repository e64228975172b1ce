import { EngineError } from '../errors.ts';
import { type CourseDemand, piecesInRun } from '../roof/index.ts';
import type { KickChances, Plan } from './plan-types.ts';

/** Where the pieces of a whole roof come from, piece by piece in laying order. */
export interface LaidRows {
  /** Index of the pile of each piece; the number of piles for the common stock. */
  readonly source: Uint8Array;
  /** 1 where a piece has a neighbour to its left. */
  readonly hasLeft: Uint8Array;
  /** Index of each piece's course in the plan. */
  readonly course: Int32Array;
  readonly joints: number;
}

/**
 * Lays the plan out piece by piece, from the left of each course, for a simulation to deal slates
 * to. Linear in the pieces.
 *
 * @param courses the courses the plan was made for, in any order
 * @throws EngineError `inconsistent` if they are not the plan's courses
 */
export function laidRows(plan: Plan, courses: readonly CourseDemand[]): LaidRows {
  const key = (one: { slopeId: string; course: number }) =>
    JSON.stringify([one.slopeId, one.course]);
  const demands = new Map(courses.map((demand) => [key(demand), demand]));
  const source: number[] = [];
  const hasLeft: number[] = [];
  const courseOf: number[] = [];
  for (const [index, planned] of plan.courses.entries()) {
    const demand = demands.get(key(planned));
    if (!demand) throw new EngineError('inconsistent', 'the plan is for other courses');
    const isCommon = planned.commonSlateAndAHalves > 0;
    const fromPiles = planned.parts.flatMap((part) =>
      new Array<number>(part.slates + part.slateAndAHalves).fill(part.pile - 1)
    );
    let next = 0;
    for (const run of demand.runs) {
      const pieces = piecesInRun(run);
      for (let place = 0; place < pieces; place++) {
        const isWide =
          (place === 0 && run.startsWithSlateAndAHalf) ||
          (place === pieces - 1 && run.endsWithSlateAndAHalf);
        source.push(isWide && isCommon ? plan.piles.length : fromPiles[next++]);
        hasLeft.push(Number(place > 0));
        courseOf.push(index);
      }
    }
    if (next !== fromPiles.length)
      throw new EngineError('inconsistent', 'the plan is for other courses');
  }
  return {
    source: Uint8Array.from(source),
    hasLeft: Uint8Array.from(hasLeft),
    course: Int32Array.from(courseOf),
    joints: hasLeft.reduce((sum, joint) => sum + joint, 0)
  };
}

/**
 * Exact expected kickers of a roof laid out piece by piece: the sum of every joint's chance.
 *
 * @param chances within and between the sources that the pieces are dealt from
 */
export function expectedKickersOfRows(rows: LaidRows, chances: KickChances): number {
  const common = chances.within.length;
  const chance = (one: number, other: number): number => {
    if (one === common && other === common) return chances.common?.within ?? 0;
    if (one === common) return chances.common?.withPile[other] ?? 0;
    if (other === common) return chances.common?.withPile[one] ?? 0;
    return one === other ? chances.within[one] : chances.between[one][other];
  };
  let expected = 0;
  for (let piece = 1; piece < rows.source.length; piece++)
    if (rows.hasLeft[piece]) expected += chance(rows.source[piece - 1], rows.source[piece]);
  return expected;
}

/** The same roof with all piles mixed into one: every piece from source 0, or the common stock. */
export function mixedRows(rows: LaidRows, piles: number): LaidRows {
  return { ...rows, source: rows.source.map((source) => (source === piles ? 1 : 0)) };
}
