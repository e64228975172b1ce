import { describe, expect, it } from 'vitest';
import { largestRemainder } from './apportion.ts';

describe('largestRemainder', () => {
  it('gives nothing of nothing, even with no weight', () => {
    expect(largestRemainder([], 0)).toEqual([]);
    expect(largestRemainder([0, 0], 0)).toEqual([0, 0]);
  });

  it('gives all to the only part with weight', () => {
    expect(largestRemainder([0, 3, 0], 7)).toEqual([0, 7, 0]);
  });

  it('breaks ties to the lowest index', () => {
    expect(largestRemainder([1, 1, 1], 4)).toEqual([2, 1, 1]);
    expect(largestRemainder([0.1, 0.1, 0.1], 5)).toEqual([2, 2, 1]);
  });

  it('sums exactly for fractional weights', () => {
    expect(largestRemainder([0.3, 0.3, 0.4], 10)).toEqual([3, 3, 4]);
  });

  it('holds a part at its cap and shares the rest over the others', () => {
    expect(largestRemainder([8, 1, 1], 10, [4, 10, 10])).toEqual([4, 3, 3]);
    expect(largestRemainder([8, 1, 1], 10, [4, 2, Infinity])).toEqual([4, 2, 4]);
  });

  it('fills every part when the total is all that they hold', () => {
    expect(largestRemainder([5, 1, 3], 9, [2, 3, 4])).toEqual([2, 3, 4]);
  });

  it('does not pass a cap with the last unit', () => {
    expect(largestRemainder([2, 1], 2, [1, 5])).toEqual([1, 1]);
    expect(largestRemainder([1, 1, 1], 2, [0, 1, 1])).toEqual([0, 1, 1]);
  });

  it('leaves its inputs as they were', () => {
    const weights = Object.freeze([3, 2, 1]);
    const caps = Object.freeze([2, 2, 2]);
    expect(largestRemainder(weights, 5, caps)).toEqual([2, 2, 1]);
  });

  it.each([
    [[1, -1], 3, undefined, 'out-of-range'],
    [[1, Number.NaN], 3, undefined, 'not-finite'],
    [[1, 1], 2.5, undefined, 'not-whole'],
    [[1, 1], -1, undefined, 'out-of-range'],
    [[0, 0], 1, undefined, 'empty'],
    [[1, 1], 3, [1], 'wrong-length'],
    [[1, 1], 3, [1, 1.5], 'not-whole'],
    [[1, 1], 3, [1, 1], 'inconsistent'],
    [[1, 0], 3, [1, 9], 'inconsistent']
  ])('refuses weights %j, total %d, caps %j: %s', (weights, total, caps, code) => {
    expect(() => largestRemainder(weights, total, caps)).toThrow(
      expect.objectContaining({ code }) as Error
    );
  });
});
