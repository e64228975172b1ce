import { type JobView, current, partOf } from '$lib/journal';
import { placeOf } from '../plan-of-parts.ts';
import { sizesOf } from '../queries.ts';
import { type LaidElsewhere, laidElsewhere } from './laid-sizes.ts';
import { sizesLaidOut } from './size-roof.ts';

/** Courses of one size on one slope that are still to lay. */
export interface SizeToLay {
  readonly sizeId: string;
  readonly lengthMm: number;
  readonly slopeId: string;
  /** From the eave up, at least one. */
  readonly courses: readonly number[];
}

/** Courses of every size that are not laid yet, longest first, slope by slope. */
export function sizesToLay(view: JobView): SizeToLay[] {
  const laid = sizesLaidOut(view);
  if (!laid.ok) return [];
  const lying = partOf(view, 'laying').laid;
  return sizesOf(view).flatMap(({ sizeId, lengthMm }) =>
    laid.roofs[sizeId].slopes.flatMap(({ slope }) => {
      const courses = laid.roofs[sizeId].demand
        .filter(({ slopeId }) => slopeId === slope.id)
        .filter((course) => current(lying[placeOf(course)]) === undefined)
        .map(({ course }) => course);
      return courses.length > 0 ? [{ sizeId, lengthMm, slopeId: slope.id, courses }] : [];
    })
  );
}

/**
 * What of longer slates is still to lay below a course of its slope: the shorter slates would begin
 * earlier than was chosen.
 */
export function longerBelow(view: JobView, slopeId: string, course: number): SizeToLay[] {
  return sizesToLay(view).flatMap((size) => {
    const courses = size.courses.filter((one) => one < course);
    const isOther = size.slopeId === slopeId && !size.courses.includes(course);
    return isOther && courses.length > 0 ? [{ ...size, courses }] : [];
  });
}

/** What lies of another size than the one that is to lie there as the courses are chosen now. */
export function misplacedSizes(view: JobView): LaidElsewhere[] {
  const laid = sizesLaidOut(view);
  if (!laid.ok) return [];
  return laidElsewhere(
    view,
    laid.sets.map(({ set, courses }) => ({ sizeId: set.id, courses }))
  );
}
