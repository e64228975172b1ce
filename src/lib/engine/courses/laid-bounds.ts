import { toHundredths } from '../units.ts';
import type { LaidCourse, PlanRequest } from './plan-types.ts';

/** What courses that are laid leave open to a course still to lay. Piles count from 0. */
export interface CourseBounds {
  /** The thickest pile that it may hold: nothing thicker than what is laid below. */
  readonly least: number;
  /** The thinnest pile that it may hold: nothing thinner than what is laid above. */
  readonly most: number;
  /** Piles of courses laid at its own height; it goes wholly before or wholly after each. */
  readonly beside: readonly { readonly thickest: number; readonly thinnest: number }[];
}

const FREE: CourseBounds = { least: 0, most: Infinity, beside: [] };

/** Whether a course may be laid from these piles (one twice, or a thicker and a thinner one). */
export function mayHold(bounds: CourseBounds, thickest: number, thinnest: number): boolean {
  return (
    thickest >= bounds.least &&
    thinnest <= bounds.most &&
    bounds.beside.every((laid) => thinnest <= laid.thickest || thickest >= laid.thinnest)
  );
}

/**
 * Where each pile may still go when part of the roof is laid: nothing thicker above a laid course
 * than its thinnest pile, nothing thinner below it than its thickest. At the height of a laid course
 * the others go on either side of it. Laid courses bind all slopes, so that slopes that meet still
 * change pile at the same height, or only their own slope.
 *
 * @param request courses in any order
 * @returns bounds for each course. Cost: one sort and two sweeps.
 */
export function boundsOfCourses(request: PlanRequest): CourseBounds[] {
  const { courses, laid = [], laidBinds = 'all-slopes' } = request;
  const bounds: CourseBounds[] = courses.map(() => FREE);
  if (laid.length === 0) return bounds;
  const keyOf = ({ slopeId }: { slopeId: string }) => (laidBinds === 'own-slope' ? slopeId : '');
  const heights = byHeight(request, laid);

  const thinnestBelow = new Map<string, number>();
  for (const { here, laidHere } of heights) {
    for (const index of here) {
      const key = keyOf(courses[index]);
      bounds[index] = {
        least: thinnestBelow.get(key) ?? 0,
        most: Infinity,
        beside: laidHere
          .filter((course) => keyOf(course) === key)
          .map((course) => ({
            thickest: course.thickestPile - 1,
            thinnest: course.thinnestPile - 1
          }))
      };
    }
    for (const course of laidHere) {
      const key = keyOf(course);
      thinnestBelow.set(key, Math.max(thinnestBelow.get(key) ?? 0, course.thinnestPile - 1));
    }
  }
  const thickestAbove = new Map<string, number>();
  for (const { here, laidHere } of heights.reverse()) {
    for (const index of here) {
      const most = thickestAbove.get(keyOf(courses[index])) ?? Infinity;
      bounds[index] = { ...bounds[index], most };
    }
    for (const course of laidHere) {
      const key = keyOf(course);
      thickestAbove.set(key, Math.min(thickestAbove.get(key) ?? Infinity, course.thickestPile - 1));
    }
  }
  return bounds;
}

interface OneHeight {
  readonly here: number[];
  readonly laidHere: LaidCourse[];
}

function byHeight({ courses }: PlanRequest, laid: readonly LaidCourse[]): OneHeight[] {
  const heights = new Map<number, OneHeight>();
  const at = (heightMm: number): OneHeight => {
    const height = toHundredths(heightMm);
    const known = heights.get(height) ?? { here: [], laidHere: [] };
    heights.set(height, known);
    return known;
  };
  for (const [index, course] of courses.entries()) at(course.heightMm).here.push(index);
  for (const course of laid) at(course.heightMm).laidHere.push(course);
  return [...heights].sort(([one], [other]) => one - other).map(([, height]) => height);
}
