import { type Plan, type PlanChange, comparePlans, kickChances } from '$lib/engine/courses';
import type { AdoptedPlan } from './adopted-plan.ts';
import { type CoursePartDone, wholeCourse } from './laying-facts.ts';
import type { PlanGround } from './plan-request.ts';
import { placeOf, planOfParts } from './plan-of-parts.ts';

/** What a new plan changes of the rest of the one in force, over the courses that both hold. */
export function changeOfRest(adopted: AdoptedPlan, plan: Plan): PlanChange {
  const known = new Set(adopted.rest.courses.map(placeOf));
  const courses = plan.courses.filter((course) => known.has(placeOf(course)));
  return comparePlans(adopted.rest, { ...plan, courses });
}

/** The whole roof under a plan of its rest: laid courses as they were laid. */
export function wholeRoof(ground: PlanGround, rest: Plan): Plan {
  const parts = new Map(
    [...ground.laid, ...rest.courses].map((course) => [placeOf(course), course.parts])
  );
  for (const part of ground.partLaid) {
    const own = parts.get(placeOf(part));
    if (own) parts.set(placeOf(part), wholeCourse(part, own));
  }
  return planOfParts(ground.request, ground.roof.demand, (place) => parts.get(place));
}

/**
 * Kickers per 100 joints of a plan if every slate lay on its right pile: what sorting without an
 * error would come to.
 */
export function per100IfSharp(
  { request, roof, pileBins, softness }: PlanGround,
  plan: Plan,
  kickAllowanceMm: number
): number {
  const parts = new Map(plan.courses.map((course) => [placeOf(course), course.parts]));
  const kicks = kickChances(pileBins, kickAllowanceMm, undefined, softness);
  return planOfParts({ ...request, kicks }, roof.demand, (place) => parts.get(place)).per100Joints;
}

/** The places of some courses, to look up whether a course is among them. */
export function placesOf(
  courses: readonly { slopeId: string; course: number }[]
): ReadonlySet<string> {
  return new Set(courses.map(placeOf));
}

/** The numbers of the courses among some that lie on one slope. */
export function coursesOn(
  courses: readonly { slopeId: string; course: number }[],
  slopeId: string
): ReadonlySet<number> {
  return new Set(courses.filter((one) => one.slopeId === slopeId).map(({ course }) => course));
}

/** The courses of one slope of which a part lies, by number; those with a note alone left out. */
export function begunOn(
  partLaid: readonly CoursePartDone[],
  slopeId: string
): ReadonlyMap<number, CoursePartDone> {
  const own = partLaid.filter((part) => part.slopeId === slopeId && part.pieces > 0);
  return new Map(own.map((part) => [part.course, part]));
}
