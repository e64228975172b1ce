import type { HeightCosts } from './height-costs.ts';
import type { Height, RoofHeights } from './heights.ts';
import { mayHold } from './laid-bounds.ts';
import { type Search, farthest, leastOf, priceOf, reachedPartly } from './search.ts';

/** Slots `after` + 1 to `last` of one course, laid from one pile. */
export interface CourseStretch {
  /** Index of the pile, 0 for the thickest. */
  readonly pile: number;
  readonly after: number;
  readonly last: number;
}

/** Where a pile's stretch begins: a state of a height, reached from the stretch before. */
export interface Start {
  readonly height: number;
  readonly state: number;
  readonly pile: number;
  readonly before?: Start;
}

type CostsOf = (height: number) => HeightCosts;
type Bars = (height: number, pile: number) => boolean;

/** Where a state stands in its height. */
interface Place {
  readonly node: number;
  /** The edge whose course it lies in, or −1 at a node. */
  readonly edge: number;
  /** Slots of that course below it. */
  readonly slot: number;
  readonly slates: number;
  readonly slateAndAHalves: number;
  readonly joints: number;
  readonly commonJoints: number;
}

function placeOf(roof: RoofHeights, height: Height, state: number): Place {
  const at = (node: number, edge: number, slot: number): Place => {
    const course = edge < 0 ? undefined : roof.courses[height.edgeCourse[edge]];
    return {
      node,
      edge,
      slot,
      slates: height.nodeSlates[node] + (course?.slates[slot] ?? 0),
      slateAndAHalves: height.nodeSlateAndAHalves[node] + (course?.slateAndAHalves[slot] ?? 0),
      joints: height.nodeJoints[node] + (course?.joints[slot] ?? 0),
      commonJoints: height.nodeCommonJoints[node] + (course?.commonJoints[slot] ?? 0)
    };
  };
  if (state < height.nodes) return at(state, -1, 0);
  const inside = state - height.nodes;
  const edge = height.edgeState.findLastIndex((first) => first <= inside);
  return at(height.edgeFrom[edge], edge, inside - height.edgeState[edge] + 1);
}

/** The cost that the end of a stretch from here must have, since it is the least. */
function soughtCost(search: Search, { height, state, pile }: Start, costsOf: CostsOf): number {
  const at = search.roof.heights[height];
  const { joints, commonJoints } = placeOf(search.roof, at, state);
  const own = priceOf(search, pile, at.below.joints + joints, at.below.commonJoints + commonJoints);
  return costsOf(height).starts[pile][state] + own;
}

/** The node from which a stretch goes on once the course it begins in is laid. */
function nodeAfter(height: Height, { node, edge }: Place): number {
  return edge < 0 ? node : height.edgeTo[edge];
}

/** Nodes that a pile reaches from a node without leaving the height. */
function reachedFrom({ roof }: Search, height: Height, pile: number, node: number): Uint8Array {
  const reached = new Uint8Array(height.nodes);
  reached[node] = 1;
  for (let from = node; from < height.nodes; from++)
    if (reached[from])
      for (let edge = height.nodeEdges[from]; edge < height.nodeEdges[from + 1]; edge++)
        if (mayHold(roof.bounds[height.edgeCourse[edge]], pile, pile))
          reached[height.edgeTo[edge]] = 1;
  return reached;
}

/** Whether a pile may lay all that is left of the height, course by course in some order. */
function mayLeave(search: Search, height: Height, pile: number, node: number): boolean {
  const left = new Set<number>();
  for (let edge = 0; edge < height.edgeTo.length; edge++)
    if (reachedFromNode(height, node, height.edgeFrom[edge])) left.add(height.edgeCourse[edge]);
  return [...left].every((course) => mayHold(search.roof.bounds[course], pile, pile));
}

/** Whether every chain is at least as far at one node as at another. */
function reachedFromNode({ chains }: Height, from: number, to: number): boolean {
  let [low, high] = [from, to];
  for (const { length } of chains) {
    if (high % (length + 1) < low % (length + 1)) return false;
    low = Math.floor(low / (length + 1));
    high = Math.floor(high / (length + 1));
  }
  return true;
}

/** Slates and slate-and-a-halves below a start, counted from the eaves. */
function usedBelow(search: Search, { height, state }: Start) {
  const at = search.roof.heights[height];
  const place = placeOf(search.roof, at, state);
  return {
    slates: at.below.slates + place.slates,
    slateAndAHalves: at.below.slateAndAHalves + place.slateAndAHalves
  };
}

/** Whether a best plan lays everything from here to the ridge with this pile. */
export function mayFinish(search: Search, start: Start, costsOf: CostsOf, bars: Bars): boolean {
  const { heights, total } = search.roof;
  const height = heights[start.height];
  const node = nodeAfter(height, placeOf(search.roof, height, start.state));
  const from = start.height + 1;
  const used = usedBelow(search, start);
  const limit = search.limits[start.pile];
  return (
    mayLeave(search, height, start.pile, node) &&
    total.slates <= used.slates + limit.slates &&
    total.slateAndAHalves <= used.slateAndAHalves + limit.slateAndAHalves &&
    farthest(search, start.pile, used, from, bars) === heights.length &&
    soughtCost(search, start, costsOf) ===
      priceOf(search, start.pile, total.joints, total.commonJoints)
  );
}

