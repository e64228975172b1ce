import type { Height } from './heights.ts';
import { type WithinHeight, beyondHeight, fillForward, withinHeight } from './height-tables.ts';
import { mayHold } from './laid-bounds.ts';
import { type Search, columnsOf, priceOf } from './search.ts';

/** Costs of one height, for each pile; states as in {@link Height}. Infinity where nothing fits. */
export interface HeightCosts {
  /**
   * Least cost of laying everything from the start of the roof's sums on, up to the state and after
   * it, when the pile's stretch ends at the state: its own joints counted from the eaves.
   */
  readonly ends: readonly Float64Array[];
  /** Least cost of laying everything after the state when the pile's stretch begins there. */
  readonly starts: readonly Float64Array[];
}

/**
 * For each pile and height: the least of `ends` over the states that the pile can reach from the
 * height's start with so many slates and slate-and-a-halves (a table, row by slates).
 */
export type Reach = readonly (readonly Float64Array[])[];

/**
 * Costs of one height from those of the heights above it.
 */
export function heightCosts(
  search: Search,
  at: number,
  reach: Reach,
  bars: (height: number, pile: number) => boolean
): HeightCosts {
  const height = search.roof.heights[at];
  const piles = search.limits.length;
  const ends: Float64Array[] = [];
  const starts: Float64Array[] = [];
  for (let pile = piles - 1; pile >= 0; pile--) {
    ends[pile] = search.mayChange(at, pile + 1)
      ? endsOfPile(search, height, pile, starts)
      : search.nowhere;
    if (!search.mayChange(at, pile)) {
      starts[pile] = search.nowhere;
      continue;
    }
    const within = withinHeight(search, height, pile, ends[pile]);
    const beyond = beyondHeight(search, at, pile, reach[pile], bars);
    starts[pile] = startsOfPile(search, height, pile, within, beyond);
  }
  return { ends, starts };
}

/** Cost of ending a pile's stretch at each state, the change to the best next pile included. */
function endsOfPile(
  search: Search,
  height: Height,
  pile: number,
  starts: readonly Float64Array[]
): Float64Array {
  const { roof, kicks, limits } = search;
  const piles = limits.length;
  const ends = new Float64Array(height.states).fill(Infinity);
  const { below, nodes } = height;
  for (let node = 0; node < (height.isWhole ? 1 : nodes - 1); node++) {
    let least = Infinity;
    for (let next = pile + 1; next < piles; next++)
      if (starts[next][node] < least) least = starts[next][node];
    ends[node] =
      least +
      priceOf(
        search,
        pile,
        below.joints + height.nodeJoints[node],
        below.commonJoints + height.nodeCommonJoints[node]
      );
  }
  if (height.isWhole) return ends;
  const perJoint = kicks.within[pile] * piles;
  const perCommon = (kicks.common?.withPile[pile] ?? 0) * piles;
  for (let edge = 0; edge < height.edgeTo.length; edge++) {
    const course = roof.courses[height.edgeCourse[edge]];
    const bounds = roof.bounds[height.edgeCourse[edge]];
    if (course.count < 2 || !mayHold(bounds, pile, pile)) continue;
    const from = height.edgeFrom[edge];
    const base = priceOf(
      search,
      pile,
      below.joints + height.nodeJoints[from],
      below.commonJoints + height.nodeCommonJoints[from]
    );
    const first = nodes + height.edgeState[edge] - 1;
    for (let next = pile + 1; next < piles; next++) {
      const following = starts[next];
      if (following === search.nowhere || !mayHold(bounds, pile, next)) continue;
      const perChange = kicks.between[pile][next] * piles;
      for (let slot = 1; slot < course.count; slot++) {
        const cost =
          following[first + slot] +
          perChange * course.isJoint[slot] +
          1 +
          base +
          perJoint * course.joints[slot - 1] +
          perCommon * course.commonJoints[slot];
        if (cost < ends[first + slot]) ends[first + slot] = cost;
      }
    }
  }
  return ends;
}

