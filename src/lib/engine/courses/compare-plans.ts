import { EngineError } from '../errors.ts';
import type { CoursePart, Plan } from './plan-types.ts';

/** What became of one course when the rest of the roof was planned again. */
export interface CourseChange {
  readonly slopeId: string;
  readonly course: number;
  /** `laid`: no longer to plan; `kept`: same piles, same counts; `changed`: other piles or counts. */
  readonly change: 'laid' | 'kept' | 'changed';
  readonly before: readonly CoursePart[];
  /** Empty for a course that is laid. */
  readonly after: readonly CoursePart[];
  /** Expected kickers gained, below 0 if the course grew more even; 0 for a course that is laid. */
  readonly kickersGained: number;
}

/** The difference between two plans, course by course. */
export interface PlanChange {
  /** In the order of the earlier plan. */
  readonly courses: readonly CourseChange[];
  readonly changedCourses: number;
  /** Over the courses still to lay. */
  readonly kickersGained: number;
}

/**
 * What changed from one plan to its successor, course by course. Linear in the courses.
 *
 * @param before the plan that was followed so far
 * @param after the plan for the courses that are left; courses it does not hold count as laid
 * @throws EngineError `inconsistent` if the later plan has a course that the earlier had not
 */
export function comparePlans(before: Plan, after: Plan): PlanChange {
  const later = new Map(after.courses.map((course) => [key(course), course]));
  const known = new Set(before.courses.map(key));
  for (const course of after.courses)
    if (!known.has(key(course)))
      throw new EngineError(
        'inconsistent',
        `course ${course.course} of slope ${course.slopeId} was not planned before`
      );
  const courses = before.courses.map((earlier): CourseChange => {
    const { slopeId, course, parts } = earlier;
    const now = later.get(key(earlier));
    if (!now)
      return { slopeId, course, change: 'laid', before: parts, after: [], kickersGained: 0 };
    return {
      slopeId,
      course,
      change: areSame(parts, now.parts) ? 'kept' : 'changed',
      before: parts,
      after: now.parts,
      kickersGained: now.kickers - earlier.kickers
    };
  });
  return {
    courses,
    changedCourses: courses.filter(({ change }) => change === 'changed').length,
    kickersGained: courses.reduce((sum, course) => sum + course.kickersGained, 0)
  };
}

function areSame(one: readonly CoursePart[], other: readonly CoursePart[]): boolean {
  return (
    one.length === other.length &&
    one.every(
      (part, index) =>
        part.pile === other[index].pile &&
        part.slates === other[index].slates &&
        part.slateAndAHalves === other[index].slateAndAHalves
    )
  );
}

function key(course: { readonly slopeId: string; readonly course: number }): string {
  return JSON.stringify([course.slopeId, course.course]);
}
