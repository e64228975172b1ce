import fc from 'fast-check';
import { ckmeans } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { type Random, createRandom, randomBelow, shuffled } from '$lib/engine';
import {
  equalShares,
  kickProbabilityBetween,
  kickProbabilityWithin,
  kickWindows,
  naturalBreaks,
  naturalClasses,
  perfectOrderKickers,
  pileOf,
  splitIntoPiles,
  thresholdBetween
} from '$lib/engine/grading';
import { binsFromPairs, mergeBins, totalCount } from '$lib/engine/thickness';
import {
  SEED,
  spread,
  allowance,
  thresholds,
  choices,
  sumOfSquares,
  slatesOf
} from './grading-cases.ts';

describe('natural breaks', () => {
  it('equal brute force over all cuts of small spreads', () => {
    const small = fc.tuple(spread(1, 9), fc.integer({ min: 1, max: 5 }));
    fc.assert(
      fc.property(
        small.filter(([bins, piles]) => bins.hundredths.length >= piles),
        ([bins, piles]) => {
          const least = Math.min(
            ...choices(bins.hundredths.length - 1, piles - 1).map((cuts) =>
              splitIntoPiles(bins, cuts.map((cut) => bins.hundredths[cut] / 100).reverse())
                .map((pile) => sumOfSquares(slatesOf(pile)))
                .reduce((sum, within) => sum + within, 0)
            )
          );
          const result = naturalBreaks(bins, piles);
          if (!result.ok) throw new Error(result.reason);
          expect(result.withinSumOfSquares).toBeCloseTo(least, 9);
          const reached = splitIntoPiles(bins, result.thresholdsMm)
            .map((pile) => sumOfSquares(slatesOf(pile)))
            .reduce((sum, within) => sum + within, 0);
          expect(reached).toBeCloseTo(least, 9);
        }
      ),
      { seed: SEED, numRuns: 400 }
    );
  });

  it('equal ckmeans on the raw list of larger spreads', () => {
    fc.assert(
      fc.property(spread(40, 200), fc.integer({ min: 2, max: 8 }), (bins, piles) => {
        const list = shuffled(slatesOf(bins), createRandom(SEED));
        const theirs = ckmeans(list, piles).reduce((sum, one) => sum + sumOfSquares(one), 0);
        const result = naturalBreaks(bins, piles);
        if (!result.ok) throw new Error(result.reason);
        expect(Math.abs(result.withinSumOfSquares - theirs)).toBeLessThan(1e-9 * (1 + theirs));
      }),
      { seed: SEED, numRuns: 60 }
    );
  });

  it('keep their classes under shift and scale of any values', () => {
    const values = fc
      .uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 5, maxLength: 30 })
      .map((list) => list.sort((one, other) => one - other));
    fc.assert(
      fc.property(
        values,
        fc.integer({ min: -5000, max: 5000 }),
        fc.constantFrom(0.5, 2, 8),
        (list, shift, scale) => {
          const weights = list.map((_value, index) => 1 + (index % 3));
          const one = naturalClasses(list, weights, 4);
          const moved = list.map((value) => value * scale + shift);
          const other = naturalClasses(moved, weights, 4);
          if (!one.ok || !other.ok) throw new Error('too few');
          expect(other.withinSumOfSquares / scale ** 2).toBeCloseTo(one.withinSumOfSquares, 6);
          expect(other.goodnessOfFit).toBeCloseTo(one.goodnessOfFit, 10);
        }
      ),
      { seed: SEED, numRuns: 300 }
    );
  });

  it('do not change when all counts are doubled, nor with the order of readings', () => {
    fc.assert(
      fc.property(spread(8, 60), fc.integer({ min: 2, max: 8 }), (bins, piles) => {
        const one = naturalBreaks(bins, piles);
        const doubled = naturalBreaks(mergeBins([bins, bins]), piles);
        const pairs = [...bins.hundredths].map((value, bin) => [value, bins.counts[bin]] as const);
        const mixed = naturalBreaks(binsFromPairs(shuffled(pairs, createRandom(3))), piles);
        if (!one.ok || !doubled.ok) throw new Error('too few');
        expect(mixed).toEqual(one);
        expect(doubled.withinSumOfSquares).toBeCloseTo(2 * one.withinSumOfSquares, 8);
      }),
      { seed: SEED, numRuns: 200 }
    );
  });
});

