import type { PlannedCourse } from '$lib/engine/courses';

/** A course's place on the roof. */
export interface CoursePlace {
  readonly slopeId: string;
  readonly course: number;
}

/** The planned courses of one slope by number. */
export function byCourse(
  courses: readonly PlannedCourse[],
  slopeId: string
): ReadonlyMap<number, PlannedCourse> {
  const own = courses.filter((course) => course.slopeId === slopeId);
  return new Map(own.map((course) => [course.course, course]));
}

/** The numbers of one slope's laid courses. */
export function doneOn(laid: readonly CoursePlace[], slopeId: string): ReadonlySet<number> {
  return new Set(laid.filter((course) => course.slopeId === slopeId).map(({ course }) => course));
}
