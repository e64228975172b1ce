import { toHundredths } from '../units.ts';
import { type CourseBounds, boundsOfCourses } from './laid-bounds.ts';
import type { PlanRequest } from './plan-types.ts';
import { type CourseSlots, slotsOfCourses } from './slots.ts';

/** What lies below a place on the roof, in slots and in what makes their price. */
export interface Sums {
  readonly slates: number;
  readonly slateAndAHalves: number;
  readonly joints: number;
  readonly commonJoints: number;
}

/**
 * The courses of one height, which may be laid in any order. Courses that are alike are one chain,
 * since it is all the same which of them comes first. A node is a number of courses laid of each
 * chain; an edge lays the next course of one chain. Node 0 is the height's start, the last its end,
 * and an edge always leads to a later node.
 *
 * A state is a node but the last, or a place inside an edge's course: of edge e the place after
 * slot o is state `nodes` + `edgeState[e]` + o − 1.
 */
export interface Height {
  /** Whether its courses meet at a hip or valley, so that no pile gives out within it. */
  readonly isWhole: boolean;
  /** What lies below the height. */
  readonly below: Sums;
  readonly slates: number;
  readonly slateAndAHalves: number;
  readonly nodes: number;
  readonly states: number;
  readonly nodeSlates: Int32Array;
  readonly nodeSlateAndAHalves: Int32Array;
  readonly nodeJoints: Int32Array;
  readonly nodeCommonJoints: Int32Array;
  /** Edges of node n: `nodeEdges[n]` up to, without, `nodeEdges[n + 1]`. */
  readonly nodeEdges: Int32Array;
  readonly edgeFrom: Int32Array;
  readonly edgeTo: Int32Array;
  /** Index of the edge's course. */
  readonly edgeCourse: Int32Array;
  readonly edgeState: Int32Array;
  /** Indices of courses, chain by chain. */
  readonly chains: readonly (readonly number[])[];
}

/** The roof, height by height from the eaves up; heights without a slot are left out. */
export interface RoofHeights {
  readonly courses: readonly CourseSlots[];
  readonly bounds: readonly CourseBounds[];
  readonly heights: readonly Height[];
  /** The whole roof. */
  readonly total: Sums;
  /** False if unlike courses had to share a chain, so that not every order is tried. */
  readonly triesEveryOrder: boolean;
}

/**
 * States up to which every order within every height is tried: 8 unlike courses of 50 slates on each
 * of 30 heights are 1.5 million. Beyond it the courses closest in size share a chain at the heights
 * with most states, and are laid the smaller before the larger.
 */
const MOST_STATES = 1_600_000;

/**
 * Puts the roof together, height by height.
 *
 * @param request courses in laying order
 * @param keepsTogether whether courses that meet at a hip or valley change pile together
 */
export function roofHeights(request: PlanRequest, keepsTogether = true): RoofHeights {
  const courses = slotsOfCourses(request.courses, request.common !== undefined);
  const bounds = boundsOfCourses(request);
  const groups = new Map<number, number[]>();
  for (const [index, { heightMm }] of request.courses.entries()) {
    if (courses[index].count === 0) continue;
    const height = toHundredths(heightMm);
    const group = groups.get(height);
    if (group) group.push(index);
    else groups.set(height, [index]);
  }
  const chained = [...groups.values()].map((group) => chainsOfAlike(group, courses, bounds));
  const triesEveryOrder = mergeChains(chained, courses);
  let total: Sums = { slates: 0, slateAndAHalves: 0, joints: 0, commonJoints: 0 };
  const heights = chained.map((chains) => {
    const isWhole =
      keepsTogether && chains.some((chain) => chain.some((index) => request.courses[index].meets));
    const height = { ...heightOf(chains, courses, total), isWhole };
    const end = height.nodes - 1;
    total = {
      slates: total.slates + height.slates,
      slateAndAHalves: total.slateAndAHalves + height.slateAndAHalves,
      joints: total.joints + height.nodeJoints[end],
      commonJoints: total.commonJoints + height.nodeCommonJoints[end]
    };
    return height;
  });
  return { courses, bounds, heights, total, triesEveryOrder };
}

