import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '$lib/engine/thickness';
import { outlineOf, stockBars } from './grades-picture.ts';

const bins = binsFromPairs([
  [512, 3],
  [540, 2],
  [587, 5]
]);

describe('the bars', () => {
  it('are none for no readings', () => {
    expect(stockBars(binsFromPairs([]), 100)).toEqual([]);
  });

  it('hold the whole stock, with an empty bar on either side', () => {
    const bars = stockBars(bins, 200);
    expect(bars.reduce((sum, { slates }) => sum + slates, 0)).toBeCloseTo(200, 9);
    expect(bars[0].slates).toBe(0);
    expect(bars.at(-1)?.slates).toBe(0);
    for (const [index, bar] of bars.slice(1).entries()) expect(bar.fromMm).toBe(bars[index].toMm);
  });

  it('outline one pallet as if the stock were like it', () => {
    const bars = stockBars(bins, 200);
    const outline = outlineOf(bars, binsFromPairs([[512, 1]]), 200);
    const place = bars.findIndex(({ fromMm, toMm }) => fromMm <= 5.12 && 5.12 < toMm);
    expect(outline[place]).toBe(200);
    expect(outline.reduce((sum, slates) => sum + slates, 0)).toBe(200);
    expect(outlineOf(bars, binsFromPairs([]), 200)).toEqual([]);
  });
});
