import type { PlannedCourse } from '$lib/engine/courses';

/** Courses one above the other that are laid from one pile, both ends included. */
export interface PileRun {
  readonly pile: number;
  readonly from: number;
  readonly to: number;
}

/** Slopes on which the piles change at the same courses, or one course off. */
export interface SlopesAlike {
  readonly slopeIds: readonly string[];
  readonly runs: readonly PileRun[];
}

/**
 * Which pile goes where on one slope, from the eaves up. A course laid from two piles ends the run of
 * the one and begins the run of the other.
 *
 * @param courses the planned courses of the slope by rising number; not modified
 * @example courses 1–3 of pile 1, 4 of piles 1 and 2, 5–6 of pile 2 → 1: 1–4, 2: 4–6
 */
export function pileRuns(courses: readonly Pick<PlannedCourse, 'course' | 'parts'>[]): PileRun[] {
  const runs: { pile: number; from: number; to: number }[] = [];
  for (const { course, parts } of courses)
    for (const { pile } of parts) {
      const last = runs.at(-1);
      if (last?.pile === pile) last.to = course;
      else runs.push({ pile, from: course, to: course });
    }
  return runs;
}

/**
 * The runs of every slope, in the order of the slopes. Slopes that change pile at the same courses, or
 * one course off, are taken together with runs that cover them all: where a pile gives out within one
 * height, one slope still takes it and the other no more.
 */
export function slopesByRuns(
  slopeIds: readonly string[],
  courses: readonly PlannedCourse[]
): SlopesAlike[] {
  const groups: { slopeIds: string[]; runs: PileRun[] }[] = [];
  for (const slopeId of slopeIds) {
    const own = courses
      .filter((course) => course.slopeId === slopeId)
      .toSorted((one, other) => one.course - other.course);
    const runs = pileRuns(own);
    const alike = groups.find((group) => areAlike(group.runs, runs));
    if (alike) {
      alike.slopeIds.push(slopeId);
      alike.runs = alike.runs.map(({ pile, from, to }, index) => ({
        pile,
        from: Math.min(from, runs[index].from),
        to: Math.max(to, runs[index].to)
      }));
    } else groups.push({ slopeIds: [slopeId], runs });
  }
  return groups;
}

function areAlike(some: readonly PileRun[], others: readonly PileRun[]): boolean {
  const isNear = (one: number, other: number): boolean => Math.abs(one - other) <= 1;
  return (
    some.length === others.length &&
    some.every(
      ({ pile, from, to }, index) =>
        pile === others[index].pile &&
        isNear(from, others[index].from) &&
        isNear(to, others[index].to)
    )
  );
}
