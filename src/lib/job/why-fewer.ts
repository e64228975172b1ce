import { toHundredths } from '$lib/engine';
import type { Plan } from '$lib/engine/courses';
import type { CourseDone } from './laying-facts.ts';
import { firstThinBelowThick } from './own-plan.ts';
import { placeOf } from './plan-of-parts.ts';
import type { PlanGround } from './plan-request.ts';

/** What an own plan does that no most even plan may, and so shows fewer joints. */
export type WhyFewer = 'thinBelowThick' | 'slopesApart' | 'intoReserve';

/** Joints in billionths of one are rounded, so sums agree within this. */
const SAME_JOINTS = 1e-6;

/**
 * Why fewer joints show on a plan set by hand than on the most even one, both of what is left to lay. The
 * most even plan is the best of all that lay thick below thin, change pile at one height on all slopes
 * and keep the reserve whole, so one of these is broken.
 *
 * @returns the first that holds, in the order of the type; undefined where no fewer show, or where the
 * plans lay unlike courses
 */
export function whyFewerJoints(
  { request, laid }: Pick<PlanGround, 'request' | 'laid'>,
  own: Plan,
  mostEven: Plan
): WhyFewer | undefined {
  const isFewer = own.kickers < mostEven.kickers - SAME_JOINTS;
  if (!isFewer || own.courses.length !== mostEven.courses.length) return undefined;
  const courses = [...laid, ...own.courses];
  if (firstThinBelowThick(courses)) return 'thinBelowThick';
  if (!changesAtOneHeight(request, own.courses)) return 'slopesApart';
  const isBelowReserve = own.piles.some(
    ({ spareSlates, spareSlateAndAHalves }) => spareSlates < 0 || spareSlateAndAHalves < 0
  );
  return isBelowReserve ? 'intoReserve' : undefined;
}

/** Whether no course lies from a thicker pile than one that is lower, on whatever slope. */
function changesAtOneHeight(
  { courses }: Pick<PlanGround['request'], 'courses'>,
  planned: readonly CourseDone[]
): boolean {
  const heights = new Map(courses.map((one) => [placeOf(one), toHundredths(one.heightMm)]));
  const lines = planned
    .filter(({ parts }) => parts.length > 0)
    .map((course) => ({
      height: heights.get(placeOf(course)) ?? 0,
      piles: course.parts.map(({ pile }) => pile)
    }))
    .toSorted((one, other) => one.height - other.height);
  let [below, thinnestHere, height] = [0, 0, -1];
  for (const line of lines) {
    if (line.height !== height) [below, height] = [Math.max(below, thinnestHere), line.height];
    if (Math.min(...line.piles) < below) return false;
    thinnestHere = Math.max(thinnestHere, ...line.piles);
  }
  return true;
}
