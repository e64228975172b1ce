import { type HistogramBar, type ThicknessBins, binsFromPairs } from '$lib/engine/thickness';
import type { OfferedSlate } from '$lib/job';

/** The thickness of the slates that judge, as bins. */
export function sampleBins(offered: readonly OfferedSlate[]): ThicknessBins {
  return binsFromPairs(
    offered.flatMap(({ standing, thicknessMm }): [number, number][] =>
      standing === 'judges' && thicknessMm !== undefined ? [[Math.round(thicknessMm * 100), 1]] : []
    )
  );
}

/** Widths of a bar, hundredths of a millimetre, and the most bars that stay readable. Ours. */
const BAR_WIDTHS = [20, 25, 50, 100];
const MOST_BARS = 24;

/**
 * The sample as bars of one round width. Narrower than the usual rule for a histogram, so that a
 * slate just beyond what was ordered does not hide in a bar with slates that are inside. A slate on
 * an edge counts in the thicker bar.
 */
export function barsOf({ hundredths, counts }: ThicknessBins): HistogramBar[] {
  if (hundredths.length === 0) return [];
  const bar = (value: number, width: number): number => Math.floor(value / width);
  const last = hundredths[hundredths.length - 1];
  const number = (width: number): number => bar(last, width) - bar(hundredths[0], width) + 1;
  const width = BAR_WIDTHS.find((candidate) => number(candidate) <= MOST_BARS) ?? 200;
  const first = bar(hundredths[0], width);
  const heights = new Array<number>(number(width)).fill(0);
  for (const [index, value] of hundredths.entries())
    heights[bar(value, width) - first] += counts[index];
  return heights.map((count, index) => ({
    fromMm: ((first + index) * width) / 100,
    toMm: ((first + index + 1) * width) / 100,
    count
  }));
}
