import { describe, expect, it } from 'vitest';
import { fewestForTolerance, quantileRanks } from './quantile-interval.ts';

describe('quantileRanks', () => {
  it('says how many readings would do', () => {
    // six readings: 2 · 0.5⁶ = 0.03125 ≤ 0.05; five: 0.0625
    expect(quantileRanks(5, 0.5, 0.95)).toEqual({ ok: false, reason: 'too-few', needed: 6 });
    expect(quantileRanks(6, 0.5, 0.95)).toMatchObject({ lowRank: 1, highRank: 6, level: 0.96875 });
    expect(quantileRanks(1, 0.05, 0.9)).toMatchObject({ reason: 'too-few', needed: 59 });
    expect(quantileRanks(59, 0.05, 0.9)).toMatchObject({ ok: true, lowRank: 1 });
    expect(quantileRanks(58, 0.05, 0.9)).toMatchObject({ ok: false });
  });

  it('refuses what cannot be', () => {
    expect(() => quantileRanks(0, 0.5, 0.9)).toThrow(/out-of-range/);
    expect(() => quantileRanks(2.5, 0.5, 0.9)).toThrow(/not-whole/);
    expect(() => quantileRanks(9, 1, 0.9)).toThrow(/out-of-range/);
    expect(() => quantileRanks(9, 0.5, 1)).toThrow(/out-of-range/);
  });
});

describe('fewestForTolerance', () => {
  it('refuses what cannot be', () => {
    expect(() => fewestForTolerance(1, 0.9, 'one-sided')).toThrow(/out-of-range/);
    expect(() => fewestForTolerance(0.9, 0, 'two-sided')).toThrow(/out-of-range/);
  });

  it('needs few for a small share', () => {
    expect(fewestForTolerance(0.5, 0.5, 'one-sided')).toBe(1);
    expect(fewestForTolerance(0.5, 0.5, 'two-sided')).toBe(3); // 1 − 3/4 + 2/8 = 1/2
  });
});
