import { describe, expect, it } from 'vitest';
import { binsFromPairs } from './bins.ts';
import { countBetween, gradeIntervals } from './interval.ts';

const bins = binsFromPairs([
  [499, 1],
  [500, 2],
  [599, 4],
  [600, 8]
]);

describe('countBetween', () => {
  it('takes in the lower bound and leaves out the upper', () => {
    expect(countBetween(bins, { fromMm: 5, toMm: 6 })).toBe(6);
    expect(countBetween(bins, { fromMm: 6, toMm: Infinity })).toBe(8);
    expect(countBetween(bins, { fromMm: 0, toMm: 5 })).toBe(1);
  });

  it('counts nothing in empty bins', () => {
    expect(countBetween(binsFromPairs([]), { fromMm: 0, toMm: Infinity })).toBe(0);
  });

  it('refuses a band that is empty, runs backwards or is not a number', () => {
    expect(() => countBetween(bins, { fromMm: 6, toMm: 6 })).toThrow(/wrong-order/);
    expect(() => countBetween(bins, { fromMm: 6, toMm: 5 })).toThrow(/wrong-order/);
    expect(() => countBetween(bins, { fromMm: Number.NaN, toMm: 5 })).toThrow(/not-finite/);
  });
});

describe('gradeIntervals', () => {
  it('makes one band of no threshold, and three of two that share every slate once', () => {
    expect(gradeIntervals([])).toEqual([{ fromMm: 0, toMm: Infinity }]);
    const counts = gradeIntervals(Object.freeze([6, 5])).map((band) => countBetween(bins, band));
    expect(counts).toEqual([8, 6, 1]);
  });

  it('refuses thresholds that do not fall', () => {
    expect(() => gradeIntervals([5, 6])).toThrow(/wrong-order/);
    expect(() => gradeIntervals([6, 6])).toThrow(/wrong-order/);
    expect(() => gradeIntervals([Infinity])).toThrow(/not-finite/);
  });
});
