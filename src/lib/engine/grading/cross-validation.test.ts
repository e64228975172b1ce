import { describe, expect, it } from 'vitest';
import { createRandom } from '../random.ts';
import { binsFromPairs } from '../thickness/index.ts';
import { type CutSpread, crossValidationRound } from './cross-validation.ts';
import { naturalBreaks } from './natural-breaks.ts';

const ground = Object.freeze({ stockSlates: 1000, courses: [], kickAllowanceMm: 1 });
const natural: CutSpread = (bins) => {
  const cut = naturalBreaks(bins, 2);
  return cut.ok ? cut.thresholdsMm : undefined;
};
/** Two beds, 5 and 8 mm, of twenty slates each: two piles never kick. */
const beds = binsFromPairs([
  [500, 20],
  [800, 20]
]);
const pallets = Object.freeze([Object.freeze({ slates: 1000, bins: beds })]);

describe('crossValidationRound', () => {
  it('finds no kicker where the two piles are two beds', () => {
    expect(crossValidationRound(ground, pallets, [natural], createRandom(1))).toEqual([0]);
  });

  it('tells boundaries that are fixed, whatever the dealing, near what they are on all readings', () => {
    // one pile of both beds: 400 of 780 pairs kick
    const told = crossValidationRound(ground, pallets, [() => []], createRandom(2));
    expect(told[0]).toBeCloseTo((100 * 400) / 780, 0);
  });

  it('tells a fit to single slates as worse than it looks', () => {
    const lone = binsFromPairs(Array.from({ length: 60 }, (_, n) => [400 + 7 * n, 1]));
    const own = { ...ground, kickAllowanceMm: 0.5 };
    /** As many piles as it takes for no kicker among the slates it is shown. */
    const tight: CutSpread = ({ hundredths }) => {
      const cuts: number[] = [];
      let thickest = hundredths[hundredths.length - 1];
      for (const value of [...hundredths].reverse())
        if (thickest - value > 50) {
          cuts.push((value + 1) / 100);
          thickest = value;
        }
      return cuts;
    };
    const [told] = crossValidationRound(
      own,
      [{ slates: 1000, bins: lone }],
      [tight],
      createRandom(3)
    );
    expect(told).toBeGreaterThan(0);
  });

  it('gives the same for the same draws, says which way cannot cut, and changes nothing', () => {
    const ways: CutSpread[] = [natural, () => undefined];
    const told = crossValidationRound(ground, pallets, ways, createRandom(4));
    expect(told).toEqual(crossValidationRound(ground, pallets, ways, createRandom(4)));
    expect(told).toEqual([0, undefined]);
    expect([...beds.counts]).toEqual([20, 20]);
  });

  it('weighs pallets by their slates and passes over one without readings', () => {
    // of 1,000 slates 900 are of 5 mm, though as many of 8 mm were gauged
    const two = [
      { slates: 900, bins: binsFromPairs([[500, 20]]) },
      { slates: 100, bins: binsFromPairs([[800, 20]]) },
      { slates: 50, bins: binsFromPairs([]) }
    ];
    const [told] = crossValidationRound(ground, two, [() => []], createRandom(5));
    expect(told).toBeGreaterThan(15); // 2 · 0.9 · 0.1 is 18 %
    expect(told).toBeLessThan(21);
  });

  it('lays whole courses where there is a roof', () => {
    const courses = Array.from({ length: 10 }, () => ({ slates: 90, joints: 89 }));
    const [told] = crossValidationRound(
      { ...ground, courses },
      pallets,
      [natural],
      createRandom(6)
    );
    expect(told).toBe(0);
  });

  it('refuses fractional counts: only readings can be dealt', () => {
    const half = [{ slates: 10, bins: binsFromPairs([[500, 0.5]]) }];
    expect(() => crossValidationRound(ground, half, [natural], createRandom(7))).toThrow(
      /not-whole/
    );
  });
});
