import { describe, expect, it } from 'vitest';
import { binsFromPairs } from './bins.ts';
import { histogram } from './histogram.ts';

describe('histogram', () => {
  it('has no bars without slates', () => {
    expect(histogram(binsFromPairs([])).bars).toEqual([]);
  });

  it('refuses fewer than one bar', () => {
    expect(() => histogram(binsFromPairs([[500, 1]]), 0)).toThrow(/out-of-range/);
    expect(() => histogram(binsFromPairs([[500, 1]]), 1.5)).toThrow(/not-whole/);
  });

  it('draws one slate as one bar', () => {
    expect(histogram(binsFromPairs([[512, 1]]))).toEqual({
      widthMm: 0.01,
      bars: [{ fromMm: 5.12, toMm: 5.13, count: 1 }]
    });
  });

  it('widens until the bars fit, on round edges', () => {
    const bins = binsFromPairs([
      [512, 3],
      [587, 1]
    ]);
    expect(histogram(bins, 2)).toEqual({
      widthMm: 0.5,
      bars: [
        { fromMm: 5, toMm: 5.5, count: 3 },
        { fromMm: 5.5, toMm: 6, count: 1 }
      ]
    });
  });

  it('puts a slate on an edge in the thicker bar', () => {
    const bins = binsFromPairs([
      [599, 1],
      [600, 1]
    ]);
    expect(histogram(bins, 2).bars.map((bar) => bar.count)).toEqual([1, 1]);
  });

  it('takes the width of Freedman and Diaconis, rounded up to a round one', () => {
    // 1,000 slates evenly from 5.00 to 5.99 mm: IQR 0.5, so 2 · 0.5 / 10 = 0.1 mm
    const bins = binsFromPairs(Array.from({ length: 100 }, (_, step) => [500 + step, 10]));
    const shown = histogram(bins);
    expect(shown.widthMm).toBe(0.1);
    expect(shown.bars.map((bar) => bar.count)).toEqual(new Array(10).fill(100));
  });

  it('shows all slates in one bar where one is all there may be', () => {
    const bins = binsFromPairs([
      [150, 1],
      [4000, 2]
    ]);
    expect(histogram(bins, 1).bars.map((bar) => bar.count)).toEqual([3]);
  });
});
