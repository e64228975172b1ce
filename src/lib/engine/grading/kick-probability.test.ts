import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { kickProbabilityBetween, kickProbabilityWithin } from './kick-probability.ts';

const none = binsFromPairs([]);

describe('kickProbabilityWithin', () => {
  it('is 0 where there is no joint: no slate, one slate', () => {
    expect(kickProbabilityWithin(none, 1.5)).toBe(0);
    expect(kickProbabilityWithin(binsFromPairs([[500, 1]]), 0)).toBe(0);
  });

  it('is 0 for slates of one thickness, even with no allowance', () => {
    expect(kickProbabilityWithin(binsFromPairs([[500, 9]]), 0)).toBe(0);
  });

  it('counts distinct pairs: 2 at 5 mm and 2 at 7 mm, 8 of 12 ordered pairs kick', () => {
    const bins = binsFromPairs([
      [500, 2],
      [700, 2]
    ]);
    expect(kickProbabilityWithin(bins, 1.5)).toBeCloseTo(8 / 12, 15);
  });

  it.each([
    [1.49, 1],
    [1.5, 0],
    [1.51, 0]
  ])('a step of 1.5 mm with an allowance of %d mm: %d', (allowanceMm, chance) => {
    const bins = binsFromPairs([
      [500, 1],
      [650, 1]
    ]);
    expect(kickProbabilityWithin(bins, allowanceMm)).toBe(chance);
  });

  it('never passes 1 with fractional counts', () => {
    const bins = binsFromPairs([
      [500, 0.6],
      [900, 0.6]
    ]);
    expect(kickProbabilityWithin(bins, 1.5)).toBe(1);
  });

  it('refuses a negative allowance and one that is not a number', () => {
    const bins = binsFromPairs([[500, 2]]);
    expect(() => kickProbabilityWithin(bins, -0.1)).toThrow(/out-of-range/);
    expect(() => kickProbabilityWithin(bins, Number.NaN)).toThrow(/not-finite/);
  });
});

describe('kickProbabilityBetween', () => {
  it('is 0 where one pile is empty', () => {
    expect(kickProbabilityBetween(none, binsFromPairs([[500, 3]]), 1.5)).toBe(0);
  });

  it('counts pairs across the piles, either way round', () => {
    const thick = binsFromPairs([
      [700, 1],
      [660, 1]
    ]);
    const thin = binsFromPairs([
      [500, 2],
      [515, 1]
    ]);
    // Only 7.00 and 6.60 against 5.00, and 7.00 against 5.15, step by more than 1.5 mm: 5 of 6.
    expect(kickProbabilityBetween(thick, thin, 1.5)).toBeCloseTo(5 / 6, 15);
    expect(kickProbabilityBetween(thin, thick, 1.5)).toBeCloseTo(5 / 6, 15);
  });

  it('works where the piles overlap', () => {
    const wide = binsFromPairs([
      [400, 1],
      [800, 1]
    ]);
    expect(kickProbabilityBetween(wide, binsFromPairs([[600, 1]]), 1.5)).toBe(1);
  });
});
