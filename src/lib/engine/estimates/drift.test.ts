import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '../random.ts';
import { type ThicknessBins, binsFromPairs } from '../thickness/index.ts';
import { stockDrift } from './drift.ts';

const drawn = (seed: number, count: number, meanMm: number): [number, number][] => {
  const random = createRandom(seed);
  return Array.from({ length: count }, () => [
    Math.round(100 * meanMm + 90 * randomNormal(random)),
    1
  ]);
};
const bins = (pairs: [number, number][]): ThicknessBins => binsFromPairs(pairs);

describe('stockDrift', () => {
  it('needs ten slates on either side, and slates that differ', () => {
    const few = bins(drawn(1, 9, 6));
    const ten = bins(drawn(1, 10, 6));
    expect(stockDrift(few, ten)).toEqual({ ok: false, reason: 'too-few' });
    expect(stockDrift(ten, few)).toEqual({ ok: false, reason: 'too-few' });
    expect(stockDrift(binsFromPairs([]), ten)).toEqual({ ok: false, reason: 'too-few' });
    expect(stockDrift(bins([[600, 20]]), bins([[600, 20]]))).toMatchObject({ ok: false });
    expect(stockDrift(ten, ten)).toMatchObject({ ok: true, drifted: false, shiftMm: 0 });
  });

  it('refuses a confidence that cannot be', () => {
    const ten = bins(drawn(1, 10, 6));
    expect(() => stockDrift(ten, ten, 0)).toThrow(/out-of-range/);
  });

  it('sees a shift of one millimetre between forty slates and sixty', () => {
    const sample = bins([
      [500, 20],
      [600, 20]
    ]);
    const sorted = bins([
      [600, 30],
      [700, 30]
    ]);
    const result = stockDrift(sample, sorted);
    if (!result.ok) throw new Error(result.reason);
    expect(result.drifted).toBe(true);
    expect(result.shiftMm).toBeCloseTo(1, 12);
    // t at 0.9875 with 39: 2.33, on SD 0.5064 / √40; the bound worked by hand from its formula
    const ofSample = (2.3313 * Math.sqrt(10 / 39)) / Math.sqrt(40);
    const mixing = (-2 * Math.log(0.025) + Math.log(1 - 2 * Math.log(0.025))) / 100;
    const grown = 60 * mixing + 1;
    const ofSorted =
      Math.sqrt(10 / 39) *
      Math.sqrt(((2 * grown) / (3600 * mixing)) * Math.log(Math.sqrt(grown) / 0.025));
    expect(result.lowMm).toBeCloseTo(1 - ofSample - ofSorted, 3);
    expect(result.highMm).toBeCloseTo(1.403, 3);
  });

  it('sees a shift of half a millimetre, and its direction', () => {
    const sample = bins(drawn(2, 120, 6));
    const thinner = stockDrift(sample, bins(drawn(3, 200, 5.5)));
    expect(thinner).toMatchObject({ ok: true, drifted: true });
    if (!thinner.ok) return;
    expect(thinner.highMm).toBeLessThan(0);
    expect(thinner.lowMm).toBeLessThan(-0.5);
    expect(thinner.shiftMm).toBeCloseTo((thinner.lowMm + thinner.highMm) / 2, 12);
  });

  it('asked after every slate cries wolf in fewer than one job in twenty', () => {
    let alarms = 0;
    const jobs = 200;
    for (let job = 0; job < jobs; job++) {
      const sample = bins(drawn(1000 + job, 60, 6));
      const sorted: [number, number][] = drawn(5000 + job, 400, 6);
      for (let count = 10; count <= sorted.length; count += 10) {
        const result = stockDrift(sample, bins(sorted.slice(0, count)));
        if (result.ok && result.drifted) {
          alarms++;
          break;
        }
      }
    }
    expect(alarms).toBeLessThan(jobs / 20);
  });
});
