import type { PlannedCourse } from '$lib/engine/courses';
import type { OwnChange } from '$lib/job';

/** A course's place on the roof. */
export interface CoursePlace {
  readonly slopeId: string;
  readonly course: number;
}

/**
 * Gives the planned courses slope by slope, by number: for each slope the same map as last while its
 * courses are the same, so that a slope that a step leaves as it was is not drawn again.
 */
export function createBySlope(): (
  courses: readonly PlannedCourse[]
) => (slopeId: string) => ReadonlyMap<number, PlannedCourse> {
  let last = new Map<string, ReadonlyMap<number, PlannedCourse>>();
  return (courses) => {
    const lists = new Map<string, PlannedCourse[]>();
    for (const course of courses) {
      const own = lists.get(course.slopeId);
      if (own) own.push(course);
      else lists.set(course.slopeId, [course]);
    }
    const now = new Map<string, ReadonlyMap<number, PlannedCourse>>();
    for (const [slopeId, own] of lists) {
      const before = last.get(slopeId);
      const isSame =
        before?.size === own.length && own.every((course) => before.get(course.course) === course);
      now.set(
        slopeId,
        before && isSame ? before : new Map(own.map((course) => [course.course, course]))
      );
    }
    last = now;
    return (slopeId) => now.get(slopeId) ?? NO_COURSES;
  };
}

const NO_COURSES: ReadonlyMap<number, PlannedCourse> = new Map();

/** Gives the changes of a slope: the same list as last for that slope while nothing of it has moved. */
export function createChanges(): (
  changes: readonly OwnChange[],
  slopeId: string
) => readonly OwnChange[] {
  const last = new Map<string, { readonly said: string; readonly changes: readonly OwnChange[] }>();
  return (changes, slopeId) => {
    const said = JSON.stringify(changes);
    const before = last.get(slopeId);
    if (before?.said === said) return before.changes;
    last.set(slopeId, { said, changes });
    return changes;
  };
}

/** The numbers of one slope's laid courses. */
export function doneOn(laid: readonly CoursePlace[], slopeId: string): ReadonlySet<number> {
  return new Set(laid.filter((course) => course.slopeId === slopeId).map(({ course }) => course));
}
