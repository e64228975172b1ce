import { type ThicknessInterval, gradeIntervals } from '$lib/engine/thickness';
import { type JobView, partOf } from '$lib/journal';
import type { AdoptedPlan } from './adopted-plan.ts';
import { gradesOf } from './queries.ts';

/** Neighbouring courses of a slope from one pile, whose grade is another than when they were planned. */
export interface RegradedCourses {
  readonly slopeId: string;
  readonly fromCourse: number;
  readonly toCourse: number;
  readonly pile: number;
  readonly was: ThicknessInterval;
  /** Undefined where there is no such pile any more. */
  readonly now?: ThicknessInterval;
}

/**
 * The courses still to lay for which the plan in use names a pile that meant another thickness when
 * the plan was made: a plan made under other grades. Empty where it was made under the grades in
 * force, or those it was made under are not known.
 *
 * @example after four piles became five: courses 9 to 13, pile 3, 5.9 to 6.6 mm, now 6.1 to 6.9 mm
 */
export function regradedCourses(view: JobView, { body, rest }: AdoptedPlan): RegradedCourses[] {
  const before = partOf(view, 'job').grades.find(({ id }) => id === body.gradesId);
  const grades = gradesOf(view);
  if (!before || !grades || before.id === grades.gradesId) return [];
  const was = gradeIntervals(before.value.thresholdsMm);
  const now = gradeIntervals(grades.thresholdsMm);
  const stretches: { -readonly [K in keyof RegradedCourses]: RegradedCourses[K] }[] = [];
  for (const { slopeId, course, parts } of rest.courses)
    for (const { pile } of parts) {
      const [old, present] = [was.at(pile - 1), now.at(pile - 1)];
      if (!old || (old.fromMm === present?.fromMm && old.toMm === present.toMm)) continue;
      const open = stretches.find(
        (one) => one.slopeId === slopeId && one.pile === pile && one.toCourse === course - 1
      );
      if (open) open.toCourse = course;
      else
        stretches.push({
          ...{ slopeId, fromCourse: course, toCourse: course, pile, was: old },
          ...(present && { now: present })
        });
    }
  return stretches;
}
