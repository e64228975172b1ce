import { describe, expect, it } from 'vitest';
import { binsFromPairs, totalCount } from '../../thickness/index.ts';
import { misgradedPiles, pileChances } from '../misgraded-piles.ts';
import { combinedSdMm, normalMisgrading } from './normal-misgrading.ts';
import { splitIntoPiles } from '../piles.ts';

describe('combinedSdMm', () => {
  it('adds independent spreads by their squares', () => {
    expect(combinedSdMm()).toBe(0);
    expect(combinedSdMm(0.3)).toBe(0.3);
    expect(combinedSdMm(0.3, 0.4)).toBeCloseTo(0.5, 15);
  });

  it('refuses a negative spread', () => {
    expect(() => combinedSdMm(0.3, -0.1)).toThrow(/out-of-range/);
    expect(() => normalMisgrading(Number.NaN)).toThrow(/not-finite/);
  });
});

describe('normalMisgrading', () => {
  it('is even at the edge of the last hundredth below the threshold', () => {
    expect(normalMisgrading(0.3)(6, 6.005)).toBeCloseTo(0.5, 15);
  });

  it('is the normal distribution function of the distance (.97725 at two SD, standard table)', () => {
    expect(normalMisgrading(0.25)(6.495, 6)).toBeCloseTo(0.97725, 5);
    expect(normalMisgrading(0.25)(5.495, 6)).toBeCloseTo(0.02275, 5);
  });

  it.each([0, 1e-6])('with spread %d is the sharp rule, ties to the thicker side', (sdMm) => {
    const chanceAbove = normalMisgrading(sdMm);
    expect(chanceAbove(6, 6)).toBe(1);
    expect(chanceAbove(5.7 + 0.1 + 0.2, 6)).toBe(1);
    expect(chanceAbove(5.99, 6)).toBe(0);
  });
});

describe('misgraded piles', () => {
  const bins = binsFromPairs([
    [480, 3],
    [520, 4],
    [610, 5]
  ]);

  it('chances of a slate sum to one', () => {
    const chances = pileChances(5.2, [6, 5], normalMisgrading(0.4));
    expect(chances).toHaveLength(3);
    expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 15);
    expect(pileChances(5.2, [], normalMisgrading(0.4))).toEqual([1]);
  });

  it('hold the sharp piles when there is no spread', () => {
    expect(misgradedPiles(bins, [6, 5], normalMisgrading(0))).toEqual(splitIntoPiles(bins, [6, 5]));
  });

  it('hold each bin by its chances', () => {
    const chanceAbove = normalMisgrading(0.4);
    const piles = misgradedPiles(bins, [6, 5], chanceAbove);
    const chances = pileChances(5.2, [6, 5], chanceAbove);
    for (const [pile, spread] of piles.entries())
      expect(spread.counts[spread.hundredths.indexOf(520)]).toBeCloseTo(4 * chances[pile], 14);
    expect(piles.reduce((sum, spread) => sum + totalCount(spread), 0)).toBeCloseTo(12, 13);
  });

  it('are empty for no slates', () => {
    const piles = misgradedPiles(binsFromPairs([]), [6], normalMisgrading(0.4));
    expect(piles.map(totalCount)).toEqual([0, 0]);
  });

  it('refuse thresholds that do not fall', () => {
    expect(() => misgradedPiles(bins, [5, 6], normalMisgrading(0.4))).toThrow(/wrong-order/);
    expect(() => pileChances(5, [5, 6], normalMisgrading(0.4))).toThrow(/wrong-order/);
  });
});
