import { toHundredths } from '../units.ts';
import type { RoofHeights } from './heights.ts';
import type { PlanRequest } from './plan-types.ts';

/** Where one pile may give way to the next; each way includes the places of those before it. */
export const DIVISIONS = [
  'between-heights',
  'between-courses',
  'within-courses',
  'where-slopes-meet'
] as const;
export type Division = (typeof DIVISIONS)[number];

/** A place of a roof where one pile may give way to the next, and what lies below it. */
export interface RoofPlace {
  readonly slates: number;
  readonly slateAndAHalves: number;
  readonly joints: number;
  readonly commonJoints: number;
  /** 1 where the place parts two neighbours; their joint is counted in `joints`. */
  readonly isJoint: number;
  /** Heights that lie wholly below it, and those begun below it. */
  readonly heightsBelow: number;
  readonly heightsBegun: number;
  /** Courses, in the order of the roof's places, that lie wholly below it. */
  readonly coursesBelow: number;
  /** Index of the course that it lies inside of, or −1, and the slots of that course below it. */
  readonly course: number;
  readonly slot: number;
  /** Whether it parts courses that meet at a hip or valley. */
  readonly partsMeeting: boolean;
  /** Index of the place at the end of its course; its own where it lies inside of none. */
  readonly courseEnd: number;
  /** Indices of the courses, whole or in part, between it and the next place. */
  readonly coursesAfter: readonly number[];
}

/** All places, from before the first slot to after the last. */
export interface RoofPlaces {
  readonly places: readonly RoofPlace[];
  /** Slates below each boundary of heights, from the eaves to the ridge. */
  readonly slatesBelowHeight: readonly number[];
  /** Courses with slots, from the eaves up. */
  readonly order: readonly number[];
}

/**
 * The places of a roof from the eaves up: heights follow each other, and the courses of one height as in
 * the laying order. Linear in the slots.
 */
export function roofPlaces(
  request: PlanRequest,
  roof: RoofHeights,
  division: Division
): RoofPlaces {
  const places: RoofPlace[] = [];
  const slatesBelowHeight = [0];
  const order: number[] = [];
  let below = { slates: 0, slateAndAHalves: 0, joints: 0, commonJoints: 0 };
  const boundary = { isJoint: 0, course: -1, slot: 0 };
  const heights = coursesByHeight(request, roof);
  for (const [height, courses] of heights.entries()) {
    const { isWhole } = roof.heights[height];
    const isDivided =
      division !== 'between-heights' && (!isWhole || division === 'where-slopes-meet');
    for (const [at, index] of courses.entries()) {
      const course = roof.courses[index];
      const own = [index];
      if (at === 0 || isDivided)
        places.push({
          ...below,
          ...boundary,
          heightsBelow: height,
          heightsBegun: at === 0 ? height : height + 1,
          coursesBelow: order.length,
          partsMeeting: at > 0 && isWhole,
          courseEnd: places.length,
          coursesAfter: isDivided ? own : courses
        });
      const mayDivide = isDivided && division !== 'between-courses';
      const courseEnd = places.length + course.count - 1;
      for (let slot = 1; mayDivide && slot < course.count; slot++)
        places.push({
          slates: below.slates + course.slates[slot],
          slateAndAHalves: below.slateAndAHalves + course.slateAndAHalves[slot],
          joints: below.joints + course.joints[slot],
          commonJoints: below.commonJoints + course.commonJoints[slot],
          isJoint: course.isJoint[slot],
          heightsBelow: height,
          heightsBegun: height + 1,
          coursesBelow: order.length,
          course: index,
          slot,
          partsMeeting: isWhole,
          courseEnd,
          coursesAfter: own
        });
      below = {
        slates: below.slates + course.slates[course.count],
        slateAndAHalves: below.slateAndAHalves + course.slateAndAHalves[course.count],
        joints: below.joints + course.joints[course.count],
        commonJoints: below.commonJoints + course.commonJoints[course.count]
      };
      order.push(index);
    }
    slatesBelowHeight.push(below.slates);
  }
  places.push({
    ...below,
    ...boundary,
    heightsBelow: heights.length,
    heightsBegun: heights.length,
    coursesBelow: order.length,
    partsMeeting: false,
    courseEnd: places.length,
    coursesAfter: []
  });
  return { places, slatesBelowHeight, order };
}

/** Courses with slots, height by height, as the laying order has them. */
function coursesByHeight(request: PlanRequest, roof: RoofHeights): number[][] {
  const heights = new Map<number, number[]>();
  for (const [index, { heightMm }] of request.courses.entries()) {
    if (roof.courses[index].count === 0) continue;
    const height = toHundredths(heightMm);
    const own = heights.get(height);
    if (own) own.push(index);
    else heights.set(height, [index]);
  }
  return [...heights.values()];
}
