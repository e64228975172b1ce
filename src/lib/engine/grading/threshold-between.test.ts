import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { cutsAtThresholds, thresholdBetween, thresholdsAtCuts } from './threshold-between.ts';

describe('thresholdBetween', () => {
  it.each([
    [531, 589, 5.6, 'the tenth nearest the middle'],
    [510, 700, 6.1, 'of two equally near, the thicker'],
    [590, 600, 6, 'a tenth that is the thicker slate itself'],
    [600, 609, 6.05, 'a twentieth where no tenth fits'],
    [600, 610, 6.1, 'not the tenth that is the thinner slate itself'],
    [601, 604, 6.04, 'the thicker slate where nothing round fits'],
    [604, 605, 6.05, 'a gap of one hundredth'],
    [605, 606, 6.06, 'the thicker side of a round figure'],
    [594, 601, 6, 'a tenth off the middle']
  ])('between %i and %i hundredths: %d mm (%s)', (thinner, thicker, thresholdMm) => {
    expect(thresholdBetween(thinner, thicker)).toBe(thresholdMm);
  });

  it.each([
    [600, 600, 'wrong-order'],
    [601, 600, 'wrong-order'],
    [600.5, 610, 'not-whole'],
    [600, Number.NaN, 'not-whole']
  ])('refuses %d and %d: %s', (thinner, thicker, code) => {
    expect(() => thresholdBetween(thinner, thicker)).toThrow(
      expect.objectContaining({ code }) as Error
    );
  });
});

describe('cuts and thresholds', () => {
  const bins = binsFromPairs([
    [500, 1],
    [510, 2],
    [650, 1],
    [700, 1]
  ]);

  it('turn rising cuts into falling thresholds and back', () => {
    const thresholdsMm = thresholdsAtCuts(bins, [1, 2, 3]);
    expect(thresholdsMm).toEqual([6.8, 5.8, 5.1]);
    expect(cutsAtThresholds(bins, thresholdsMm)).toEqual([3, 2, 1]);
  });

  it('put a slate on a threshold, and one hundredth either side of it', () => {
    expect(cutsAtThresholds(bins, [6.51, 6.5, 6.49])).toEqual([3, 2, 2]);
    expect(cutsAtThresholds(bins, [9, 1])).toEqual([4, 0]);
  });
});
