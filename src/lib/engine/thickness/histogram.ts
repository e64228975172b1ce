import { requireWhole } from '../errors.ts';
import { type ThicknessBins, totalCount } from './bins.ts';
import { quantilesMm } from './quantiles.ts';

/** Widths a bar may have, in hundredths of a millimetre: those whose edges read well on an axis. */
const ROUND_WIDTHS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** One bar of a histogram: slates from its lower edge up to, not including, its upper edge. */
export interface HistogramBar {
  readonly fromMm: number;
  readonly toMm: number;
  readonly count: number;
}

/** Bars of one width, thinnest first, side by side without gaps (some may be empty). */
export interface Histogram {
  readonly widthMm: number;
  readonly bars: readonly HistogramBar[];
}

/**
 * Gathers a spread into bars wide enough to show its shape and few enough to read.
 *
 * @param bins slates by thickness; not modified
 * @param mostBars most bars to draw, at least 1 (40 unless given)
 * @returns bars whose edges are whole multiples of their width; no bars for empty bins. A slate on
 * an edge counts in the thicker bar, as on a threshold.
 *
 * Definition: the width is 2·IQR/∛n (Freedman and Diaconis 1981, from memory) rounded up to the
 * next of 0.01, 0.02, 0.05, 0.1 … 10 mm, and widened further until the bars fit. Every slate is
 * counted once. Cost: linear in the bins.
 *
 * @throws EngineError `not-whole` or `out-of-range` for `mostBars`
 * @example
 * histogram(binsFromPairs([[512, 3], [587, 1]]), 2); // width 0.5: 5.0–5.5 × 3, 5.5–6.0 × 1
 */
export function histogram(bins: ThicknessBins, mostBars = 40): Histogram {
  requireWhole(mostBars, 1, 'most bars');
  const quarters = quantilesMm(bins, [0.25, 0.75]);
  if (!quarters.ok) return { widthMm: ROUND_WIDTHS[0] / 100, bars: [] };
  const [lowerMm, upperMm] = quarters.quantilesMm;
  const wanted = (200 * (upperMm - lowerMm)) / Math.cbrt(totalCount(bins));
  const least = bins.hundredths[0];
  const greatest = bins.hundredths[bins.hundredths.length - 1];
  const barsAt = (width: number) => Math.floor(greatest / width) - Math.floor(least / width) + 1;
  const width =
    ROUND_WIDTHS.find((candidate) => candidate >= wanted && barsAt(candidate) <= mostBars) ??
    Math.max(ROUND_WIDTHS[ROUND_WIDTHS.length - 1], greatest + 1);

  const first = Math.floor(least / width);
  const heights = new Float64Array(barsAt(width));
  for (let bin = 0; bin < bins.hundredths.length; bin++)
    heights[Math.floor(bins.hundredths[bin] / width) - first] += bins.counts[bin];
  return {
    widthMm: width / 100,
    bars: Array.from(heights, (count, bar) => ({
      fromMm: ((first + bar) * width) / 100,
      toMm: ((first + bar + 1) * width) / 100,
      count
    }))
  };
}
