import { type ThicknessBins, squaresOf } from '../thickness/index.ts';
import { type PileEvenness, kickWindows, pileEvenness, softWindowChances } from './kick-windows.ts';
import type { ChanceAbove } from './misgraded-piles.ts';
import type { KickSoftness } from './soft-kick.ts';
import { thresholdBetween } from './threshold-between.ts';

/**
 * Every pile that two of the candidate cuts can bound.
 *
 * Edges run from thick to thin: edge 0 lies above the thickest slate, the last edge below the
 * thinnest, and the pile between edges `thick` < `thin` is `at(thick, thin)`.
 */
export interface WindowTable {
  readonly edges: number;
  /** Threshold at an edge that is neither the first nor the last, mm. */
  readonly thresholdsMm: readonly number[];
  readonly at: (thick: number, thin: number) => PileEvenness;
}

/**
 * Works out the evenness of every window between candidate cuts.
 *
 * @param bins the spread; not modified
 * @param cuts rising bin numbers, each the first bin of the thicker side; not modified
 * @param kickAllowanceMm the step that is still accepted, mm
 * @param chanceAbove how slates fall either side of a threshold; sharp if left out
 * @param softness how far steps scatter; not at all if left out
 *
 * Cost: constant per window if sharp; with misgrading, bins per window, and their square with softness
 * too; with softness alone that of {@link softWindowChances}.
 */
export function windowTable(
  bins: ThicknessBins,
  cuts: readonly number[],
  kickAllowanceMm: number,
  chanceAbove?: ChanceAbove,
  softness?: KickSoftness
): WindowTable {
  const binAtEdge = [bins.hundredths.length, ...[...cuts].reverse(), 0];
  const thresholdsMm = binAtEdge.map((cut, edge) =>
    edge === 0 || edge === binAtEdge.length - 1
      ? Number.NaN
      : thresholdBetween(bins.hundredths[cut - 1], bins.hundredths[cut])
  );
  const windows = kickWindows(bins, kickAllowanceMm);
  const sharp = (thick: number, thin: number) => windows(binAtEdge[thin], binAtEdge[thick]);
  const softly = (): WindowTable['at'] => {
    const chances = softWindowChances(bins, binAtEdge, kickAllowanceMm, softness!);
    return (thick, thin) => ({
      ...sharp(thick, thin),
      kickProbability: chances[thick * binAtEdge.length + thin]
    });
  };
  const at = chanceAbove
    ? misgradedWindows(bins, thresholdsMm, kickAllowanceMm, chanceAbove, softness)
    : softness
      ? softly()
      : sharp;
  return { edges: binAtEdge.length, thresholdsMm, at };
}

function misgradedWindows(
  bins: ThicknessBins,
  thresholdsMm: readonly number[],
  kickAllowanceMm: number,
  chanceAbove: ChanceAbove,
  softness: KickSoftness | undefined
): WindowTable['at'] {
  const last = thresholdsMm.length - 1;
  const atOrAbove = thresholdsMm.map((thresholdMm, edge) =>
    Float64Array.from(bins.hundredths, (hundredths) => {
      if (edge === 0) return 0;
      return edge === last ? 1 : chanceAbove(hundredths / 100, thresholdMm);
    })
  );
  const all = squaresOf(bins);
  return (thick, thin) => {
    const counts = new Float64Array(all.length);
    const squares = new Float64Array(all.length);
    for (let bin = 0; bin < all.length; bin++) {
      const chance = Math.max(0, atOrAbove[thin][bin] - atOrAbove[thick][bin]);
      counts[bin] = bins.counts[bin] * chance;
      squares[bin] = all[bin] * chance * chance;
    }
    return pileEvenness(
      { hundredths: bins.hundredths, counts, squares },
      kickAllowanceMm,
      softness
    );
  };
}
