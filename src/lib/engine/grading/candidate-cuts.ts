import type { ThicknessBins } from '../thickness/index.ts';
import { cutsAtThresholds } from './threshold-between.ts';

/** At most this many cuts are tried: enough for one every 0.05 mm over 8 mm. */
export const MOST_CANDIDATE_CUTS = 160;

/** The finest grids in hundredths of a millimetre; coarser ones are ten times these, and so on. */
const FINEST_STEPS = [5, 10, 20];

export interface CandidateCuts {
  /** Rising bin numbers; each is the first bin of the thicker side of a possible threshold. */
  readonly cuts: readonly number[];
  /** Step of the grid in mm; null where every gap between occupied bins is a candidate. */
  readonly gridMm: number | null;
}

/**
 * Where thresholds are tried: in every gap between occupied bins if there are at most 160, else on
 * the finest of the 0.05, 0.1, 0.2, 0.5, 1 … mm grids that makes at most 160 different cuts.
 */
export function candidateCuts(bins: ThicknessBins): CandidateCuts {
  const gaps = Math.max(0, bins.hundredths.length - 1);
  if (gaps <= MOST_CANDIDATE_CUTS)
    return { cuts: Array.from({ length: gaps }, (_cut, gap) => gap + 1), gridMm: null };
  for (let scale = 1; ; scale *= 10)
    for (const finest of FINEST_STEPS) {
      const cuts = cutsOnGrid(bins, finest * scale);
      if (cuts.length <= MOST_CANDIDATE_CUTS) return { cuts, gridMm: (finest * scale) / 100 };
    }
}

/** Cuts at the multiples of a step above the thinnest slate and up to the thickest. */
function cutsOnGrid(bins: ThicknessBins, step: number): number[] {
  const lowest = bins.hundredths[0];
  const highest = bins.hundredths[bins.hundredths.length - 1];
  const linesMm: number[] = [];
  for (let line = (Math.floor(lowest / step) + 1) * step; line <= highest; line += step)
    linesMm.push(line / 100);
  return [...new Set(cutsAtThresholds(bins, linesMm))];
}
