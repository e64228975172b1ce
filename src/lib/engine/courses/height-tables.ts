import type { Height } from './heights.ts';
import { mayHold } from './laid-bounds.ts';
import { type Search, columnsOf, countsWide, leastOf } from './search.ts';

/**
 * The least of a pile's `ends` over the states of its height that lie after a node, within given
 * slates and slate-and-a-halves. A pile that holds the whole height needs one figure for each node.
 */
export interface WithinHeight {
  /** For a stretch that begins at the node: it must take something. */
  readonly beginning: Float64Array;
  /** For a stretch that reaches the node, where the pile holds the whole height. */
  readonly holdingAll?: Float64Array;
  /** For a stretch that reaches the node with so much left; it may end there. */
  readonly goingOn: (node: number, slates: number, slateAndAHalves: number) => number;
}

/** What a pile's stretch can reach within its own height. Linear in its states. */
export function withinHeight(
  search: Search,
  height: Height,
  pile: number,
  ends: Float64Array
): WithinHeight {
  const { roof, limits } = search;
  const { nodes } = height;
  const { slates, slateAndAHalves } = limits[pile];
  if (ends === search.nowhere)
    return { beginning: ends, holdingAll: ends, goingOn: () => Infinity };
  const holdsAll = slates >= height.slates && slateAndAHalves >= height.slateAndAHalves;
  const rows = holdsAll ? 1 : Math.min(slates, height.slates) + 1;
  const isWideCounted = !holdsAll && countsWide(search, pile);
  const columns = isWideCounted ? Math.min(slateAndAHalves, height.slateAndAHalves) + 1 : 1;
  const size = rows * columns;
  const table = new Float64Array(nodes * size).fill(Infinity);
  const beginning = new Float64Array(nodes).fill(Infinity);
  for (let node = nodes - 2; node >= 0; node--) {
    const own = node * size;
    for (let edge = height.nodeEdges[node]; edge < height.nodeEdges[node + 1]; edge++) {
      const index = height.edgeCourse[edge];
      if (!mayHold(roof.bounds[index], pile, pile)) continue;
      const course = roof.courses[index];
      const first = nodes + height.edgeState[edge] - 1;
      const to = height.edgeTo[edge] * size;
      if (holdsAll) {
        let least = Math.min(table[own], table[to]);
        for (let slot = 1; slot < course.count; slot++)
          if (ends[first + slot] < least) least = ends[first + slot];
        table[own] = least;
        continue;
      }
      for (let slot = 1; slot < course.count; slot++) {
        const row = course.slates[slot];
        const column = isWideCounted ? course.slateAndAHalves[slot] : 0;
        if (row >= rows || column >= columns) break;
        const cell = own + row * columns + column;
        if (ends[first + slot] < table[cell]) table[cell] = ends[first + slot];
      }
      const shift = course.slates[course.count];
      const aside = isWideCounted ? course.slateAndAHalves[course.count] : 0;
      for (let row = shift; row < rows; row++)
        for (let column = aside; column < columns; column++) {
          const cost = table[to + (row - shift) * columns + column - aside];
          const cell = own + row * columns + column;
          if (cost < table[cell]) table[cell] = cost;
        }
    }
    if (!holdsAll) fillForward(table, own, rows, columns);
    beginning[node] = table[own + size - 1];
    for (let cell = own; cell < own + size; cell++)
      if (ends[node] < table[cell]) table[cell] = ends[node];
  }
  return {
    beginning,
    ...(holdsAll && { holdingAll: table }),
    goingOn(node, slatesLeft, wideLeft) {
      if (slatesLeft < 0 || wideLeft < 0) return Infinity;
      const row = Math.min(slatesLeft, rows - 1);
      const column = Math.min(wideLeft, columns - 1);
      return table[node * size + row * columns + column];
    }
  };
}

/** Turns figures at exactly so many slates into the least with at most so many. */
export function fillForward(
  table: Float64Array,
  start: number,
  rows: number,
  columns: number
): void {
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const cell = start + row * columns + column;
      if (row > 0) table[cell] = Math.min(table[cell], table[cell - columns]);
      if (column > 0) table[cell] = Math.min(table[cell], table[cell - 1]);
    }
}

/** The least of a pile's `ends` above the height, by what of the height lies below its start. */
export function beyondHeight(
  search: Search,
  at: number,
  pile: number,
  reach: readonly Float64Array[],
  bars: (height: number, pile: number) => boolean
): Float64Array {
  const { roof, limits } = search;
  const { heights, total } = roof;
  const height = heights[at];
  const columns = columnsOf(search, height, pile);
  const beyond = new Float64Array((height.slates + 1) * columns).fill(Infinity);
  const start = heights[at + 1]?.below ?? total;
  const belowAll = height.below.slates + limits[pile].slates;
  for (let column = 0; column < columns; column++) {
    const wideBelow = height.below.slateAndAHalves + column;
    const mostWide = wideBelow + limits[pile].slateAndAHalves;
    if (start.slateAndAHalves > mostWide) continue;
    let top = at + 1;
    let least = Infinity;
    let isAtTop = false;
    let [table, shift, columnOfTop, columnsOfTop, rowsOfTop] = [search.nowhere, 0, 0, 1, 0];
    for (let row = Math.max(0, start.slates - belowAll); row <= height.slates; row++) {
      const mostSlates = belowAll + row;
      while (top < heights.length && !bars(top, pile)) {
        const end = heights[top + 1]?.below ?? total;
        if (end.slates > mostSlates || end.slateAndAHalves > mostWide) break;
        const all = leastOf(search, top, pile, reach[top]);
        if (all < least) least = all;
        top++;
        isAtTop = false;
      }
      if (!isAtTop) {
        isAtTop = true;
        table = reach[top];
        const above = heights[top] as Height | undefined;
        columnsOfTop = above ? columnsOf(search, above, pile) : 1;
        columnOfTop = above
          ? Math.min(columnsOfTop - 1, mostWide - above.below.slateAndAHalves)
          : 0;
        rowsOfTop = above ? above.slates : 0;
        shift = belowAll - (above ? above.below.slates : 0);
      }
      const partly = table[Math.min(rowsOfTop, row + shift) * columnsOfTop + columnOfTop];
      beyond[row * columns + column] = partly < least ? partly : least;
    }
  }
  return beyond;
}
