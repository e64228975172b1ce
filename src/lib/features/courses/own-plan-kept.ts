import type { CoursePart } from '$lib/engine/courses';
import type { OwnParts } from '$lib/job';

/** An own plan that was begun and is not in use yet. */
export interface KeptOwnPlan {
  /** The numbers of the piles that its places stand for. */
  readonly numbers: readonly number[];
  /** Courses to lay that the plan it began with leaves out. */
  readonly leftOut: readonly string[];
  readonly parts: OwnParts;
  /** What it was before the first step. */
  readonly begunAs: OwnParts;
}

/** What a browser keeps for one tab until it is closed. */
type SessionStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const keyOf = (jobId: string): string => `evencourse.own-plan.${jobId}`;

/**
 * Keeps an own plan of a job until the tab is closed, so that a look at another screen or a reload loses
 * no step; undefined forgets it. A browser without room or leave keeps nothing.
 */
export function keepOwnPlan(
  jobId: string,
  plan: KeptOwnPlan | undefined,
  store?: SessionStore
): void {
  try {
    const session = store ?? sessionStorage;
    if (!plan) return session.removeItem(keyOf(jobId));
    const { parts, begunAs, ...rest } = plan;
    const kept = { ...rest, parts: [...parts], begunAs: [...begunAs] };
    session.setItem(keyOf(jobId), JSON.stringify(kept));
  } catch {
    // The plan is still on the screen.
  }
}

/** The own plan kept for a job; undefined where there is none, or what was kept is none. */
export function keptOwnPlan(jobId: string, store?: SessionStore): KeptOwnPlan | undefined {
  try {
    const text = (store ?? sessionStorage).getItem(keyOf(jobId));
    if (text === null) return undefined;
    const { numbers, leftOut, parts, begunAs } = JSON.parse(text);
    const isWhole = [numbers, leftOut].every(Array.isArray) && [parts, begunAs].every(areParts);
    return isWhole
      ? { numbers, leftOut, parts: new Map(parts), begunAs: new Map(begunAs) }
      : undefined;
  } catch {
    return undefined;
  }
}

function areParts(value: unknown): value is [string, CoursePart[]][] {
  return (
    Array.isArray(value) &&
    value.every(
      (entry) =>
        Array.isArray(entry) &&
        typeof entry[0] === 'string' &&
        Array.isArray(entry[1]) &&
        entry[1].every((part) =>
          [part?.pile, part?.slates, part?.slateAndAHalves].every(Number.isInteger)
        )
    )
  );
}
