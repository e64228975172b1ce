import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { kickWindows, pileEvenness } from './kick-windows.ts';

const bins = binsFromPairs([
  [500, 2],
  [650, 1],
  [651, 3],
  [700, 2],
  [900, 5]
]);

describe('kickWindows', () => {
  it('knows empty windows and single slates', () => {
    const nothing = { slates: 0, kickProbability: 0, meanSquaredStepMm2: 0 };
    expect(kickWindows(binsFromPairs([]), 1.5)(0, 0)).toEqual(nothing);
    expect(kickWindows(bins, 1.5)(3, 3)).toEqual(nothing);
    expect(kickWindows(bins, 1.5)(1, 2)).toEqual({ ...nothing, slates: 1 });
  });

  it('does not count a step of exactly the allowance', () => {
    const windows = kickWindows(bins, 1.5);
    expect(windows(0, 2).kickProbability).toBe(0); // 5.00 and 6.50
    expect(windows(0, 3).kickProbability).toBeCloseTo((2 * 2 * 3) / (6 * 5), 15); // 5.00 and 6.51
  });

  it('leaves out pairs with slates below the window', () => {
    const windows = kickWindows(bins, 1.5);
    // 9.00 steps above 6.50, 6.51 and 7.00 but 5.00 lies outside
    expect(windows(1, 5).kickProbability).toBeCloseTo((2 * 5 * 6) / (11 * 10), 15);
    expect(windows(3, 5).kickProbability).toBeCloseTo((2 * 5 * 2) / (7 * 6), 15);
  });

  it('means the squared step over distinct pairs', () => {
    // 5.00, 5.00 and 6.50: pairs 0, 1.5, 1.5 mm
    expect(kickWindows(bins, 1.5)(0, 2).meanSquaredStepMm2).toBeCloseTo((2 * 2.25) / 3, 14);
  });

  it('never passes 1 with fractional counts', () => {
    const part = binsFromPairs([
      [500, 0.6],
      [900, 0.6]
    ]);
    expect(pileEvenness(part, 1.5).kickProbability).toBe(1);
  });

  it('refuses a negative allowance and one that is not a number', () => {
    expect(() => kickWindows(bins, -1)).toThrow(/out-of-range/);
    expect(() => kickWindows(bins, Number.NaN)).toThrow(/not-finite/);
  });
});
