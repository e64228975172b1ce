import { EngineError, requireFinite } from '../errors.ts';

/** Far below a pencil line, far above rounding. */
const SAME_MM = 1e-6;

/** One course as its battens make it. */
export interface CourseAsBattened {
  /** What shows of it; the last course has no course above and so no margin. */
  readonly marginMm?: number;
  /** By how much it covers the next but one below it; the first two have none. */
  readonly headlapMm?: number;
}

/** What is wrong with a course of several lengths. */
export type CourseFault =
  | {
      readonly code: 'margin-grows';
      readonly course: number;
      readonly marginMm: number;
      readonly belowMm: number;
    }
  | {
      readonly code: 'headlap-short';
      readonly course: number;
      readonly headlapMm: number;
      readonly askedMm: number;
    };

/**
 * What battens make of courses of several lengths: margins, headlaps, and what is wrong with them.
 *
 * Works from the battens alone, whatever rule they were set by, so it holds any setting out to the
 * two rules of diminishing courses: no margin above the one below it, no headlap below the asked.
 *
 * @param reachMm from the tail to the batten that carries the head, course by course from the eave:
 * a slate's length centre-nailed, less the nail line head-nailed, mm
 * @param stepsMm from each course's batten to the next, mm, one fewer than courses
 * @param headlapMm headlap asked for, mm
 * @returns margins and headlaps by course, and every fault, from the eave up
 * @throws EngineError `empty`, `wrong-length`, `not-finite`
 * Accuracy: differences below a millionth of a mm are none.
 * Source: rule of a stone-roofing society's pages.
 * @example
 * // 20 then 18 in slates, lap 3, the shorter set begun at its full gauge of 7½ in: one headlap of 2
 * checkCourses([20, 20, 18, 18], [8.5, 7.5, 7.5], 3).faults.map((fault) => fault.code)
 * // ['margin-grows', 'headlap-short']
 */
export function checkCourses(
  reachMm: readonly number[],
  stepsMm: readonly number[],
  headlapMm: number
): { readonly courses: readonly CourseAsBattened[]; readonly faults: readonly CourseFault[] } {
  if (reachMm.length === 0) throw new EngineError('empty', 'no courses; give at least one');
  if (stepsMm.length !== reachMm.length - 1)
    throw new EngineError(
      'wrong-length',
      `${stepsMm.length} steps for ${reachMm.length} courses; give one fewer than courses`
    );
  for (const value of [...reachMm, ...stepsMm, headlapMm]) requireFinite(value, 'length');

  let battenMm = reachMm[0];
  const tails = reachMm.map((reach, index) => {
    if (index > 0) battenMm += stepsMm[index - 1];
    return battenMm - reach;
  });
  const courses = tails.map((tailMm, index): CourseAsBattened => ({
    ...(index + 1 < tails.length && { marginMm: tails[index + 1] - tailMm }),
    ...(index >= 2 && { headlapMm: tails[index - 2] + reachMm[index - 2] - tailMm })
  }));
  const faults = courses.flatMap((course, index): CourseFault[] => {
    const found: CourseFault[] = [];
    const belowMm = courses[index - 1]?.marginMm;
    if (
      course.marginMm !== undefined &&
      belowMm !== undefined &&
      course.marginMm > belowMm + SAME_MM
    )
      found.push({ code: 'margin-grows', course: index + 1, marginMm: course.marginMm, belowMm });
    if (course.headlapMm !== undefined && course.headlapMm < headlapMm - SAME_MM)
      found.push({
        code: 'headlap-short',
        course: index + 1,
        headlapMm: course.headlapMm,
        askedMm: headlapMm
      });
    return found;
  });
  return { courses, faults };
}
