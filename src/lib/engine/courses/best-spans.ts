import type { KickChances } from './plan-types.ts';
import type { SlotRow } from './slots.ts';

/** A stretch of slots laid from one pile: slots `after` + 1 to `last`. */
export interface PileSpan {
  /** Index of the pile, 0 for the thickest. */
  readonly pile: number;
  readonly after: number;
  readonly last: number;
}

/** What one pile may give. */
export interface PileLimit {
  readonly slates: number;
  readonly slateAndAHalves: number;
  /** The first slot this pile may cover; 1 unless something thicker is laid above. */
  readonly firstSlot: number;
  /** The last slot this pile may cover: all, unless something thinner is laid below. */
  readonly lastSlot: number;
}

interface PileTable {
  /** Least cost of laying everything after slot x when this pile begins at slot x + 1. */
  readonly cost: Float64Array;
  /** The last slot of this pile's span in that best plan. */
  readonly last: Int32Array;
  /** The pile that follows when this pile's span ends at slot y. */
  readonly next: Int8Array;
}

const NONE = Infinity;

/**
 * Cuts the row of slots into one span per pile (or none), thickest pile lowest, with the least
 * expected kickers: the exact optimum of the planner's model.
 *
 * Let J(p) be the joints up to slot p, C(p) those beside a common slate-and-a-half, q the chances.
 * A span (x, y] of pile k costs q_k (J(y − 1) − J(x)) + c_k (C(y) − C(x)); where the next pile m
 * follows inside a run the joint y costs q_km. The cost of a span is a term in y less a term in x,
 * and the ends y that the stock of pile k can reach from x form a window that only moves down as x
 * does: from x + 1, or from the end of the course if the span starts inside a course (a course holds two
 * piles at most), up to where slates, slate-and-a-halves or the pile's last slot run out. So the
 * best end for every x comes from a sliding-window minimum, pile by pile from the thinnest.
 *
 * Compared in turn: expected kickers; changeover courses; slots of pile 1, then of pile 2, and so
 * on, more being better. The first two are one whole number, kickers × piles + changeovers (there
 * are fewer changeovers than piles), exact below 2^53; the third falls to the later end and then to
 * the thicker next pile wherever costs are equal.
 *
 * @param kicks chances in whole billionths
 * @returns spans from the eaves up; undefined if no cut fits; an empty list for an empty row
 *
 * Cost: time piles² × slots, memory piles × slots.
 */
export function bestSpans(
  row: SlotRow,
  limits: readonly PileLimit[],
  kicks: KickChances
): PileSpan[] | undefined {
  if (row.count === 0) return [];
  const tables: PileTable[] = [];
  for (let pile = limits.length - 1; pile >= 0; pile--)
    tables[pile] = pileTable(row, limits, kicks, pile, tables);

  let pile = -1;
  for (let first = 0; first < limits.length; first++)
    if (tables[first].cost[0] < (pile < 0 ? NONE : tables[pile].cost[0])) pile = first;
  if (pile < 0) return undefined;

  const spans: PileSpan[] = [];
  for (let after = 0; after < row.count;) {
    const last = tables[pile].last[after];
    spans.push({ pile, after, last });
    pile = tables[pile].next[last];
    after = last;
  }
  return spans;
}

function pileTable(
  row: SlotRow,
  limits: readonly PileLimit[],
  kicks: KickChances,
  pile: number,
  thinner: readonly PileTable[]
): PileTable {
  const { count } = row;
  const table = {
    cost: new Float64Array(count + 1).fill(NONE),
    last: new Int32Array(count + 1),
    next: new Int8Array(count + 1).fill(-1)
  };
  const scale = limits.length;
  const perJoint = kicks.within[pile] * scale;
  const perCommon = (kicks.common?.withPile[pile] ?? 0) * scale;
  const ending = costOfEnding(row, kicks, pile, limits.length, thinner, table.next);
  for (let last = 1; last <= count; last++)
    ending[last] += perJoint * row.jointsUpTo[last - 1] + perCommon * row.commonJointsUpTo[last];

  const limit = limits[pile];
  const window = new Int32Array(count);
  let head = 0;
  let tail = 0;
  let entering = count;
  let reach = Math.min(count, limit.lastSlot);
  for (let after = count - 1; after >= limit.firstSlot - 1; after--) {
    const nearest = row.isInsideCourse[after] ? row.lastOfCourse[after] : after + 1;
    for (; entering >= nearest; entering--) {
      if (ending[entering] === NONE) continue;
      while (tail > head && ending[window[tail - 1]] > ending[entering]) tail--;
      window[tail++] = entering;
    }
    const mostSlates = row.slatesUpTo[after] + limit.slates;
    const mostWide = row.slateAndAHalvesUpTo[after] + limit.slateAndAHalves;
    while (row.slatesUpTo[reach] > mostSlates || row.slateAndAHalvesUpTo[reach] > mostWide) reach--;
    while (head < tail && window[head] > reach) head++;
    if (head === tail) continue;
    const last = window[head];
    table.last[after] = last;
    table.cost[after] =
      ending[last] - perJoint * row.jointsUpTo[after] - perCommon * row.commonJointsUpTo[after];
  }
  return table;
}

/** Cost of the joint above and of everything after it, for each slot that ends the pile's span. */
function costOfEnding(
  row: SlotRow,
  kicks: KickChances,
  pile: number,
  piles: number,
  thinner: readonly PileTable[],
  next: Int8Array
): Float64Array {
  const ending = new Float64Array(row.count + 1).fill(NONE);
  ending[row.count] = 0;
  for (let following = pile + 1; following < piles; following++) {
    const { cost } = thinner[following];
    const perJoint = kicks.between[pile][following] * piles;
    for (let last = 1; last < row.count; last++) {
      const total = cost[last] + perJoint * row.isJoint[last] + row.isInsideCourse[last];
      if (total < ending[last]) {
        ending[last] = total;
        next[last] = following;
      }
    }
  }
  return ending;
}
