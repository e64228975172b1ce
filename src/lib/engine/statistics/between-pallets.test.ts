import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import {
  comparePallets,
  intraclassCorrelationAtMost,
  oneWayRandomEffects
} from './between-pallets.ts';
import type { PalletSample } from './pallet-sample.ts';

const pallet = (palletId: string, ...hundredths: number[]): PalletSample => ({
  palletId,
  slates: 100,
  bins: binsFromPairs(hundredths.map((value) => [value, 1]))
});

describe('oneWayRandomEffects', () => {
  it('needs two groups, two values in one of them, and some spread', () => {
    expect(oneWayRandomEffects([])).toEqual({ ok: false, reason: 'too-few-groups' });
    expect(oneWayRandomEffects([[5, 6], []])).toEqual({ ok: false, reason: 'too-few-groups' });
    expect(oneWayRandomEffects([[5], [6]])).toEqual({ ok: false, reason: 'one-value-a-group' });
    expect(
      oneWayRandomEffects([
        [5, 5],
        [6, 6]
      ])
    ).toEqual({ ok: false, reason: 'no-spread-within' });
  });

  it('agrees with the sums by hand: 5, 6 and 7, 8', () => {
    expect(
      oneWayRandomEffects([
        [5, 6],
        [7, 8]
      ])
    ).toMatchObject({
      squaresBetween: 4,
      squaresWithin: expect.closeTo(1, 14),
      f: expect.closeTo(8, 13),
      varianceBetween: expect.closeTo(1.75, 14),
      intraclassCorrelation: expect.closeTo(7 / 9, 14)
    });
  });

  it('clamps variance between and correlation at 0 where group means agree too well', () => {
    expect(
      oneWayRandomEffects([
        [5, 7],
        [5, 7]
      ])
    ).toMatchObject({ f: 0, pValue: 1, varianceBetween: 0, intraclassCorrelation: 0 });
  });

  it('allows for groups of unequal size: n₀ = (5 − 13/5)/1 = 2.4', () => {
    // means 6 and 9, grand 7.8: between 2·1.8² + 3·1.2² = 10.8; within 2 + 2 = 4 on 3
    expect(
      oneWayRandomEffects([
        [5, 7],
        [8, 9, 10]
      ])
    ).toMatchObject({ varianceBetween: expect.closeTo((10.8 - 4 / 3) / 2.4, 13) });
  });
});

describe('comparePallets', () => {
  it('passes over pallets that were not gauged', () => {
    const two = [pallet('a', 500, 600), pallet('b', 700, 800)];
    expect(comparePallets([...two, pallet('c')])).toEqual(comparePallets(two));
    expect(comparePallets(two)).toMatchObject({ varianceBetween: expect.closeTo(1.75, 12) });
  });
});

describe('intraclassCorrelationAtMost', () => {
  const pallets = [
    [500, 600],
    [700, 800]
  ].map((hundredths) => binsFromPairs(hundredths.map((value) => [value, 1])));

  it('is 1 where nothing tells', () => {
    expect(intraclassCorrelationAtMost([], 0.95)).toBe(1);
    expect(intraclassCorrelationAtMost([pallets[0], binsFromPairs([])], 0.95)).toBe(1);
    expect(
      intraclassCorrelationAtMost(
        pallets.map(() => binsFromPairs([[500, 9]])),
        0.9
      )
    ).toBe(1);
    const ones = [500, 600].map((value) => binsFromPairs([[value, 1]]));
    expect(intraclassCorrelationAtMost(ones, 0.95)).toBe(1);
  });

  it('is the limit that F gives: 5, 6 and 7, 8, F = 8 against that of 1 and 2', () => {
    // With 1 and 2 degrees of freedom F = t², and P(|t₂| ≤ x) = x/√(x² + 2): 0.025 at F = 0.0012508.
    const least = (2 * 0.025 ** 2) / (1 - 0.025 ** 2);
    const ratio = (8 / least - 1) / 2;
    expect(intraclassCorrelationAtMost(pallets, 0.975)).toBeCloseTo(ratio / (1 + ratio), 12);
  });

  it('is 0 where means agree better than chance would have it', () => {
    const same = [500, 600, 700].flatMap((value) => [
      binsFromPairs([
        [value, 4],
        [1200 - value, 4]
      ])
    ]);
    expect(intraclassCorrelationAtMost(same, 0.9)).toBe(0);
  });

  it('refuses a confidence that cannot be', () => {
    expect(() => intraclassCorrelationAtMost(pallets, 1)).toThrow(/out-of-range/);
  });
});
