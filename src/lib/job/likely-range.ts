import { type ThicknessBins, quantilesMm, totalCount } from '$lib/engine/thickness';
import type { JobView } from '$lib/journal';
import { readingsOf } from './queries.ts';
import type { ThicknessRange } from './slate-judgement.ts';

/** Fewest readings that tell what a number without a point means. Ours. */
const ENOUGH_READINGS = 5;
/** Room for a slate beyond those measured so far. Ours. */
const ROOM = 1.5;

/**
 * What a slate of the job may well measure: from the 5th percentile of every reading so far to the
 * 95th, and half as much again on both sides.
 *
 * @returns undefined while fewer than five slates were measured
 * @example readings of 4 to 9 mm → about 3 to 13 mm
 */
export function likelyRangeOf(view: JobView): ThicknessRange | undefined {
  return likelyRangeOfBins(readingsOf(view));
}

/** The same, of given readings. */
export function likelyRangeOfBins(bins: ThicknessBins): ThicknessRange | undefined {
  if (totalCount(bins) < ENOUGH_READINGS) return undefined;
  const told = quantilesMm(bins, [0.05, 0.95]);
  if (!told.ok) return undefined;
  return { lowMm: told.quantilesMm[0] / ROOM, highMm: told.quantilesMm[1] * ROOM };
}