describe('equal shares', () => {
  it('equal brute force over all cuts of small spreads', () => {
    fc.assert(
      fc.property(
        fc
          .tuple(spread(1, 9), fc.integer({ min: 1, max: 5 }))
          .filter(([bins, piles]) => bins.hundredths.length >= piles),
        ([bins, piles]) => {
          const unevenness = (shares: readonly number[]) =>
            shares.reduce((sum, share) => sum + (share - 1 / piles) ** 2, 0);
          const total = totalCount(bins);
          const least = Math.min(
            ...choices(bins.hundredths.length - 1, piles - 1).map((cuts) => {
              const thresholdsMm = cuts.map((cut) => bins.hundredths[cut] / 100).reverse();
              return unevenness(
                splitIntoPiles(bins, thresholdsMm).map((pile) => totalCount(pile) / total)
              );
            })
          );
          const result = equalShares(bins, piles);
          if (!result.ok) throw new Error(result.reason);
          expect(unevenness(result.shares)).toBeCloseTo(least, 12);
          const piled = splitIntoPiles(bins, result.thresholdsMm);
          expect(piled.map((pile) => totalCount(pile) / total)).toEqual(result.shares);
        }
      ),
      { seed: SEED, numRuns: 400 }
    );
  });
});

describe('thresholds', () => {
  it('between two thicknesses part them, at the coarsest round figure that does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 150, max: 3999 }),
        fc.integer({ min: 1, max: 300 }),
        (thinner, gap) => {
          const thresholdMm = thresholdBetween(thinner, thinner + gap);
          expect(pileOf(thinner / 100, [thresholdMm])).toBe(2);
          expect(pileOf((thinner + gap) / 100, [thresholdMm])).toBe(1);
          const hundredths = Math.round(thresholdMm * 100);
          if (gap >= 10) expect(hundredths % 10).toBe(0);
          else if (gap >= 5) expect(hundredths % 5).toBe(0);
        }
      ),
      { seed: SEED, numRuns: 2000 }
    );
  });

  it('split a spread without losing or doubling a slate', () => {
    fc.assert(
      fc.property(spread(0, 40), thresholds, (bins, thresholdsMm) => {
        expect(mergeBins(splitIntoPiles(bins, thresholdsMm))).toEqual(bins);
      }),
      { seed: SEED, numRuns: 300 }
    );
  });
});

