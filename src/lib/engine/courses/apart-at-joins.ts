import type { CourseMeeting } from '../roof/index.ts';
import type { PlannedCourse } from './plan-types.ts';

/** Two courses side by side at a hip or valley that are laid from other piles. */
export interface CoursesApart {
  readonly one: string;
  readonly other: string;
  /** The course on the one slope and the course beside it on the other. */
  readonly course: number;
  readonly otherCourse: number;
  /** Piles of each, the thicker first. */
  readonly piles: readonly number[];
  readonly otherPiles: readonly number[];
}

/**
 * Where a plan changes pile on one side of a hip or valley and not on the other: the lowest such pair of
 * courses at each. Slopes whose courses miss each other by more than half a course have no such pairs.
 *
 * @param meetings of the roof that the plan is for
 * @param courses of a plan; courses without pieces are left out
 * @returns none where every change is level
 * @example
 * // course 12 of the front from pile 1, course 12 of the end round the hip from pile 2
 */
export function coursesApart(
  meetings: readonly CourseMeeting[],
  courses: readonly PlannedCourse[]
): CoursesApart[] {
  const planned = new Map(courses.map((one) => [JSON.stringify([one.slopeId, one.course]), one]));
  const pilesOf = (slopeId: string, course: number): number[] =>
    planned.get(JSON.stringify([slopeId, course]))?.parts.map(({ pile }) => pile) ?? [];
  return meetings.flatMap(({ join: { one, other }, isLevel, offset }) => {
    if (!isLevel) return [];
    const apart = courses
      .filter(({ slopeId }) => slopeId === one)
      .map(({ course }): CoursesApart => {
        const otherCourse = course + offset;
        const [piles, otherPiles] = [pilesOf(one, course), pilesOf(other, otherCourse)];
        return { one, other, course, otherCourse, piles, otherPiles };
      })
      .filter(
        ({ piles, otherPiles }) =>
          piles.length > 0 && otherPiles.length > 0 && piles.join() !== otherPiles.join()
      )
      .sort((a, b) => a.course - b.course);
    return apart.slice(0, 1);
  });
}
