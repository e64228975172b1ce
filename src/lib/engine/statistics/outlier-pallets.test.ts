import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { outlierPallets } from './outlier-pallets.ts';
import type { PalletSample } from './pallet-sample.ts';

const pallet = (palletId: string, ...hundredths: number[]): PalletSample => ({
  palletId,
  slates: 100_000,
  bins: binsFromPairs(hundredths.map((value) => [value, 1]))
});
const namesOf = (pallets: readonly PalletSample[]): string[] => {
  const result = outlierPallets(pallets);
  if (!result.ok) throw new Error(result.reason);
  return result.odd.map(({ palletId }) => palletId);
};

describe('outlierPallets', () => {
  const usual = [490, 500, 510, 495, 505];
  const thick = usual.map((value) => value + 80);
  const thin = usual.map((value) => value - 120);
  const three = ['a', 'b', 'c'].map((name) => pallet(name, ...usual));

  it('says when it cannot compare, and refuses a confidence that cannot be', () => {
    expect(outlierPallets([pallet('a', 500)])).toEqual({ ok: false, reason: 'too-few-groups' });
    expect(() => outlierPallets([], 1)).toThrow(/out-of-range/);
  });

  it('names nobody where pallets are alike', () => {
    expect(namesOf([...three, pallet('d', ...usual)])).toEqual([]);
  });

  it('of two pallets names neither, for either may be the odd one', () => {
    expect(namesOf([pallet('a', ...usual), pallet('b', ...thick)])).toEqual([]);
  });

  it('names the thick pallet and not those it makes look thin', () => {
    const result = outlierPallets([...three, pallet('thick', ...thick)]);
    expect(result).toMatchObject({
      ok: true,
      odd: [{ palletId: 'thick', differenceMm: expect.closeTo(0.8, 12) }]
    });
    if (result.ok) expect(result.odd.length).toBe(1);
  });

  it('names the furthest first, each by its difference from the pallets that are not odd', () => {
    expect(
      outlierPallets([pallet('thick', ...thick), ...three, pallet('thin', ...thin)])
    ).toMatchObject({
      odd: [
        { palletId: 'thin', differenceMm: expect.closeTo(-1.2, 12) },
        { palletId: 'thick', differenceMm: expect.closeTo(0.8, 12) }
      ]
    });
  });

  /** A pallet of 2 n slates, n each half a millimetre either side of its mean. */
  const wide = (palletId: string, mean: number, n: number): PalletSample => ({
    palletId,
    slates: 100_000,
    bins: binsFromPairs([
      [mean - 50, n],
      [mean + 50, n]
    ])
  });

  it('names nobody for what only many readings can tell', () => {
    const rising = Array.from({ length: 12 }, (_, place) =>
      wide(String(place), 600 + 8 * place, 833)
    );
    expect(namesOf(rising)).toEqual([]);
  });

  it('names a pallet from one SD within pallets on', () => {
    const others = ['a', 'b', 'c'].map((name) => wide(name, 600, 1000));
    // The pooled SD is 0.5 mm √(2000/1999): 0.500125 mm.
    expect(namesOf([...others, wide('d', 650, 1000)])).toEqual([]);
    expect(namesOf([...others, wide('d', 651, 1000)])).toEqual(['d']);
    expect(namesOf([...others, wide('d', 549, 1000)])).toEqual(['d']);
  });

  it('names nobody for what chance explains, however far', () => {
    const others = ['a', 'b', 'c'].map((name) => wide(name, 600, 1000));
    expect(namesOf([...others, wide('d', 670, 1)])).toEqual([]);
    expect(namesOf([...others, wide('d', 670, 20)])).toEqual(['d']);
  });

  it('puts back a pallet that only those set apart later made look odd', () => {
    // x is 0.45 mm from u and v, within the SD, but further than any from the mean of all others.
    const means: [string, number][] = [
      ['x', 645],
      ['y', 499],
      ['z', 500],
      ['u', 600],
      ['v', 600]
    ];
    const names = namesOf(means.map(([name, mean]) => wide(name, mean, 1000)));
    expect(names).toEqual(['y', 'z']);
  });
});
