import { describe, expect, it } from 'vitest';
import { likelyShares } from './likely-shares.ts';

const of = (hits: number[], gauged: number[], doubt?: number) =>
  likelyShares(Object.freeze(hits), Object.freeze(gauged), doubt);

describe('likelyShares', () => {
  it('knows nothing of nothing, and a half where there is doubt', () => {
    expect(of([], [])).toEqual({ shares: [], mixedIn: 9 });
    expect(of([0, 0], [0, 0]).shares).toEqual([0, 0]);
    expect(of([0, 0], [0, 0], 1).shares).toEqual([0.5, 0.5]);
  });

  it('leaves the share of a single pallet as it was seen', () => {
    expect(of([3], [12]).shares[0]).toBeCloseTo(0.25, 14);
    expect(of([0], [12]).shares).toEqual([0]);
    expect(of([12], [12]).shares[0]).toBeCloseTo(1, 14);
  });

  it('mixes nine slates of the stock in where pallets are alike', () => {
    const { shares, mixedIn } = of([3, 1], [10, 10]);
    expect(mixedIn).toBeCloseTo(9, 14);
    expect(shares[0]).toBeCloseTo((3 + 1.8) / 19, 14);
    expect(shares[1]).toBeCloseTo((1 + 1.8) / 19, 14);
  });

  it('mixes fewer in where pallets differ: one, where all lie between', () => {
    expect(of([10, 0], [10, 10]).mixedIn).toBeCloseTo(1, 14);
    // analysis of variance by hand: between 5 · 2 · 0.3² = 0.9 with 1, within 2 · 5 · 0.16 = 1.6 with 8
    const between = (0.9 - 0.2) / 5;
    expect(of([4, 1], [5, 5]).mixedIn).toBeCloseTo(0.2 / between, 12);
  });

  it('gives a pallet not opened the share of the stock, in which many slates of one count little', () => {
    // worth 100 / 10.9 and 5 / 1.4 slates
    const { shares } = of([10, 1, 0], [100, 5, 0]);
    const [one, other] = [100 / 10.9, 5 / 1.4];
    expect(shares[2]).toBeCloseTo((0.1 * one + 0.2 * other) / (one + other), 13);
  });

  it('never takes none of few for none, nor for more than the stock holds', () => {
    const { shares } = of([30, 0], [300, 5]);
    expect(shares[1]).toBeGreaterThan(0.03);
    expect(shares[1]).toBeLessThan(0.1);
  });

  it('doubts a grade that nobody saw', () => {
    const { shares } = of([0, 0], [10, 10], 1);
    const stock = 1 / (20 / 1.9 + 2);
    expect(shares[0]).toBeCloseTo((9 * stock) / 19, 13);
  });
});
