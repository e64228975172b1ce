import type { JobView } from '$lib/journal';
import { type PileLeft, pilesLeft, planRequestOf, roofLayoutOf } from '$lib/job';

/** What the roof as it is drawn now says of a job on which laying has begun. */
export interface SinceLaying {
  /** How many courses the roof has; undefined where it cannot be laid out. */
  readonly roofCourses?: number;
  /** What is left of the piles; undefined where the roof no longer tells it. */
  readonly left?: readonly PileLeft[];
}

/** Fetched when laying has begun: before, a job opens without the rules of the roof. */
export function sinceLaying(view: JobView): SinceLaying {
  const roof = roofLayoutOf(view);
  const ground = planRequestOf(view);
  return {
    roofCourses: roof.ok ? roof.demand.length : undefined,
    left: ground.ok ? pilesLeft(ground) : undefined
  };
}

// In one file with it: each file more that a page may fetch lengthens the page's own scripts.
export { pilesAhead } from './piles-ahead.ts';
