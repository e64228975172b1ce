import { quantilesMm, totalCount } from '$lib/engine/thickness';
import type { JobView } from '$lib/journal';
import { readingsOf } from './queries.ts';
import type { ThicknessRange } from './slate-judgement.ts';

/** Fewest readings from which the usual range is told. Ours. */
const ENOUGH_READINGS = 30;

/**
 * What nearly all slates of a job measure: the 1st to the 99th percentile of every reading so far.
 *
 * Told anew only when the readings have grown by a tenth, so that a slate being sorted does not pay
 * for the readings before it.
 */
export class UsualRange {
  #told: ThicknessRange | undefined;
  #atEntries = 0;

  /**
   * @param entries events of the job so far, from which it is seen that readings have grown
   * @returns undefined while fewer than thirty slates were gauged
   */
  at(view: JobView, entries: number): ThicknessRange | undefined {
    const isStale = entries < this.#atEntries || entries > this.#atEntries * 1.1;
    if (this.#told && !isStale) return this.#told;
    this.#atEntries = entries;
    this.#told = usualRangeOf(view);
    return this.#told;
  }
}

function usualRangeOf(view: JobView): ThicknessRange | undefined {
  const bins = readingsOf(view);
  if (totalCount(bins) < ENOUGH_READINGS) return undefined;
  const told = quantilesMm(bins, [0.01, 0.99]);
  return told.ok ? { lowMm: told.quantilesMm[0], highMm: told.quantilesMm[1] } : undefined;
}