/** Of all best ends of these stretches those that use the pile most, each with its next pile. */
export function farthestStarts(
  search: Search,
  own: readonly Start[],
  reach: readonly (readonly Float64Array[])[],
  costsOf: CostsOf,
  bars: Bars
): Start[] {
  const { roof, limits } = search;
  const found = new Map<string, Start>();
  let most = 0;
  for (const start of own) {
    const { pile } = start;
    const sought = soughtCost(search, start, costsOf);
    const used = usedBelow(search, start);
    const mostSlates = used.slates + limits[pile].slates;
    const mostWide = used.slateAndAHalves + limits[pile].slateAndAHalves;
    const own = roof.heights[start.height];
    const node = nodeAfter(own, placeOf(roof, own, start.state));

    /** Takes the ends in one height that cost what is sought; true if there are any. */
    const endsIn = (at: number, from: number): boolean => {
      const height = roof.heights[at];
      const { ends, starts } = costsOf(at);
      const reached = reachedFrom(search, height, pile, from);
      let isAny = false;
      for (let state = 0; state < height.states; state++) {
        if (ends[pile][state] !== sought || (at === start.height && state === start.state))
          continue;
        const place = placeOf(roof, height, state);
        if (reached[place.node] === 0) continue;
        const slates = height.below.slates + place.slates;
        const wide = height.below.slateAndAHalves + place.slateAndAHalves;
        if (slates > mostSlates || wide > mostWide) continue;
        isAny = true;
        const taken = slates + wide - used.slates - used.slateAndAHalves;
        if (taken < most) continue;
        if (taken > most) found.clear();
        most = taken;
        for (const next of nextPiles(search, height, state, pile, starts, ends[pile][state]))
          found.set(`${at}|${state}|${next}`, { height: at, state, pile: next, before: start });
      }
      return isAny;
    };

    let isFound = false;
    if (mayLeave(search, own, pile, node)) {
      const top = farthest(search, pile, used, start.height + 1, bars);
      const leastIn = (at: number) =>
        at === top
          ? reachedPartly(search, at, pile, reach[pile][at], mostSlates, mostWide)
          : leastOf(search, at, pile, reach[pile][at]);
      const start0 = roof.heights[start.height + 1]?.below;
      const mayEnter = start0 && start0.slates <= mostSlates && start0.slateAndAHalves <= mostWide;
      for (let at = Math.min(top, roof.heights.length - 1); mayEnter && at > start.height; at--)
        if (leastIn(at) === sought && endsIn(at, 0)) {
          isFound = true;
          break;
        }
    }
    if (!isFound) endsIn(start.height, node);
  }
  return [...found.values()];
}

/** The piles that may follow at a state at the least cost. */
function nextPiles(
  search: Search,
  height: Height,
  state: number,
  pile: number,
  starts: readonly Float64Array[],
  ending: number
): number[] {
  const { roof, limits, kicks } = search;
  const { edge, node, slot, ...place } = placeOf(roof, height, state);
  const index = height.edgeCourse[edge];
  const course = edge < 0 ? undefined : roof.courses[index];
  const joints = edge < 0 ? height.nodeJoints[node] : place.joints - course!.isJoint[slot];
  const own = priceOf(
    search,
    pile,
    height.below.joints + joints,
    height.below.commonJoints + place.commonJoints
  );
  return [...limits.keys()].slice(pile + 1).filter((next) => {
    if (!course) return starts[next][state] + own === ending;
    if (!mayHold(roof.bounds[index], pile, next)) return false;
    const change = kicks.between[pile][next] * limits.length * course.isJoint[slot] + 1;
    return starts[next][state] + change + own === ending;
  });
}

/** Follows the stretches back to the eaves and shares them out to the courses. */
export function stretchesOf(roof: RoofHeights, last: Start): CourseStretch[][] {
  const stretches: CourseStretch[][] = roof.courses.map(() => []);
  const path: Start[] = [];
  for (let start: Start | undefined = last; start; start = start.before) path.unshift(start);
  let at = 0;
  for (const [index, height] of roof.heights.entries()) {
    let node = 0;
    const layUpTo = (end: number, pile: number) => {
      for (const course of coursesBetween(height, node, end)) {
        const after = stretches[course].at(-1)?.last ?? 0;
        stretches[course].push({ pile, after, last: roof.courses[course].count });
      }
      node = end;
    };
    while (path[at + 1]?.height === index) {
      const { pile } = path[at];
      const { node: end, edge, slot } = placeOf(roof, height, path[at + 1].state);
      layUpTo(end, pile);
      if (edge >= 0) stretches[height.edgeCourse[edge]].push({ pile, after: 0, last: slot });
      at++;
    }
    layUpTo(height.nodes - 1, path[at].pile);
  }
  return stretches;
}

/** Courses laid on the way from one node to another. */
function coursesBetween({ chains }: Height, from: number, to: number): number[] {
  let [low, high] = [from, to];
  return chains.flatMap((chain) => {
    const size = chain.length + 1;
    const part = chain.slice(low % size, high % size);
    low = Math.floor(low / size);
    high = Math.floor(high / size);
    return part;
  });
}