function startsOfPile(
  search: Search,
  height: Height,
  pile: number,
  within: WithinHeight,
  beyond: Float64Array
): Float64Array {
  const { roof, limits } = search;
  const { nodes, below } = height;
  const columns = columnsOf(search, height, pile);
  const { slates, slateAndAHalves } = limits[pile];
  const starts = new Float64Array(height.states).fill(Infinity);
  const mayEndAll = new Uint8Array(nodes);
  mayEndAll[nodes - 1] = 1;
  for (let node = nodes - 2; node >= 0; node--) {
    mayEndAll[node] = 1;
    for (let edge = height.nodeEdges[node]; edge < height.nodeEdges[node + 1]; edge++)
      if (
        mayEndAll[height.edgeTo[edge]] === 0 ||
        !mayHold(roof.bounds[height.edgeCourse[edge]], pile, pile)
      )
        mayEndAll[node] = 0;
    const column = columns === 1 ? 0 : height.nodeSlateAndAHalves[node];
    const above = mayEndAll[node] ? beyond[height.nodeSlates[node] * columns + column] : Infinity;
    starts[node] =
      Math.min(within.beginning[node], above) -
      priceOf(
        search,
        pile,
        below.joints + height.nodeJoints[node],
        below.commonJoints + height.nodeCommonJoints[node]
      );
  }
  const perJoint = search.kicks.within[pile] * limits.length;
  const perCommon = (search.kicks.common?.withPile[pile] ?? 0) * limits.length;
  for (let edge = 0; edge < height.edgeTo.length; edge++) {
    const index = height.edgeCourse[edge];
    if (!mayHold(roof.bounds[index], pile, pile)) continue;
    const course = roof.courses[index];
    const from = height.edgeFrom[edge];
    const to = height.edgeTo[edge];
    const base = priceOf(
      search,
      pile,
      below.joints + height.nodeJoints[from],
      below.commonJoints + height.nodeCommonJoints[from]
    );
    const first = nodes + height.edgeState[edge] - 1;
    const all = course.slates[course.count];
    const allWide = course.slateAndAHalves[course.count];
    const goesOn = to < nodes - 1 && within.holdingAll === undefined;
    const inHeight = to < nodes - 1 ? (within.holdingAll?.[to] ?? Infinity) : Infinity;
    for (let slot = 1; slot < course.count; slot++) {
      let least = inHeight;
      if (mayEndAll[to]) {
        const column =
          columns === 1 ? 0 : height.nodeSlateAndAHalves[from] + course.slateAndAHalves[slot];
        const above = beyond[(height.nodeSlates[from] + course.slates[slot]) * columns + column];
        if (above < least) least = above;
      }
      if (goesOn) {
        const cost = within.goingOn(
          to,
          slates - (all - course.slates[slot]),
          slateAndAHalves - (allWide - course.slateAndAHalves[slot])
        );
        if (cost < least) least = cost;
      }
      starts[first + slot] =
        least - base - perJoint * course.joints[slot] - perCommon * course.commonJoints[slot];
    }
  }
  return starts;
}

/** The least of a pile's `ends` by what the pile brings to the start of the height. */
export function reachOfHeight(
  search: Search,
  height: Height,
  pile: number,
  ends: Float64Array
): Float64Array {
  if (ends === search.nowhere) return ends;
  const { roof } = search;
  const { nodes } = height;
  const columns = columnsOf(search, height, pile);
  const table = new Float64Array((height.slates + 1) * columns).fill(Infinity);
  const isReached = new Uint8Array(nodes);
  isReached[0] = 1;
  const perWide = columns === 1 ? 0 : 1;
  for (let node = 0; node < nodes - 1; node++) {
    if (isReached[node] === 0) continue;
    const own = height.nodeSlates[node] * columns + perWide * height.nodeSlateAndAHalves[node];
    if (ends[node] < table[own]) table[own] = ends[node];
    for (let edge = height.nodeEdges[node]; edge < height.nodeEdges[node + 1]; edge++) {
      const index = height.edgeCourse[edge];
      if (!mayHold(roof.bounds[index], pile, pile)) continue;
      isReached[height.edgeTo[edge]] = 1;
      const course = roof.courses[index];
      const first = nodes + height.edgeState[edge] - 1;
      for (let slot = 1; slot < course.count; slot++) {
        const cell = own + course.slates[slot] * columns + perWide * course.slateAndAHalves[slot];
        if (ends[first + slot] < table[cell]) table[cell] = ends[first + slot];
      }
    }
  }
  fillForward(table, 0, height.slates + 1, columns);
  return table;
}
