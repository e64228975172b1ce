import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { type Random, randomBelow } from '../random.ts';

/** Slates a slater looks at before he lays the next of a course of random widths. Common practice. */
export const SLATES_IN_REACH = 5;

/** Courses of random widths as they came out of a simulation. */
export interface RandomLaying {
  /** Joints with a course below them. */
  readonly joints: number;
  /** Share of joints at which none of the slates in reach gave the side lap asked for. */
  readonly cutOrSwapShare: number;
  /** Standard error of that share, joints of a course taken together. */
  readonly standardError: number;
  /** Side lap that nine joints in ten have at least, mm. */
  readonly ninetyPercentMm: number;
  readonly meanSlatesPerCourse: number;
}

/** What is laid: widths to draw from, the courses, and the rule. */
export interface RandomLayingRequest {
  /** Widths measured, or ends and steps of a range; each as likely to come next, mm. */
  readonly widthsMm: readonly number[];
  readonly courseWidthMm: number;
  readonly jointMm: number;
  readonly sideLapMm: number;
  readonly courses: number;
  /** Slates to choose among; 1 is laying as they come. */
  readonly inReach?: number;
}

/**
 * Lays courses of random widths by a simple rule and counts how often it does not do.
 *
 * Rule: of the next slates in reach, lay the one whose joint clears the joints of the course below by
 * most. The side lap of a joint is the distance, edge to edge, to the nearest joint below. Where even
 * the best clears by less than asked, a slater would cut one or fetch another: this is counted, and
 * the best is laid. The last slate of a course is cut to the verge and has no joint.
 *
 * @param request lengths in mm, all above 0 (the joint may be 0); not modified
 * @param random a seeded generator: the same seed gives the same figures
 * @returns shares of joints and the side lap that nine in ten have
 * @throws EngineError `empty`, `not-finite`, `not-whole`, `out-of-range`
 * Cost: courses × slates of a course × slates in reach × joints near.
 * Accuracy: the standard error is told; it rests on the spread of whole courses.
 * Source: the rule of the next five is common practice, no source. Laid as they come, it agrees with
 * the renewal formula E[(X − 2s)+] / E[X] in the tests.
 */
export function layRandomWidths(request: RandomLayingRequest, random: Random): RandomLaying {
  const { widthsMm, courseWidthMm, jointMm, sideLapMm, courses } = request;
  const inReach = request.inReach ?? SLATES_IN_REACH;
  if (widthsMm.length === 0) throw new EngineError('empty', 'no widths; give at least one');
  for (const value of [...widthsMm, courseWidthMm, jointMm, sideLapMm])
    requireFinite(value, 'length');
  if (Math.min(...widthsMm, courseWidthMm) <= 0 || jointMm < 0 || sideLapMm < 0)
    throw new EngineError('out-of-range', 'widths must be above 0, joint and side lap not below 0');
  requireWhole(courses, 2, 'courses');
  requireWhole(inReach, 1, 'slates in reach');

  const draw = () => widthsMm[randomBelow(random, widthsMm.length)];
  const reach = Array.from({ length: inReach }, draw);
  const laps: number[] = [];
  const short: { joints: number; short: number }[] = [];
  let slates = 0;
  let below: number[] = [];
  for (let course = 0; course < courses; course++) {
    const joints: number[] = [];
    const count = { joints: 0, short: 0 };
    let leftMm = 0;
    for (;;) {
      const laid = bestInReach(reach, leftMm, below, jointMm);
      leftMm += reach[laid.index];
      reach[laid.index] = draw();
      slates++;
      if (leftMm >= courseWidthMm) break;
      // Middle of the joint to the right of the slate.
      joints.push(leftMm + jointMm / 2);
      leftMm += jointMm;
      if (below.length > 0) {
        count.joints++;
        if (laid.lapMm < sideLapMm) count.short++;
        laps.push(laid.lapMm);
      }
      if (leftMm >= courseWidthMm) break;
    }
    if (count.joints > 0) short.push(count);
    below = joints;
  }
  laps.sort((one, other) => one - other);
  const joints = laps.length;
  const share = joints === 0 ? 0 : short.reduce((sum, course) => sum + course.short, 0) / joints;
  const spread = short.reduce(
    (sum, course) => sum + (course.short - share * course.joints) ** 2,
    0
  );
  return {
    joints,
    cutOrSwapShare: share,
    standardError: joints === 0 ? 0 : Math.sqrt(spread) / joints,
    ninetyPercentMm: laps[Math.floor(joints / 10)] ?? 0,
    meanSlatesPerCourse: slates / courses
  };
}

/** The slate in reach whose joint clears the joints below by most, the first of equals. */
function bestInReach(
  reach: readonly number[],
  leftMm: number,
  below: readonly number[],
  jointMm: number
): { readonly index: number; readonly lapMm: number } {
  let [index, lapMm] = [0, -Infinity];
  for (const [at, widthMm] of reach.entries()) {
    const middleMm = leftMm + widthMm + jointMm / 2;
    const clears = nearestMm(below, middleMm) - jointMm;
    if (clears > lapMm) [index, lapMm] = [at, clears];
  }
  return { index, lapMm };
}

/** Distance from a place to the nearest of rising places, mm; endless without any. */
function nearestMm(rising: readonly number[], at: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle] < at) low = middle + 1;
    else high = middle;
  }
  return Math.min(
    low > 0 ? at - rising[low - 1] : Infinity,
    low < rising.length ? rising[low] - at : Infinity
  );
}

/**
 * Widths to draw from where nobody measured: the range in even steps, so that their mean is the
 * middle of the range.
 *
 * @param fromMm narrowest, mm
 * @param toMm widest, mm, not below the narrowest
 * @returns 21 widths, rising, ends included
 * @throws EngineError `not-finite`, `out-of-range`
 * Source: even widths are an assumption of ours; measured widths should take their place.
 */
export function evenWidthsMm(fromMm: number, toMm: number): number[] {
  requireFinite(fromMm, 'narrowest');
  requireFinite(toMm, 'widest');
  if (fromMm > toMm)
    throw new EngineError('out-of-range', `${fromMm} to ${toMm} mm is turned round`);
  return Array.from({ length: 21 }, (_width, step) => fromMm + ((toMm - fromMm) * step) / 20);
}
