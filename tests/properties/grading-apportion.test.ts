import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestRemainder } from '$lib/engine/grading';

const SEED = 20_260_701;
const wholeWeights = fc
  .array(fc.integer({ min: 0, max: 100_000 }), { minLength: 1, maxLength: 12 })
  .filter((weights) => weights.some((weight) => weight > 0));
const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0);

describe('largestRemainder', () => {
  it('sums exactly and stays within one unit of the quota', () => {
    fc.assert(
      fc.property(wholeWeights, fc.integer({ min: 0, max: 50_000 }), (weights, total) => {
        const parts = largestRemainder(weights, total);
        expect(sumOf(parts)).toBe(total);
        for (const [index, part] of parts.entries()) {
          const quota = BigInt(weights[index]) * BigInt(total);
          const sum = BigInt(sumOf(weights));
          expect(BigInt(part) >= quota / sum).toBe(true);
          expect(BigInt(part) <= (quota + sum - 1n) / sum).toBe(true);
        }
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  it('sums exactly for fractional weights', () => {
    const weights = fc
      .array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 12 })
      .filter((candidates) => candidates.some((weight) => weight > 1e-6));
    fc.assert(
      fc.property(weights, fc.integer({ min: 0, max: 50_000 }), (candidates, total) => {
        expect(sumOf(largestRemainder(candidates, total))).toBe(total);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  it('keeps every cap and still sums exactly, whenever the caps leave room', () => {
    const parts = fc.array(
      fc.record({ weight: fc.integer({ min: 1, max: 500 }), cap: fc.integer({ min: 0, max: 60 }) }),
      { minLength: 1, maxLength: 8 }
    );
    fc.assert(
      fc.property(parts, fc.double({ min: 0, max: 1, noNaN: true }), (candidates, fill) => {
        const caps = candidates.map(({ cap }) => cap);
        const total = Math.floor(fill * sumOf(caps));
        const shares = largestRemainder(
          candidates.map(({ weight }) => weight),
          total,
          caps
        );
        expect(sumOf(shares)).toBe(total);
        for (const [index, share] of shares.entries()) {
          expect(share).toBeGreaterThanOrEqual(0);
          expect(share).toBeLessThanOrEqual(caps[index]);
        }
      }),
      { seed: SEED, numRuns: 1000 }
    );
  });

  it('is the same when all weights are scaled by a whole number', () => {
    fc.assert(
      fc.property(
        wholeWeights,
        fc.integer({ min: 0, max: 5000 }),
        fc.integer({ min: 2, max: 50 }),
        (weights, total, scale) => {
          const scaled = weights.map((weight) => weight * scale);
          expect(largestRemainder(scaled, total)).toEqual(largestRemainder(weights, total));
        }
      ),
      { seed: SEED, numRuns: 300 }
    );
  });
});
