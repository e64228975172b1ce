import type { Plan } from '$lib/engine/courses';
import { type ThicknessInterval, gradeIntervals } from '$lib/engine/thickness';
import { type BodyOf, type JobView, partOf } from '$lib/journal';
import { pileMeanings } from './pile-numbers.ts';
import { placeOf } from './plan-of-parts.ts';
import { gradesOf, numbersOf } from './queries.ts';

/** A pile by the number that stands on it, and what it is for; undefined where nothing tells. */
export interface NamedPile {
  readonly number: number;
  readonly band?: ThicknessInterval;
}

/** Neighbouring courses of a slope whose piles a new plan changes alike. */
export interface RenewedCourses {
  readonly slopeId: string;
  readonly fromCourse: number;
  readonly toCourse: number;
  /** Left to right; empty where the old plan does not know the course. */
  readonly was: readonly NamedPile[];
  readonly now: readonly NamedPile[];
}

/**
 * A plan made under other grades beside a new one, course by course: from which pile, and what that pile
 * was for when the plan was made, to which pile, and what that is for now. Courses of which both plans
 * say the same are left out. Empty where the plan in use was made under the grades in force.
 *
 * @param body the plan in use
 * @param rest the new plan of what is left, its piles by their places
 * @param numbers of the piles by their places
 */
export function renewedCourses(
  view: JobView,
  body: BodyOf<'planAdopted'>,
  rest: Plan,
  numbers: readonly number[]
): RenewedCourses[] {
  const grades = gradesOf(view);
  const before = partOf(view, 'job').grades.find(({ id }) => id === body.gradesId)?.value;
  if (!grades || body.gradesId === grades.gradesId) return [];
  const meanings = pileMeanings(view).map(({ number, range }) => [number, range] as const);
  const then = new Map([...meanings, ...(before ? bandsByNumber(before) : [])]);
  const now = new Map([...meanings, ...bandsByNumber({ ...grades, piles: [...grades.numbers] })]);
  const planned = new Map(body.courses.map((course) => [placeOf(course), course.piles]));
  const stretches: { -readonly [K in keyof RenewedCourses]: RenewedCourses[K] }[] = [];
  for (const course of rest.courses) {
    const { slopeId, course: number, parts } = course;
    const old = (planned.get(placeOf(course)) ?? []).map(({ pile }) => named(pile, then));
    const next = parts.map(({ pile }) => named(numbers[pile - 1], now));
    if (sayAlike(old) === sayAlike(next)) continue;
    const open = stretches.find(
      (one) =>
        one.slopeId === slopeId &&
        one.toCourse === number - 1 &&
        sayAlike(one.was) === sayAlike(old) &&
        sayAlike(one.now) === sayAlike(next)
    );
    if (open) open.toCourse = number;
    else stretches.push({ slopeId, fromCourse: number, toCourse: number, was: old, now: next });
  }
  return stretches;
}

function bandsByNumber(
  grades: Pick<BodyOf<'gradesSet'>, 'piles' | 'thresholdsMm'>
): [number, ThicknessInterval][] {
  const bands = gradeIntervals(grades.thresholdsMm);
  return numbersOf(grades).map((number, index) => [number, bands[index]]);
}

function named(
  number: number,
  bands: ReadonlyMap<number, ThicknessInterval | undefined>
): NamedPile {
  const band = bands.get(number);
  return band ? { number, band } : { number };
}

/** The same text for the same piles of the same meaning. */
function sayAlike(piles: readonly NamedPile[]): string {
  return piles.map(({ number, band }) => `${number} ${band?.fromMm} ${band?.toMm}`).join('|');
}
