import type { CourseDemand } from '../../src/lib/engine/roof/index.ts';
import { checkPlan } from '../../src/lib/engine/courses/plan-check.ts';
import type {
  KickChances,
  PileStock,
  Plan,
  PlanRequest
} from '../../src/lib/engine/courses/plan-types.ts';
import { planCourses } from '../../src/lib/engine/courses/planner.ts';

/** Builders for this folder's tests; no program code imports them. */

export function aCourse(
  course: number,
  slates: number,
  { slopeId = 'south', heightMm = course * 200, wide = false } = {}
): CourseDemand {
  const run = { slates, startsWithSlateAndAHalf: wide, endsWithSlateAndAHalf: false };
  return { slopeId, course, heightMm, runs: [run] };
}

export function aPile(slates: number, reservedSlates = 0, slateAndAHalves = 0): PileStock {
  return { slates, slateAndAHalves, reservedSlates, reservedSlateAndAHalves: 0 };
}

/** The same chance within every pile, another between any two. */
export function evenChances(piles: number, within: number, between: number): KickChances {
  const all = Array.from({ length: piles }, (_pile, index) => index);
  return {
    within: all.map(() => within),
    between: all.map((one) => all.map((other) => (one === other ? 0 : between)))
  };
}

/** A frozen request, so that a test fails if anything modifies it. */
export function aRequest(
  courses: readonly CourseDemand[],
  piles: readonly PileStock[],
  kicks: KickChances = evenChances(piles.length, 0.1, 0.5)
): PlanRequest {
  return Object.freeze({ courses: Object.freeze(courses), piles: Object.freeze(piles), kicks });
}

/** The plan for a request that must have one, checked independently. */
export function planOf(request: PlanRequest): Plan {
  const result = planCourses(request);
  if (result.status !== 'optimal') throw new Error(`short: ${JSON.stringify(result)}`);
  const faults = checkPlan(request, result);
  if (faults.length > 0) throw new Error(JSON.stringify(faults));
  return result;
}
