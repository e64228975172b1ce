import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import type { PalletSample } from './pallet-sample.ts';
import { estimateGrade, estimateMean } from './two-stage.ts';

const pallet = (palletId: string, slates: number, ...pairs: [number, number][]): PalletSample =>
  Object.freeze({ palletId, slates, bins: binsFromPairs(pairs) });

const medium = Object.freeze({ fromMm: 5, toMm: 6 });

describe('estimateMean', () => {
  it('passes on what is missing', () => {
    expect(estimateMean([])).toMatchObject({ ok: false, reason: 'nothing-gauged' });
    expect(estimateMean([pallet('a', 100), pallet('b', 100, [600, 3])])).toMatchObject({
      reason: 'one-pallet-of-many'
    });
  });

  it('refuses more gauged than a pallet holds, and taps spread over bins', () => {
    expect(() => estimateMean([pallet('a', 2, [600, 3])])).toThrow(/pallet a: 3 gauged of 2/);
    expect(() => estimateMean([pallet('a', 9, [600, 2.5])])).toThrow(/not-whole/);
    expect(() => estimateMean([pallet('a', 0)])).toThrow(/out-of-range/);
  });

  it('works in millimetres: ten slates of 6.0 and 6.2 mm of a hundred', () => {
    // SD² = 10 · 0.1² / 9; SE² = SD² / 10 · 0.9 = 0.001
    expect(estimateMean([pallet('a', 100, [600, 5], [620, 5])])).toMatchObject({
      meanMm: expect.closeTo(6.1, 12),
      standardErrorMm: expect.closeTo(Math.sqrt(0.001), 12),
      lowMm: expect.closeTo(6.0285, 4),
      highMm: expect.closeTo(6.1715, 4)
    });
  });
});

