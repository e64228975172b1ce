import { type JobView, partOf } from '$lib/journal';
import { sizesOf } from '../queries.ts';

/** Courses of each size from the eave up. */
type CoursesOfSizes = readonly { readonly sizeId: string; readonly courses: number }[];

/** A course that lies, with the size that it was laid of. */
export interface LaidOfSize {
  readonly slopeId: string;
  readonly course: number;
  readonly sizeId: string;
}

/** The size that a choice has at a course; the last one for the short top course. */
export function sizeAt(choice: CoursesOfSizes, course: number): string | undefined {
  let last = 0;
  const used = choice.filter(({ courses }) => courses > 0);
  for (const { sizeId, courses } of used) {
    last += courses;
    if (course <= last) return sizeId;
  }
  return used.at(-1)?.sizeId;
}

type Lying = LaidOfSize & { readonly id: string };

const known = new WeakMap<object, { readonly choices: object; readonly lying: readonly Lying[] }>();

/**
 * Every course that lies, whole or in part, and the size that the courses chosen at the time had there.
 * Courses laid before any were chosen are left out: there were no sizes then. The same list as long as
 * neither what lies nor the choices change.
 */
export function laidOfSizes(view: JobView): readonly Lying[] {
  const laying = partOf(view, 'laying');
  const choices = partOf(view, 'job').setCourses;
  const before = known.get(laying);
  if (before?.choices === choices) return before.lying;
  const { laid, partLaid } = laying;
  const places = new Set([...Object.keys(laid), ...Object.keys(partLaid)]);
  const lying = [...places].flatMap((place): Lying[] => {
    // The whole course counts where it is laid, whatever was said of a part of it before.
    const last = laid[place]?.at(-1) ?? partLaid[place]?.at(-1);
    if (!last || last.value.piles.length === 0) return [];
    const { slopeId, course } = last.value;
    const choice = choices.findLast(({ id, value }) => id < last.id && value.courses.length > 0);
    const sizeId = choice && sizeAt(choice.value.courses, course);
    return sizeId === undefined ? [] : [{ slopeId, course, sizeId, id: last.id }];
  });
  known.set(laying, { choices, lying });
  return lying;
}

/**
 * What courses that lie ask of a new choice: each longer size keeps the courses that it has, the
 * shortest one begun has at least those laid of it. Empty where nothing is laid.
 */
export function coursesHeld(
  view: JobView
): ReadonlyMap<string, { readonly least: number; readonly most?: number }> {
  const lying = laidOfSizes(view);
  const newest = lying.reduce((id, one) => (one.id > id ? one.id : id), '');
  const choice = partOf(view, 'job').setCourses.findLast(
    ({ id, value }) => id < newest && value.courses.length > 0
  )?.value.courses;
  if (!choice) return new Map();
  const coursesOf = (sizeId: string): number =>
    choice.find((one) => one.sizeId === sizeId)?.courses ?? 0;
  const order = sizesOf(view).map(({ sizeId }) => sizeId);
  const begun = Math.max(...lying.map(({ sizeId }) => order.indexOf(sizeId)));
  const held = new Map<string, { least: number; most?: number }>();
  let below = 0;
  for (const sizeId of order.slice(0, begun)) {
    const courses = coursesOf(sizeId);
    held.set(sizeId, { least: courses, most: courses });
    below += courses;
  }
  if (begun < 0) return held;
  const highest = Math.max(...lying.map(({ course }) => course));
  const least = Math.min(highest - below, coursesOf(order[begun]));
  return held.set(order[begun], { least: Math.max(0, least) });
}

/** Courses that lie of one size where another is to lie now. */
export interface LaidElsewhere {
  readonly slopeId: string;
  /** Courses from the eave up. */
  readonly courses: readonly number[];
  readonly laidOf: string;
  readonly nowOf: string;
}

/** What lies of another size than the courses of the sizes now have there, slope by slope. */
export function laidElsewhere(view: JobView, now: CoursesOfSizes): LaidElsewhere[] {
  const found = new Map<
    string,
    { slopeId: string; courses: number[]; laidOf: string; nowOf: string }
  >();
  for (const { slopeId, course, sizeId } of laidOfSizes(view)) {
    const nowOf = sizeAt(now, course);
    if (nowOf === undefined || nowOf === sizeId) continue;
    const key = JSON.stringify([slopeId, sizeId, nowOf]);
    const group = found.get(key) ?? { slopeId, courses: [], laidOf: sizeId, nowOf };
    group.courses.push(course);
    found.set(key, group);
  }
  return [...found.values()].map((group) => ({
    ...group,
    courses: group.courses.toSorted((one, other) => one - other)
  }));
}
