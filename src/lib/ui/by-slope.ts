import type { PlannedCourse } from '$lib/engine/courses';

/** A course's place on the roof. */
export interface CoursePlace {
  readonly slopeId: string;
  readonly course: number;
}

/**
 * Gives the planned courses of one slope by number: the same map as last for that slope while its courses
 * are the same, so that a slope that a step leaves as it was is not drawn again.
 */
export function createByCourse(): (
  courses: readonly PlannedCourse[],
  slopeId: string
) => ReadonlyMap<number, PlannedCourse> {
  const last = new Map<string, ReadonlyMap<number, PlannedCourse>>();
  return (courses, slopeId) => {
    const own = courses.filter((course) => course.slopeId === slopeId);
    const before = last.get(slopeId);
    const isSame =
      before?.size === own.length && own.every((course) => before.get(course.course) === course);
    if (before && isSame) return before;
    const now = new Map(own.map((course) => [course.course, course]));
    last.set(slopeId, now);
    return now;
  };
}

/** The numbers of one slope's laid courses. */
export function doneOn(laid: readonly CoursePlace[], slopeId: string): ReadonlySet<number> {
  return new Set(laid.filter((course) => course.slopeId === slopeId).map(({ course }) => course));
}
