import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { type CourseDemand, piecesInRun } from '../roof/index.ts';
import { toHundredths } from '../units.ts';

/**
 * The courses of all slopes in laying order: by height, then by slope id, then by course number.
 * A plan may lay the courses of one height in another order ({@link inOrderOfPiles}).
 *
 * Slopes that meet thus reach the same height together and change pile there. Heights are compared
 * in hundredths of a millimetre, so that rounding in the setting-out does not shuffle courses of
 * equal height. The result is a new array; the input is not modified. Cost: one sort.
 *
 * @throws EngineError `inconsistent` if a slope has the same course twice or a course that is not
 * above the one below it; `not-whole`, `out-of-range`, `not-finite` for impossible figures
 * @example
 * // slope A has courses at 0 and 200 mm, slope B at 100 mm
 * layingOrder(courses).map((course) => course.slopeId); // ['A', 'B', 'A']
 */
export function layingOrder(courses: readonly CourseDemand[]): CourseDemand[] {
  for (const course of courses) requireCourse(course);
  requireRisingSlopes(courses);
  return inLayingOrder(courses, (course) => course);
}

/** Sorts whatever has a place on the roof in laying order; a new array, nothing is checked. */
export function inLayingOrder<T>(items: readonly T[], placeOf: (item: T) => CoursePlace): T[] {
  return items
    .map((item) => ({ item, place: placeOf(item), height: toHundredths(placeOf(item).heightMm) }))
    .sort(
      (one, other) =>
        one.height - other.height ||
        compareText(one.place.slopeId, other.place.slopeId) ||
        one.place.course - other.place.course
    )
    .map(({ item }) => item);
}

/**
 * The same for courses that have their piles: at one height the thicker piles come first, a course
 * that changes pile after those that end with its first pile, and slopes by id only where all else is
 * equal. This is the order in which a plan lays them.
 */
export function inOrderOfPiles<T>(
  items: readonly T[],
  placeOf: (item: T) => CoursePlace & { readonly parts: readonly { readonly pile: number }[] }
): T[] {
  return items
    .map((item) => {
      const place = placeOf(item);
      const { parts } = place;
      const height = toHundredths(place.heightMm);
      return { item, place, height, first: parts[0]?.pile ?? 0, last: parts.at(-1)?.pile ?? 0 };
    })
    .sort(
      (one, other) =>
        one.height - other.height ||
        one.first - other.first ||
        one.last - other.last ||
        compareText(one.place.slopeId, other.place.slopeId) ||
        one.place.course - other.place.course
    )
    .map(({ item }) => item);
}

/** Where a course stands on the roof. */
type CoursePlace = Pick<CourseDemand, 'slopeId' | 'course' | 'heightMm'>;

/** Pieces of a course over all its runs. */
export function piecesOfCourse(course: CourseDemand): number {
  return course.runs.reduce((sum, run) => sum + piecesInRun(run), 0);
}

/** Full slates of a course over all its runs. */
export function slatesInCourse(course: CourseDemand): number {
  return course.runs.reduce((sum, run) => sum + run.slates, 0);
}

/** Slate-and-a-halves of all courses: what a common stock has to give. */
export function commonNeed(courses: readonly CourseDemand[]): number {
  let need = 0;
  for (const course of courses) need += piecesOfCourse(course) - slatesInCourse(course);
  return need;
}

/** What a course is called in a message. */
export function courseName(course: { readonly slopeId: string; readonly course: number }): string {
  return `course ${course.course} of slope ${course.slopeId}`;
}

function requireCourse(course: CourseDemand): void {
  requireWhole(course.course, 1, `a course number of slope ${course.slopeId}`);
  requireFinite(course.heightMm, `height of ${courseName(course)}`);
  for (const run of course.runs) requireWhole(run.slates, 0, `slates of ${courseName(course)}`);
}

function requireRisingSlopes(courses: readonly CourseDemand[]): void {
  const slopes = new Map<string, CourseDemand[]>();
  for (const course of courses) {
    const slope = slopes.get(course.slopeId);
    if (slope) slope.push(course);
    else slopes.set(course.slopeId, [course]);
  }
  for (const slope of slopes.values()) {
    slope.sort((one, other) => one.course - other.course);
    for (let upper = 1; upper < slope.length; upper++) {
      const [below, above] = [slope[upper - 1], slope[upper]];
      if (above.course === below.course)
        throw new EngineError('inconsistent', `${courseName(above)} is given twice`);
      if (toHundredths(above.heightMm) <= toHundredths(below.heightMm))
        throw new EngineError(
          'inconsistent',
          `${courseName(above)} is at ${above.heightMm} mm, not above course ${below.course} at ${below.heightMm} mm`
        );
    }
  }
}

function compareText(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
