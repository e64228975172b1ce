import { type Histogram, type ThicknessBins, histogram, totalCount } from '$lib/engine/thickness';

/** A bar of the spread in slates of the stock. */
export interface StockBar {
  readonly fromMm: number;
  readonly toMm: number;
  readonly slates: number;
  readonly low?: number;
  readonly high?: number;
}

/** Most bars on the screen. */
const MOST_BARS = 60;

/** The spread as bars, scaled from the sample to the stock. */
export function stockBars(bins: ThicknessBins, stockSlates: number): StockBar[] {
  const sampled = totalCount(bins);
  const scale = sampled > 0 ? stockSlates / sampled : 0;
  return widened(histogram(bins, MOST_BARS)).map(({ fromMm, toMm, count }) => ({
    fromMm,
    toMm,
    slates: count * scale
  }));
}

/** Slates by bar if the whole stock were like one pallet. */
export function outlineOf(
  bars: readonly StockBar[],
  bins: ThicknessBins,
  stockSlates: number
): number[] {
  const sampled = totalCount(bins);
  if (sampled === 0) return [];
  return bars.map(({ fromMm, toMm }) => {
    let slates = 0;
    for (const [bin, hundredths] of bins.hundredths.entries())
      if (hundredths >= Math.round(fromMm * 100) && hundredths < Math.round(toMm * 100))
        slates += bins.counts[bin];
    return (slates * stockSlates) / sampled;
  });
}

/** Bars with an empty one on either side, so that the outer slates do not stick to the frame. */
function widened({ widthMm, bars }: Histogram): Histogram['bars'] {
  const [first, last] = [bars[0], bars.at(-1)];
  if (!first || !last) return [];
  const empty = (fromMm: number) => ({
    fromMm: Math.round(fromMm * 100) / 100,
    toMm: Math.round((fromMm + widthMm) * 100) / 100,
    count: 0
  });
  return [empty(first.fromMm - widthMm), ...bars, empty(last.toMm)];
}
