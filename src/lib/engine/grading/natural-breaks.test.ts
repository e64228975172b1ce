import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { naturalBreaks, naturalClasses } from './natural-breaks.ts';

describe('naturalClasses', () => {
  it('says how many thicknesses there are when they are too few', () => {
    const tooFew = (distinct: number) => ({ ok: false, reason: 'too-few-thicknesses', distinct });
    expect(naturalClasses([], [], 1)).toEqual(tooFew(0));
    expect(naturalClasses([5, 6], [1000, 1000], 3)).toEqual(tooFew(2));
  });

  it('fits one value perfectly', () => {
    expect(naturalClasses([5], [3], 1)).toEqual({
      ok: true,
      classes: [{ first: 0, last: 0, weight: 3, mean: 5, sumOfSquares: 0 }],
      withinSumOfSquares: 0,
      goodnessOfFit: 1
    });
  });

  it('gives every value its own class when it may', () => {
    const result = naturalClasses([1, 5, 9], [2, 1, 4], 3);
    expect(result).toMatchObject({ ok: true, withinSumOfSquares: 0, goodnessOfFit: 1 });
  });

  it('keeps its digits at a large offset', () => {
    const offset = 1e9;
    const values = Object.freeze([offset, offset + 0.25, offset + 4, offset + 4.5]);
    const result = naturalClasses(values, Object.freeze([1, 1, 1, 1]), 2);
    expect(result.ok && result.withinSumOfSquares).toBe(0.03125 + 0.125);
  });

  it.each([
    [[1, 1], [1, 1], 1, 'wrong-order'],
    [[2, 1], [1, 1], 1, 'wrong-order'],
    [[1, 2], [1], 1, 'wrong-length'],
    [[1, 2], [1, 0], 1, 'out-of-range'],
    [[1, Number.NaN], [1, 1], 1, 'not-finite'],
    [[1, 2], [1, Infinity], 1, 'not-finite'],
    [[1, 2], [1, 1], 0, 'out-of-range'],
    [[1, 2], [1, 1], 1.5, 'not-whole']
  ])('refuses values %j, weights %j, %d classes: %s', (values, weights, count, code) => {
    expect(() => naturalClasses(values, weights, count)).toThrow(
      expect.objectContaining({ code }) as Error
    );
  });
});

describe('naturalBreaks', () => {
  it('puts the threshold at a round figure in the gap', () => {
    const bins = binsFromPairs([
      [500, 3],
      [510, 2],
      [700, 4]
    ]);
    const result = naturalBreaks(bins, 2);
    expect(result).toMatchObject({ ok: true, thresholdsMm: [6.1] });
    expect(result.ok && result.withinSumOfSquares).toBeCloseTo(0.012, 14); // 6/5 × 0.1²
  });

  it('has no threshold for a single pile', () => {
    expect(naturalBreaks(binsFromPairs([[500, 1]]), 1)).toMatchObject({ thresholdsMm: [] });
  });

  it('has none for no slates', () => {
    expect(naturalBreaks(binsFromPairs([]), 2)).toMatchObject({ ok: false, distinct: 0 });
  });
});
