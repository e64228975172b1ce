import { type ThicknessInterval, gradeIntervals } from '$lib/engine/thickness';
import { type JobView, partOf } from '$lib/journal';
import type { AdoptedPlan } from './adopted-plan.ts';
import { pileMeanings } from './pile-numbers.ts';
import { gradesOf, numbersOf } from './queries.ts';

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
 * the plan was made: a plan made under other grades. A pile that stands beside the grades in force means
 * what it meant. Empty where the plan was made under the grades in force, or those are not known.
 *
 * @param numbers of the piles by their places in the plan
 * @example after four piles became five: courses 9 to 13, pile 3, 5.9 to 6.6 mm, now 6.1 to 6.9 mm
 */
export function regradedCourses(
  view: JobView,
  { body, rest }: Pick<AdoptedPlan, 'body' | 'rest'>,
  numbers: readonly number[]
): RegradedCourses[] {
  const before = partOf(view, 'job').grades.find(({ id }) => id === body.gradesId);
  const grades = gradesOf(view);
  if (!before || !grades || before.id === grades.gradesId) return [];
  const bands = gradeIntervals(before.value.thresholdsMm);
  const was = new Map(numbersOf(before.value).map((number, index) => [number, bands[index]]));
  const present = gradeIntervals(grades.thresholdsMm);
  const now = new Map(pileMeanings(view).map(({ number, range }) => [number, range]));
  for (const [index, number] of grades.numbers.entries()) now.set(number, present[index]);
  const stretches: { -readonly [K in keyof RegradedCourses]: RegradedCourses[K] }[] = [];
  for (const { slopeId, course, parts } of rest.courses)
    for (const { pile } of parts) {
      const number = numbers[pile - 1];
      const [old, own] = [was.get(number), now.get(number)];
      if (!old || (old.fromMm === own?.fromMm && old.toMm === own.toMm)) continue;
      const open = stretches.find(
        (one) => one.slopeId === slopeId && one.pile === pile && one.toCourse === course - 1
      );
      if (open) open.toCourse = course;
      else
        stretches.push({
          ...{ slopeId, fromCourse: course, toCourse: course, pile, was: old },
          ...(own && { now: own })
        });
    }
  return stretches;
}
