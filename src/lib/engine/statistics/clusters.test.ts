import { describe, expect, it } from 'vitest';
import { type Cluster, twoStageMean } from './clusters.ts';

const cluster = (size: number, sampled: number, mean: number, variance: number | null): Cluster =>
  Object.freeze({ size, sampled, mean, variance });

describe('twoStageMean', () => {
  it('says what is missing when nothing was gauged', () => {
    expect(twoStageMean([], [], 0.95)).toEqual({
      ok: false,
      reason: 'nothing-gauged',
      missing: { pallets: 0, slates: 2 }
    });
    expect(twoStageMean([], [100], 0.95)).toMatchObject({ missing: { pallets: 1, slates: 2 } });
    expect(twoStageMean([], [100, 90, 80], 0.95)).toMatchObject({
      missing: { pallets: 2, slates: 3 }
    });
  });

  it('says what is missing when one pallet of many was opened', () => {
    expect(twoStageMean([cluster(100, 10, 6, 0.5)], [100], 0.95)).toEqual({
      ok: false,
      reason: 'one-pallet-of-many',
      missing: { pallets: 1, slates: 1 }
    });
  });

  it('says what is missing when no pallet has two gauged slates', () => {
    expect(twoStageMean([cluster(100, 1, 6, null)], [], 0.95)).toEqual({
      ok: false,
      reason: 'one-slate-a-pallet',
      missing: { pallets: 0, slates: 1 }
    });
    expect(
      twoStageMean([cluster(100, 1, 6, null), cluster(100, 1, 7, null)], [], 0.95)
    ).toMatchObject({ reason: 'one-slate-a-pallet' });
  });

  it('refuses figures that cannot be', () => {
    const one = cluster(100, 10, 6, 0.5);
    expect(() => twoStageMean([one], [], 1)).toThrow(/out-of-range/);
    expect(() => twoStageMean([one], [0], 0.9)).toThrow(/out-of-range/);
    expect(() => twoStageMean([cluster(5, 6, 6, 1)], [], 0.9)).toThrow(/out-of-range/);
    expect(() => twoStageMean([cluster(5, 2, 6, null)], [], 0.9)).toThrow(/inconsistent/);
    expect(() => twoStageMean([cluster(5, 2, 6, -1)], [], 0.9)).toThrow(/inconsistent/);
    expect(() => twoStageMean([cluster(5.5, 2, 6, 1)], [], 0.9)).toThrow(/not-whole/);
  });

  it('is exact where every slate was gauged', () => {
    const result = twoStageMean([cluster(2, 2, 6, 0.5), cluster(1, 1, 9, null)], [], 0.95);
    expect(result).toMatchObject({ estimate: 7, standardError: 0, low: 7, high: 7 });
  });

  it('is a simple random sample on one pallet: SE² = s²/m · (1 − m/M)', () => {
    const result = twoStageMean([cluster(100, 10, 6.2, 0.64)], [], 0.95);
    expect(result).toMatchObject({
      estimate: 6.2,
      standardError: expect.closeTo(0.24, 14),
      degreesOfFreedom: expect.closeTo(9, 12),
      high: expect.closeTo(6.2 + 0.24 * 2.262157162798205, 12) // t at 0.975 with 9
    });
  });

  it('agrees with the two-stage formula worked by hand', () => {
    // 2 of 4 pallets of 100 slates, 10 gauged of each, means 6 and 7, variance 1 in both:
    // between (1 − 1/2) · 0.5 / 2 = 0.125, within 2 · 0.9 · 1 / 10 / (2 · 4) = 0.0225
    const result = twoStageMean(
      [cluster(100, 10, 6, 1), cluster(100, 10, 7, 1)],
      Object.freeze([100, 100]),
      0.95
    );
    expect(result).toMatchObject({
      estimate: 6.5,
      standardError: expect.closeTo(Math.sqrt(0.1475), 13),
      // Satterthwaite: 0.1475² / (0.125²/1 + 2 · 0.01125²/9)
      degreesOfFreedom: expect.closeTo(0.1475 ** 2 / (0.125 ** 2 + (2 * 0.01125 ** 2) / 9), 10)
    });
  });

  it('lends a pallet of one gauged slate the variance of the others', () => {
    const lent = twoStageMean([cluster(100, 10, 6, 1), cluster(100, 1, 6, null)], [], 0.95);
    // (0.9 · 1/10 + 0.99 · 1/1) / 4
    expect(lent).toMatchObject({ standardError: expect.closeTo(Math.sqrt(1.08 / 4), 13) });
  });
});