function chainsOfAlike(
  group: readonly number[],
  courses: readonly CourseSlots[],
  bounds: readonly CourseBounds[]
): number[][] {
  const chains: number[][] = [];
  for (const index of group) {
    const own = chains.find(
      ([first]) => courses[first] === courses[index] && areSame(bounds[first], bounds[index])
    );
    if (own) own.push(index);
    else chains.push([index]);
  }
  return chains;
}

function areSame(one: CourseBounds, other: CourseBounds): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** Merges chains until there are few enough states; false if any had to be merged. */
function mergeChains(heights: number[][][], courses: readonly CourseSlots[]): boolean {
  const states = heights.map((chains) => statesOf(chains, courses));
  let all = states.reduce((sum, count) => sum + count, 0);
  const isWithin = all <= MOST_STATES;
  while (all > MOST_STATES) {
    const most = states.indexOf(Math.max(...states));
    if (heights[most].length < 2) break;
    mergeClosest(heights[most], courses);
    all -= states[most];
    states[most] = statesOf(heights[most], courses);
    all += states[most];
  }
  return isWithin;
}

function statesOf(chains: readonly (readonly number[])[], courses: readonly CourseSlots[]): number {
  const nodes = chains.reduce((product, { length }) => product * (length + 1), 1);
  return chains.reduce((sum, chain) => {
    const slots = chain.reduce((all, index) => all + courses[index].count - 1, 0);
    return sum + (nodes / (chain.length + 1)) * slots;
  }, nodes);
}

function mergeClosest(chains: number[][], courses: readonly CourseSlots[]): void {
  const size = (index: number) => courses[index].count;
  const middle = (chain: readonly number[]) => size(chain[chain.length >> 1]);
  chains.sort((one, other) => middle(one) - middle(other) || one[0] - other[0]);
  let at = 0;
  const gap = (index: number) => middle(chains[index + 1]) - middle(chains[index]);
  for (let index = 1; index + 1 < chains.length; index++) if (gap(index) < gap(at)) at = index;
  const merged = [...chains[at], ...chains[at + 1]];
  chains.splice(
    at,
    2,
    merged.sort((one, other) => size(one) - size(other) || one - other)
  );
}

function heightOf(
  chains: readonly (readonly number[])[],
  courses: readonly CourseSlots[],
  below: Sums
): Omit<Height, 'isWhole'> {
  const strides: number[] = [];
  let nodes = 1;
  for (const chain of chains) {
    strides.push(nodes);
    nodes *= chain.length + 1;
  }
  const edges = chains.reduce((sum, { length }) => sum + (nodes / (length + 1)) * length, 0);
  const height = {
    nodes,
    nodeSlates: new Int32Array(nodes),
    nodeSlateAndAHalves: new Int32Array(nodes),
    nodeJoints: new Int32Array(nodes),
    nodeCommonJoints: new Int32Array(nodes),
    nodeEdges: new Int32Array(nodes + 1),
    edgeFrom: new Int32Array(edges),
    edgeTo: new Int32Array(edges),
    edgeCourse: new Int32Array(edges),
    edgeState: new Int32Array(edges)
  };
  let edge = 0;
  let inside = 0;
  for (let node = 0; node < nodes; node++) {
    for (const [index, chain] of chains.entries()) {
      const done = Math.floor(node / strides[index]) % (chain.length + 1);
      if (done === chain.length) continue;
      const course = courses[chain[done]];
      const to = node + strides[index];
      height.edgeFrom[edge] = node;
      height.edgeTo[edge] = to;
      height.edgeCourse[edge] = chain[done];
      height.edgeState[edge] = inside;
      height.nodeSlates[to] = height.nodeSlates[node] + course.slates[course.count];
      height.nodeSlateAndAHalves[to] =
        height.nodeSlateAndAHalves[node] + course.slateAndAHalves[course.count];
      height.nodeJoints[to] = height.nodeJoints[node] + course.joints[course.count];
      height.nodeCommonJoints[to] =
        height.nodeCommonJoints[node] + course.commonJoints[course.count];
      inside += course.count - 1;
      edge++;
    }
    height.nodeEdges[node + 1] = edge;
  }
  return {
    ...height,
    below,
    chains,
    states: nodes + inside,
    slates: height.nodeSlates[nodes - 1],
    slateAndAHalves: height.nodeSlateAndAHalves[nodes - 1]
  };
}
