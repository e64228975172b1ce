import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import type { PileEvenness } from './kick-windows.ts';

/** What one course asks of the piles. */
export interface CourseNeed {
  /** Slates used up. */
  readonly slates: number;
  /** Joints between neighbours, where a kicker can stand. */
  readonly joints: number;
}

/** A roof as running sums over its courses, eave first: entry c holds the first c courses. */
export interface CourseSums {
  readonly courses: number;
  readonly slates: Float64Array;
  readonly joints: Float64Array;
}

/** Whole courses laid from whole piles, eave first and thickest pile first. */
export interface FilledCourses {
  /** Courses of each pile, thickest first; a pile may lay none. */
  readonly coursesPerPile: readonly number[];
  /** Courses laid; fewer than the roof has where the piles run out. */
  readonly laid: number;
  /** Expected kickers in the courses laid. */
  readonly expectedKickers: number;
}

/**
 * The price of a joint between two slates of one pile, for comparing plans: its chance to kick and,
 * to settle plans that agree within a billionth of a kicker a joint, a billionth of the mean squared
 * step between neighbours in mm².
 */
export function jointPrice({ kickProbability, meanSquaredStepMm2 }: PileEvenness): number {
  return kickProbability + 1e-9 * meanSquaredStepMm2;
}

/** Slates of a pile that may be laid: what the reserve share leaves, in whole slates. */
export function usableSlates(slates: number, reserveShare: number): number {
  return Math.floor(slates * (1 - reserveShare) + 1e-9);
}

/**
 * Running sums of slates and joints; throws unless every course holds whole numbers from 0.
 *
 * @throws EngineError `not-whole`, `out-of-range`
 */
export function sumCourses(courses: readonly CourseNeed[]): CourseSums {
  const slates = new Float64Array(courses.length + 1);
  const joints = new Float64Array(courses.length + 1);
  for (const [index, course] of courses.entries()) {
    requireWhole(course.slates, 0, `slates of course ${index + 1}`);
    requireWhole(course.joints, 0, `joints of course ${index + 1}`);
    slates[index + 1] = slates[index] + course.slates;
    joints[index + 1] = joints[index] + course.joints;
  }
  return { courses: courses.length, slates, joints };
}

/**
 * One reserve share for every pile from a single figure, one figure a pile, or nothing.
 *
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range` unless each is 0 to below 1
 */
export function reserveShares(
  reserve: number | readonly number[] | undefined,
  piles: number
): number[] {
  const shares = Array.from({ length: piles }, (_share, pile) =>
    typeof reserve === 'object' ? reserve[pile] : (reserve ?? 0)
  );
  if (typeof reserve === 'object' && reserve.length !== piles)
    throw new EngineError('wrong-length', `${reserve.length} reserve shares for ${piles} piles`);
  for (const share of shares) {
    requireFinite(share, 'reserve share');
    if (share < 0 || share >= 1)
      throw new EngineError('out-of-range', `reserve share is ${share}; give 0 to below 1`);
  }
  return shares;
}

/** The last course that `usable` slates reach when the first `laid` courses are already laid. */
export function farthestCourse(sums: CourseSums, laid: number, usable: number): number {
  const limit = sums.slates[laid] + usable;
  let low = laid;
  let high = sums.courses;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sums.slates[middle] <= limit) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** What {@link layOnePile} works on: costs by courses laid, before and after one pile. */
export interface PileStep {
  /** Least cost of the first c courses before this pile; Infinity where they cannot be laid. */
  readonly before: Float64Array;
  /** Least cost with this pile; lowered in place wherever this step improves it. */
  readonly after: Float64Array;
  /** For every improved entry: the courses that were laid before, plus `mark`. */
  readonly origin: Int32Array;
  readonly mark: number;
  readonly usable: number;
  readonly price: number;
  /** Entries of `after` below this number of courses are of no use to the caller. */
  readonly leastLaid: number;
  /** Room for one number per course and one more. */
  readonly queue: Int32Array;
}

/**
 * Lays 0, 1, 2 … courses from one pile on top of every number of courses already laid, keeping the
 * cheapest way to each height. The reachable starts slide upwards with the height, so a queue of
 * rising costs gives each minimum in constant time: linear in the courses.
 */
export function layOnePile(sums: CourseSums, step: PileStep): void {
  const { before, after, origin, mark, usable, price, leastLaid, queue } = step;
  const { slates, joints, courses } = sums;
  let head = 0;
  let tail = 0;
  for (let laid = 0; laid <= courses; laid++) {
    if (before[laid] < Infinity) {
      const key = before[laid] - price * joints[laid];
      while (tail > head && before[queue[tail - 1]] - price * joints[queue[tail - 1]] >= key)
        tail--;
      queue[tail++] = laid;
    }
    while (tail > head && slates[laid] - slates[queue[head]] > usable) head++;
    if (tail === head || laid < leastLaid) continue;
    const start = queue[head];
    const cost = before[start] + price * (joints[laid] - joints[start]);
    if (cost < after[laid]) {
      after[laid] = cost;
      origin[laid] = mark + start;
    }
  }
}

/**
 * Lays a roof from given piles, whole courses at a time, so that expected kickers are least.
 *
 * @param piles evenness of each pile, thickest first, its `slates` in stock slates
 * @param courses what each course needs, eave first; not modified
 * @param reserve share of every pile kept back, 0 to below 1: one figure, or one per pile
 * @returns courses per pile, laying as many courses as the piles can hold. Of several ways the one
 * with the least expected kickers; of those that agree within a billionth of a kicker a joint the
 * one whose neighbours differ least, and then the one with more courses from thicker piles
 *
 * Definition: the piles follow each other from thickest to thinnest, each laying a run of whole
 * courses that its slates, less its reserve and rounded down, cover. Exact dynamic programme.
 * Cost: piles × courses.
 *
 * @throws EngineError `not-whole`, `out-of-range`, `wrong-length`, `not-finite`
 */
export function fillWholeCourses(
  piles: readonly PileEvenness[],
  courses: readonly CourseNeed[],
  reserve?: number | readonly number[]
): FilledCourses {
  const sums = sumCourses(courses);
  const shares = reserveShares(reserve, piles.length);
  const length = sums.courses + 1;
  const queue = new Int32Array(length);
  let before = new Float64Array(length).fill(Infinity);
  before[0] = 0;
  const origins = piles.map((pile, index) => {
    const after = new Float64Array(length).fill(Infinity);
    const origin = new Int32Array(length);
    const usable = usableSlates(pile.slates, shares[index]);
    const price = jointPrice(pile);
    layOnePile(sums, { before, after, origin, mark: 0, usable, price, leastLaid: 0, queue });
    before = after;
    return origin;
  });

  let laid = sums.courses;
  while (before[laid] === Infinity) laid--;
  return { ...traceBack(piles, origins, sums, laid), laid };
}

function traceBack(
  piles: readonly PileEvenness[],
  origins: readonly Int32Array[],
  sums: CourseSums,
  laid: number
): Pick<FilledCourses, 'coursesPerPile' | 'expectedKickers'> {
  const coursesPerPile = new Array<number>(piles.length);
  let expectedKickers = 0;
  let end = laid;
  for (let pile = piles.length - 1; pile >= 0; pile--) {
    const start = origins[pile][end];
    coursesPerPile[pile] = end - start;
    expectedKickers += piles[pile].kickProbability * (sums.joints[end] - sums.joints[start]);
    end = start;
  }
  return { coursesPerPile, expectedKickers };
}
