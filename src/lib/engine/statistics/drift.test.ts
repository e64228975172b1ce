import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '../random.ts';
import { type ThicknessBins, binsFromPairs } from '../thickness/index.ts';
import { type Drift, stockDrift } from './drift.ts';

const drawn = (seed: number, count: number, meanMm: number): ThicknessBins => {
  const random = createRandom(seed);
  return binsFromPairs(
    Array.from({ length: count }, () => [Math.round(100 * meanMm + 90 * randomNormal(random)), 1])
  );
};
const none = binsFromPairs([]);
const driftOf = (...pallets: Parameters<typeof stockDrift>[0]): Drift => {
  const result = stockDrift(pallets);
  if (!result.ok) throw new Error(result.reason);
  return result;
};
const TOO_FEW = { ok: false, reason: 'too-few' };

describe('stockDrift', () => {
  it('needs ten slates on either side, and slates that differ', () => {
    const nine = drawn(1, 9, 6);
    const ten = drawn(1, 10, 6);
    expect(stockDrift([])).toEqual(TOO_FEW);
    expect(stockDrift([{ sample: none, since: none }])).toEqual(TOO_FEW);
    expect(stockDrift([{ sample: nine, since: ten }])).toEqual(TOO_FEW);
    expect(stockDrift([{ sample: ten, since: nine }])).toEqual(TOO_FEW);
    expect(stockDrift([{ sample: none, since: ten }])).toEqual(TOO_FEW);
    const same = binsFromPairs([[600, 20]]);
    expect(stockDrift([{ sample: same, since: same }])).toEqual(TOO_FEW);
    const alike = driftOf({ sample: ten, since: ten });
    expect(alike.drifted).toBe(false);
    expect(alike.shiftMm).toBeCloseTo(0, 12);
  });

  it('adds up what pallets with few slates each tell', () => {
    const pallets = [1, 2, 3, 4].map((seed) => ({
      sample: drawn(seed, 4, 5 + seed),
      since: drawn(seed + 10, 4, 5 + seed)
    }));
    expect(stockDrift(pallets.slice(0, 2))).toEqual(TOO_FEW);
    expect(stockDrift(pallets.slice(0, 1))).toEqual(TOO_FEW);
    expect(stockDrift(pallets).ok).toBe(true);
  });

  it('refuses a confidence that cannot be', () => {
    expect(() => stockDrift([], 0)).toThrow(/out-of-range/);
  });

  it('sees a shift of one millimetre between forty slates and sixty of one pallet', () => {
    const sample = binsFromPairs([
      [500, 20],
      [600, 20]
    ]);
    const since = binsFromPairs([
      [600, 30],
      [700, 30]
    ]);
    const result = driftOf({ sample, since });
    expect(result.drifted).toBe(true);
    expect(result.shiftMm).toBeCloseTo(1, 12);
    // Worked by hand from the formula: 24 slates of information, 100 · 0.25 mm² left over on 99,
    // error 0.04.
    const mixing = (-2 * Math.log(0.04) + Math.log(1 - 2 * Math.log(0.04))) / 50;
    const growth = 1 + 24 * mixing;
    const rise = (growth / 0.04 ** 2) ** (1 / 99);
    const reach = Math.sqrt(((25 / 24) * (rise - 1)) / (1 - rise / growth));
    expect(result.highMm).toBeCloseTo(1 + reach, 12);
    expect(result.lowMm).toBeCloseTo(1 - reach, 12);
  });

  it('compares each pallet with its own sample, whatever the pallets differ by', () => {
    const pallets = [5.5, 6.7, 9].map((meanMm, seed) => ({
      sample: drawn(seed, 20, meanMm),
      since: meanMm === 6.7 ? drawn(100 + seed, 200, meanMm) : none
    }));
    const result = driftOf(...pallets);
    expect(result.drifted).toBe(false);
    const alone = driftOf(pallets[1]);
    expect(Math.abs(result.shiftMm - alone.shiftMm)).toBeLessThan(0.01);
  });

  it('sees a shift of half a millimetre in all pallets, and its direction', () => {
    const thinner = driftOf(
      ...[5.5, 6.7].map((meanMm, seed) => ({
        sample: drawn(seed, 60, meanMm),
        since: drawn(100 + seed, 100, meanMm - 0.5)
      }))
    );
    expect(thinner.drifted).toBe(true);
    expect(thinner.highMm).toBeLessThan(0);
    expect(thinner.lowMm).toBeLessThan(-0.5);
    expect(thinner.shiftMm).toBeCloseTo((thinner.lowMm + thinner.highMm) / 2, 12);
  });

  it('compares a pallet without a sample with the others as far as those are alike', () => {
    const since = drawn(77, 200, 8);
    const asMany = (meansMm: readonly number[]) =>
      stockDrift([
        ...meansMm.map((meanMm, seed) => ({ sample: drawn(seed, 20, meanMm), since: none })),
        { sample: none, since }
      ]);
    expect(asMany([6])).toEqual(TOO_FEW);
    expect(asMany([5, 5.5, 6, 6.5, 7, 5, 5.5, 6, 6.5, 7])).toEqual(TOO_FEW);
    expect(asMany(Array<number>(12).fill(6))).toMatchObject({ ok: true, drifted: true });
  });
});
