import { describe, expect, it } from 'vitest';
import { oneSidedToleranceFactor, twoSidedToleranceFactor } from '$lib/engine/delivery';

// Two-sided: Howe's formula with √(1 + 1/n). One-sided: exact, by noncentral t. All computed.
describe('tolerance factors', () => {
  it.each([
    [43, 0.9, 0.99, 2.217316, 1.873954],
    [10, 0.95, 0.95, 3.381913, 2.910963],
    [20, 0.95, 0.95, 2.752285, 2.396002],
    [50, 0.95, 0.95, 2.378769, 2.064993],
    [100, 0.95, 0.95, 2.232803, 1.926539]
  ])('n = %i, coverage %f, confidence %f', (sampleSize, coverage, confidence, howe, oneSided) => {
    const claim = { sampleSize, coverage, confidence };
    expect(twoSidedToleranceFactor(claim)).toBeCloseTo(howe, 6);
    expect(oneSidedToleranceFactor(claim)).toBeCloseTo(oneSided, 6);
  });

  it('43 readings: Howe 2.2173159 (NIST/SEMATECH handbook 7.2.6.3, quoted)', () => {
    const factor = twoSidedToleranceFactor({ sampleSize: 43, coverage: 0.9, confidence: 0.99 });
    expect(factor).toBeCloseTo(2.2173159, 7);
    expect(97.07 - factor * 0.0268).toBeCloseTo(97.010576, 6);
    expect(97.07 + factor * 0.0268).toBeCloseTo(97.12942, 5);
    // The handbook's one-sided 1.8751896 is an approximation; the exact factor is a little less.
    const oneSided = oneSidedToleranceFactor({ sampleSize: 43, coverage: 0.9, confidence: 0.99 });
    expect(oneSided).toBeLessThan(1.8751896);
    expect(oneSided).toBeGreaterThan(1.8751896 * 0.999);
  });
});
