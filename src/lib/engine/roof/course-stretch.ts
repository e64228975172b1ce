import { type CourseDemand, type CourseRun, piecesInRun } from './course-demand.ts';

/** Pieces of a course: slates and slate-and-a-halves of all its runs. */
export function piecesOfDemand({ runs }: Pick<CourseDemand, 'runs'>): number {
  return runs.reduce((sum, run) => sum + piecesInRun(run), 0);
}

/**
 * A stretch of a course as a course of its own, at the same place and height: its pieces from
 * `start` up to, not including, `end`, counted from its left end. Bounds beyond the course are those
 * of the course; a stretch of nothing has no runs. The given course is not modified. Linear in the
 * runs.
 *
 * @example
 * // a slate-and-a-half and 9 slates, from 0 to 4: a slate-and-a-half and 3 slates
 */
export function courseStretch(course: CourseDemand, start: number, end: number): CourseDemand {
  const runs: CourseRun[] = [];
  let first = 0;
  for (const run of course.runs) {
    const next = first + piecesInRun(run);
    const [from, to] = [Math.max(start, first), Math.min(end, next)];
    if (to > from) {
      const startsWithSlateAndAHalf = run.startsWithSlateAndAHalf && from === first;
      const endsWithSlateAndAHalf = run.endsWithSlateAndAHalf && to === next;
      const slates = to - from - Number(startsWithSlateAndAHalf) - Number(endsWithSlateAndAHalf);
      runs.push({ slates, startsWithSlateAndAHalf, endsWithSlateAndAHalf });
    }
    first = next;
  }
  return { ...course, runs };
}
