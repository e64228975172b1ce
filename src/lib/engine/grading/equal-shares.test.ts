import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { equalShares } from './equal-shares.ts';

describe('equalShares', () => {
  it('says so when thicknesses are too few', () => {
    expect(equalShares(binsFromPairs([]), 2)).toEqual({
      ok: false,
      reason: 'too-few-thicknesses',
      distinct: 0
    });
    expect(equalShares(binsFromPairs([[500, 9]]), 2)).toMatchObject({ ok: false, distinct: 1 });
  });

  it('shares even bins evenly', () => {
    const bins = binsFromPairs(Array.from({ length: 12 }, (_pair, bin) => [400 + 10 * bin, 5]));
    expect(equalShares(bins, 4)).toEqual({
      ok: true,
      thresholdsMm: [4.9, 4.6, 4.3],
      shares: [0.25, 0.25, 0.25, 0.25]
    });
  });

  it('keeps a heavy thickness together and no pile empty', () => {
    const bins = binsFromPairs([
      [500, 1],
      [600, 97],
      [700, 1],
      [800, 1]
    ]);
    expect(equalShares(bins, 3)).toEqual({
      ok: true,
      thresholdsMm: [6.5, 5.5],
      shares: [0.02, 0.97, 0.01]
    });
  });

  it('of equal splits takes the one with the larger thick pile', () => {
    const bins = binsFromPairs([
      [500, 1],
      [600, 1],
      [700, 1]
    ]);
    expect(equalShares(bins, 2)).toMatchObject({ thresholdsMm: [5.5], shares: [2 / 3, 1 / 3] });
  });

  it('refuses no piles', () => {
    expect(() => equalShares(binsFromPairs([[500, 1]]), 0)).toThrow(/at least 1/);
  });
});