describe('expected kickers', () => {
  it('of any window in constant time equal a direct count', () => {
    const window = fc.tuple(spread(1, 25), allowance, fc.nat(), fc.nat());
    fc.assert(
      fc.property(window, ([bins, allowanceMm, one, other]) => {
        const length = bins.hundredths.length;
        const [first, end] = [one % (length + 1), other % (length + 1)].sort((a, b) => a - b);
        const inside = {
          hundredths: bins.hundredths.slice(first, end),
          counts: bins.counts.slice(first, end)
        };
        const found = kickWindows(bins, allowanceMm)(first, end);
        expect(found.slates).toBe(totalCount(inside));
        expect(found.kickProbability).toBe(kickProbabilityWithin(inside, allowanceMm));
        const slates = slatesOf(inside);
        if (slates.length > 1)
          expect(found.meanSquaredStepMm2).toBeCloseTo(
            (2 * sumOfSquares(slates)) / (slates.length - 1),
            9
          );
      }),
      { seed: SEED, numRuns: 1000 }
    );
  });

  it('equal a count over all pairs of slates, within a pile and between two', () => {
    fc.assert(
      fc.property(spread(1, 6), spread(1, 6), allowance, (one, other, allowanceMm) => {
        const kicks = (a: number, b: number) =>
          Math.round(Math.abs(a - b) * 100) / 100 > allowanceMm;
        const within = slatesOf(one);
        let kicking = 0;
        for (const [index, a] of within.entries())
          for (const [otherIndex, b] of within.entries())
            if (index !== otherIndex && kicks(a, b)) kicking++;
        const pairs = within.length * (within.length - 1);
        expect(kickProbabilityWithin(one, allowanceMm)).toBeCloseTo(
          pairs ? kicking / pairs : 0,
          12
        );
        const across = slatesOf(other);
        const crossing = within.flatMap((a) => across.filter((b) => kicks(a, b))).length;
        expect(kickProbabilityBetween(one, other, allowanceMm)).toBeCloseTo(
          crossing / (within.length * across.length),
          12
        );
      }),
      { seed: SEED, numRuns: 300 }
    );
  });

  it('do not change with a shift, nor when thickness and allowance are scaled together', () => {
    fc.assert(
      fc.property(spread(1, 30), allowance, fc.integer({ min: 1, max: 9 }), (bins, mm, times) => {
        const chance = kickProbabilityWithin(bins, mm);
        const { counts } = bins;
        const shifted = { hundredths: bins.hundredths.map((one) => one + times), counts };
        const scaled = { hundredths: bins.hundredths.map((one) => one * times), counts };
        expect(kickProbabilityWithin(shifted, mm)).toBe(chance);
        expect(kickProbabilityWithin(scaled, (Math.round(mm * 100) * times) / 100)).toBe(chance);
      }),
      { seed: SEED, numRuns: 300 }
    );
  });

  it('equal a seeded simulation of laid courses within five standard errors', () => {
    const random = createRandom(SEED);
    const bins = binsFromPairs(
      Array.from({ length: 60 }, (_pair, bin) => [480 + 6 * bin, 1 + (bin % 7)] as const)
    );
    const slates = slatesOf(bins);
    const runs = 4000;
    const inCourse = 41;
    const counted = Array.from({ length: runs }, () => kickersLaid(slates, inCourse, 1.2, random));
    const mean = counted.reduce((sum, one) => sum + one, 0) / runs;
    const standardError = Math.sqrt(sumOfSquares(counted) / (runs - 1) / runs);
    const expected = (inCourse - 1) * kickProbabilityWithin(bins, 1.2);
    expect(expected).toBeGreaterThan(5); // the comparison is not empty
    expect(Math.abs(mean - expected)).toBeLessThan(5 * standardError);
  });

  it('in perfect order equal a walk along the sorted slates', () => {
    const roof = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(spread(1, 12), roof, allowance, (bins, sizes, allowanceMm) => {
        const total = totalCount(bins);
        const need = sizes.reduce((sum, size) => sum + size, 0);
        const thicker = [...bins.counts]
          .reverse()
          .map((_count, bin, counts) =>
            counts.slice(0, bin + 1).reduce((sum, count) => sum + count, 0)
          );
        const sorted = [...bins.hundredths].reverse().flatMap((hundredths, bin) => {
          const start = bin > 0 ? Math.round((thicker[bin - 1] / total) * need) : 0;
          return new Array<number>(Math.round((thicker[bin] / total) * need) - start).fill(
            hundredths
          );
        });
        expect(sorted).toHaveLength(need);
        let kickers = 0;
        let start = 0;
        for (const size of sizes) {
          for (let slate = start + 1; slate < start + size; slate++)
            if (sorted[slate - 1] - sorted[slate] > Math.round(allowanceMm * 100)) kickers++;
          start += size;
        }
        const courses = sizes.map((slates) => ({ slates, joints: slates - 1 }));
        expect(perfectOrderKickers(bins, courses, allowanceMm)).toBe(kickers);
      }),
      { seed: SEED, numRuns: 600 }
    );
  });
});

/** Draws a course from the pile without putting back, lays it, counts its kickers. */
function kickersLaid(
  slates: readonly number[],
  count: number,
  allowanceMm: number,
  random: Random
) {
  const pile = [...slates];
  let kickers = 0;
  let last: number | undefined;
  for (let drawn = 0; drawn < count; drawn++) {
    const [slate] = pile.splice(randomBelow(random, pile.length), 1);
    if (last !== undefined && Math.round(Math.abs(slate - last) * 100) > allowanceMm * 100)
      kickers++;
    last = slate;
  }
  return kickers;
}
