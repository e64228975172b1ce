import { describe, expect, it } from 'vitest';
import { bestPartition } from './best-partition.ts';

const SIZES = Object.freeze([4, 1, 1, 6, 2, 2, 3]);

/** Squared distance of a run's size from a fair share of 19 ÷ 3. */
function unfairness(first: number, last: number): number {
  const size = SIZES.slice(first, last + 1).reduce((sum, one) => sum + one, 0);
  return (3 * size - 19) ** 2;
}

describe('bestPartition', () => {
  it('leaves one run whole and cuts a run for every item', () => {
    expect(bestPartition(1, 1, () => 0)).toEqual([0]);
    expect(bestPartition(7, 1, unfairness)).toEqual([0]);
    expect(bestPartition(7, 7, unfairness)).toEqual([0, 1, 2, 3, 4, 5, 6]);
  });

  it('finds the cuts that trying all of them finds', () => {
    let least = Infinity;
    for (let one = 1; one < 6; one++)
      for (let other = one + 1; other < 7; other++)
        least = Math.min(
          least,
          unfairness(0, one - 1) + unfairness(one, other - 1) + unfairness(other, 6)
        );
    const [, one, other] = bestPartition(7, 3, unfairness);
    expect(unfairness(0, one - 1) + unfairness(one, other - 1) + unfairness(other, 6)).toBe(least);
  });

  it('of equal optima begins the last run earliest', () => {
    expect(bestPartition(4, 2, () => 1)).toEqual([0, 1]);
    expect(bestPartition(5, 3, () => 1)).toEqual([0, 1, 2]);
  });

  it.each([
    [0, 1, 'out-of-range'],
    [3, 0, 'out-of-range'],
    [3, 4, 'out-of-range'],
    [3, 1.5, 'not-whole']
  ])('refuses %d items in %d runs: %s', (items, runs, code) => {
    expect(() => bestPartition(items, runs, () => 0)).toThrow(
      expect.objectContaining({ code }) as Error
    );
  });
});
