import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { comparePallets, oddPallets, oneWayRandomEffects } from './between-pallets.ts';
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

describe('oddPallets', () => {
  const usual = [490, 500, 510, 495, 505];
  const thick = usual.map((value) => value + 80);

  it('names nobody where pallets are alike', () => {
    const pallets = ['a', 'b', 'c', 'd'].map((name) => pallet(name, ...usual));
    expect(oddPallets(pallets)).toEqual({ ok: true, odd: [] });
  });

  it('names the thick pallet and not those it makes look thin', () => {
    const pallets = ['a', 'b', 'c'].map((name) => pallet(name, ...usual));
    const result = oddPallets([...pallets, pallet('thick', ...thick)]);
    expect(result).toMatchObject({
      ok: true,
      odd: [{ palletId: 'thick', differenceMm: expect.closeTo(0.8, 12) }]
    });
    if (result.ok) expect(result.odd.length).toBe(1);
  });

  it('names the oddest first', () => {
    const pallets = ['a', 'b', 'c'].map((name) => pallet(name, ...usual));
    const thin = usual.map((value) => value - 120);
    const result = oddPallets([pallet('thick', ...thick), ...pallets, pallet('thin', ...thin)]);
    expect(result).toMatchObject({ odd: [{ palletId: 'thin' }, { palletId: 'thick' }] });
  });

  it('tells each by its difference from the pallets that are not odd', () => {
    const pallets = ['a', 'b', 'c'].map((name) => pallet(name, ...usual));
    const thin = usual.map((value) => value - 120);
    const result = oddPallets([pallet('thick', ...thick), ...pallets, pallet('thin', ...thin)]);
    expect(result).toMatchObject({
      odd: [
        { palletId: 'thin', differenceMm: expect.closeTo(-1.2, 12) },
        { palletId: 'thick', differenceMm: expect.closeTo(0.8, 12) }
      ]
    });
  });

  it('of two pallets names neither, for either may be the odd one', () => {
    expect(oddPallets([pallet('a', ...usual), pallet('b', ...thick)])).toEqual({
      ok: true,
      odd: []
    });
  });

  it('says when it cannot compare, and refuses a confidence that cannot be', () => {
    expect(oddPallets([pallet('a', 500)])).toEqual({ ok: false, reason: 'too-few-groups' });
    expect(() => oddPallets([], 1)).toThrow(/out-of-range/);
  });
});
