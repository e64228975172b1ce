import { describe, expect, it } from 'vitest';
import { pileRows } from './pile-rows.ts';

const use = (pile: number, slates: number) => ({
  ...{ pile, slates, slateAndAHalves: 0, spareSlates: 0, spareSlateAndAHalves: 0 }
});
const stock = (slates: number, reservedSlates: number) => ({
  ...{ slates, reservedSlates, slateAndAHalves: 0, reservedSlateAndAHalves: 0 }
});

describe('pileRows', () => {
  it('has nothing of no pile', () => {
    expect(pileRows([], [])).toEqual([]);
  });

  it('adds up to what the pile has, with and without a chance to hold', () => {
    const [uses, stocks] = [[use(1, 399)], [stock(491, 35)]];
    expect(pileRows(uses, stocks)).toEqual([
      { pile: 1, leftOver: 57, lays: 399, keptBack: 35, keptForChance: 0, has: 491 }
    ]);
    expect(pileRows(uses, stocks, [21])).toEqual([
      { pile: 1, leftOver: 36, lays: 399, keptBack: 56, keptForChance: 21, has: 491 }
    ]);
  });

  it('leaves nothing over, and never less than nothing, where a pile is short', () => {
    expect(
      pileRows([use(1, 480), use(2, 500)], [stock(491, 35), stock(491, 35)], [21, 21])
    ).toEqual([
      { pile: 1, leftOver: 0, lays: 480, keptBack: 11, keptForChance: 0, has: 491 },
      { pile: 2, leftOver: 0, lays: 500, keptBack: 0, keptForChance: 0, has: 491 }
    ]);
  });
});
