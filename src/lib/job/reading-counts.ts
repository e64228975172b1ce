import { pileOfKey, sum } from './queries.ts';
import { type JobView, palletIds, partOf } from '$lib/journal';

/** The gauge readings of a job by what they were taken for. */
export interface ReadingCounts {
  /** Of the unsorted sample: these slates were put back on their pallets. */
  readonly inSample: number;
  /** Taken before there were grades: these slates lie on no pile. */
  readonly beforeGrades: number;
  /** Taken while sorting, under whatever grades: each slate went on to a pile. */
  readonly whileSorting: number;
  /** The three together. */
  readonly all: number;
}

/**
 * Counts the gauge readings of a job, each once. A slate set aside with no reading kept, or told by
 * hand, has none.
 *
 * @example the worked example → 100 in the sample, 325 before grades, 369 while sorting, 794 in all
 */
export function readingCounts(view: JobView): ReadingCounts {
  let inSample = 0;
  let beforeGrades = 0;
  let whileSorting = 0;
  for (const palletId of palletIds(view)) {
    const { sampled, piles } = partOf(view, `pallet:${palletId}`);
    inSample += sum(sampled);
    for (const [key, { gauged }] of Object.entries(piles))
      if (pileOfKey(key) > 0) whileSorting += sum(gauged);
      else beforeGrades += sum(gauged);
  }
  return { inSample, beforeGrades, whileSorting, all: inSample + beforeGrades + whileSorting };
}