describe('estimateGrade', () => {
  it('is exact where every slate was gauged', () => {
    expect(estimateGrade([pallet('a', 5, [500, 2], [600, 3])], medium)).toMatchObject({
      count: 2,
      countLow: 2,
      countHigh: 2,
      shareStandardError: 0
    });
  });

  it('for a simple random sample that is large in a large stock is Clopper and Pearson’s', () => {
    // 81 of 263, 95 %: 0.2527 to 0.3676; the correction for 10 million slates is beyond the digits
    const result = estimateGrade([pallet('a', 10_000_000, [550, 81], [700, 182])], medium);
    if (!result.ok) throw new Error(result.reason);
    expect(result.share).toBeCloseTo(81 / 263, 14);
    expect(Math.abs(result.shareLow - 0.2527367456)).toBeLessThan(2e-6);
    expect(Math.abs(result.shareHigh - 0.3676219226)).toBeLessThan(2e-6);
  });

  it('where none was seen still allows for some', () => {
    const result = estimateGrade([pallet('a', 10_000_000, [700, 20])], medium);
    if (!result.ok) throw new Error(result.reason);
    expect(result.count).toBe(0);
    expect(result.countLow).toBe(0);
    expect(result.shareHigh).toBeCloseTo(0.1684334709830853, 5); // 0 of 20, Clopper and Pearson
  });

  it('where none was seen trusts pallets gauged unequally no more than an even sample (Kish)', () => {
    const most = 10_000_000;
    const result = estimateGrade(
      [pallet('a', most, [700, 200]), pallet('b', most, [700, 10])],
      medium
    );
    if (!result.ok) throw new Error(result.reason);
    // worth 2² / (1/200 + 1/10) = 38.1 slates, not 210
    expect(result.shareHigh).toBeCloseTo(1 - 0.025 ** (0.105 / 4), 5);
  });

  it('where none was seen knows no more for a pallet gauged to the last slate', () => {
    const result = estimateGrade(
      [pallet('a', 1000, [700, 1000]), pallet('b', 1000, [700, 10])],
      medium
    );
    if (!result.ok) throw new Error(result.reason);
    // half of the stock is known; 10 of 1000 are worth 2² / (0.99 / 10) = 40.4 of all
    expect(result.shareHigh).toBeCloseTo(1 - 0.025 ** (0.099 / 4), 10);
  });

  it('takes none of five slates for no proof that a pallet has none', () => {
    // thirty of 300 seen on the first pallet; what the second holds is all but unknown
    const result = estimateGrade(
      [pallet('a', 1000, [550, 30], [700, 270]), pallet('b', 1000, [700, 5])],
      medium
    );
    if (!result.ok) throw new Error(result.reason);
    expect(result.count).toBeCloseTo(100, 9);
    expect(result.countStandardError).toBeLessThan(15); // the five alike count as a variance of 0
    expect(result.countHigh).toBeGreaterThan(300); // a fifth of the second pallet, and more
  });

  it('where all were seen still allows for others', () => {
    const result = estimateGrade([pallet('a', 10_000_000, [550, 20])], medium);
    if (!result.ok) throw new Error(result.reason);
    expect(result.shareLow).toBeCloseTo(1 - 0.1684334709830853, 5);
    expect(result.countHigh).toBe(10_000_000);
  });

  it('never says fewer than were seen, nor more than may be', () => {
    const result = estimateGrade([pallet('a', 12, [550, 5], [700, 5])], medium);
    if (!result.ok) throw new Error(result.reason);
    expect(result.countLow).toBeGreaterThanOrEqual(5);
    expect(result.countHigh).toBeLessThanOrEqual(7);
    expect(result.countLow).toBeLessThanOrEqual(result.count);
    expect(result.countHigh).toBeGreaterThanOrEqual(result.count);
  });

  it('trusts pallets that differ in thickness less than pallets that are alike', () => {
    // none of the grade on four of eight pallets, five slates gauged on each
    const alike = (extra: number) =>
      [0, 1, 2, 3]
        .map((index) =>
          pallet(`o${index}`, 100, [700 + extra * index, 2], [720 + extra * index, 3])
        )
        .concat([0, 1, 2, 3].map((index) => pallet(`u${index}`, 100)));
    const calm = estimateGrade(alike(0), medium);
    const apart = estimateGrade(alike(50), medium);
    if (!calm.ok || !apart.ok) throw new Error('estimable');
    expect(apart.countHigh).toBeGreaterThan(calm.countHigh + 50);
  });

  it('four of ten gauged from a hundred: 40, between 13 and 73; hypergeometric limits 14 and 72', () => {
    expect(estimateGrade([pallet('a', 100, [550, 4], [650, 6])], medium)).toMatchObject({
      count: 40,
      countStandardError: expect.closeTo(100 * Math.sqrt(0.024), 10), // 0.9 · 0.24 / 9
      countLow: 13,
      countHigh: 73
    });
  });

  it('pays for few degrees of freedom with a smaller plain sample (Korn and Graubard)', () => {
    // 2 of 4 pallets, shares 0.4 and 0.6 of ten: few degrees of freedom against 19, so t is larger
    const pallets = [
      pallet('a', 1000, [550, 4], [650, 6]),
      pallet('b', 1000, [550, 6], [650, 4]),
      pallet('c', 1000),
      pallet('d', 1000)
    ];
    const result = estimateGrade(pallets, medium);
    if (!result.ok) throw new Error(result.reason);
    const apart = (0.5 * 2 * 0.1 ** 2) / 2;
    const seen = (0.99 * (0.24 / 9)) / 8; // each pallet's part
    expect(result.shareStandardError).toBeCloseTo(Math.sqrt(apart + 2 * seen), 12);
    const likely = 8.5 / 19; // nine slates of the stock's half mixed in: of 4 and of 6 alike
    const ofSlate = likely * (1 - likely);
    // two pallets open, two closed: c = 4 · 0.25²; three usual pallets beside the two, ρ 0.18
    const usual = ofSlate * (0.18 / 0.82 + 0.99 / 10);
    const between = (0.25 * (2 * 0.1 ** 2 + 3 * usual)) / 4;
    const within = (0.99 * (1 / 4 - 0.25 / 2) * ofSlate) / 10;
    const variance = between + 2 * within;
    const degrees = variance ** 2 / (between ** 2 / 4 + (2 * within ** 2) / 18);
    const ratio = tQuantile(0.975, 19) / tQuantile(0.975, degrees);
    const plain = (0.25 / variance) * ratio ** 2;
    expect(ratio).toBeLessThan(0.9); // so that the correction shows
    expect(result.shareLow).toBeCloseTo(betaQuantile(0.025, plain / 2, plain / 2 + 1), 10);
    expect(result.shareHigh).toBeCloseTo(betaQuantile(0.975, plain / 2 + 1, plain / 2), 10);
  });

  it('takes pallets of one thickness each for no more slates than there are pallets', () => {
    const result = estimateGrade(
      [pallet('a', 1000, [700, 10]), pallet('b', 1000, [720, 10]), pallet('c', 1000)],
      medium
    );
    if (!result.ok) throw new Error(result.reason);
    expect(result.shareHigh).toBeGreaterThan(0.8); // 0 of 2 slates
  });

  it('adds up over grades that share out all slates', () => {
    const pallets = [
      pallet('a', 120, [450, 3], [550, 4], [650, 2]),
      pallet('b', 80, [550, 5], [650, 4]),
      pallet('c', 200)
    ];
    const bands = [
      { fromMm: 6, toMm: Infinity },
      { fromMm: 5, toMm: 6 },
      { fromMm: 0, toMm: 5 }
    ];
    const total = bands.reduce((sum, band) => {
      const result = estimateGrade(pallets, band);
      return sum + (result.ok ? result.count : Number.NaN);
    }, 0);
    expect(total).toBeCloseTo(400, 9);
  });
});
