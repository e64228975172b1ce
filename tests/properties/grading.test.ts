import fc from 'fast-check';
import { ckmeans } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { type Random, createRandom, randomBelow, shuffled } from '$lib/engine';
import {
  equalShares,
  gradeFigures,
  kickProbabilityBetween,
  kickProbabilityWithin,
  kickWindows,
  kickerCurve,
  misgradedPiles,
  naturalBreaks,
  naturalClasses,
  perfectOrderKickers,
  pileOf,
  regradeAdvice,
  splitIntoPiles,
  suitTheRoof,
  thresholdBetween,
  weightedKappa
} from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import { type ThicknessBins, binsFromPairs, mergeBins, totalCount } from '$lib/engine/thickness';

const SEED = 20_260_702;

const pair = fc.tuple(fc.integer({ min: 300, max: 1000 }), fc.integer({ min: 1, max: 30 }));
const spread = (minLength: number, maxLength: number) =>
  fc
    .uniqueArray(pair, { minLength, maxLength, selector: ([hundredths]) => hundredths })
    .map(binsFromPairs);
const allowance = fc.integer({ min: 0, max: 300 }).map((hundredths) => hundredths / 100);
const thresholds = fc
  .uniqueArray(fc.integer({ min: 280, max: 1020 }), { maxLength: 7 })
  .map((lines) => lines.sort((one, other) => other - one).map((line) => line / 100));

/** All ways to choose `count` of the numbers 1 to `most`, rising. */
function choices(most: number, count: number, from = 1): number[][] {
  if (count === 0) return [[]];
  const found: number[][] = [];
  for (let first = from; first <= most; first++)
    for (const rest of choices(most, count - 1, first + 1)) found.push([first, ...rest]);
  return found;
}

/** Sum of squares about the mean, slate by slate. */
function sumOfSquares(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

/** Every slate of a spread, thinnest first, mm. */
function slatesOf(bins: ThicknessBins): number[] {
  return [...bins.hundredths].flatMap((hundredths, bin) =>
    new Array<number>(bins.counts[bin]).fill(hundredths / 100)
  );
}

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

describe('misgraded piles', () => {
  it('sum to the stock, bin by bin', () => {
    const sd = fc.double({ min: 0, max: 2, noNaN: true });
    fc.assert(
      fc.property(spread(1, 30), thresholds, sd, (bins, thresholdsMm, sdMm) => {
        const piles = misgradedPiles(bins, thresholdsMm, normalMisgrading(sdMm));
        expect(piles).toHaveLength(thresholdsMm.length + 1);
        const merged = mergeBins(piles);
        expect([...merged.hundredths]).toEqual([...bins.hundredths]);
        for (const [bin, count] of merged.counts.entries())
          expect(count).toBeCloseTo(bins.counts[bin], 10);
      }),
      { seed: SEED, numRuns: 300 }
    );
  });

  it('equal a seeded simulation of a sorter with an unsteady hand', () => {
    const random = createRandom(SEED + 1);
    const bins = binsFromPairs([
      [500, 30],
      [560, 40],
      [640, 30]
    ]);
    const thresholdsMm = [6, 5.4];
    const runs = 3000;
    const landed = [0, 0, 0];
    for (let run = 0; run < runs; run++)
      for (const slate of slatesOf(bins)) {
        // Twelve uniform numbers less six: near enough normal, and none of the engine's own.
        let error = -6;
        for (let draw = 0; draw < 12; draw++) error += random();
        landed[pileOf(slate + 0.3 * error, thresholdsMm) - 1]++;
      }
    const expected = misgradedPiles(bins, thresholdsMm, normalMisgrading(0.3)).map(totalCount);
    for (const [pile, count] of landed.entries()) {
      // Twelve uniforms have lighter tails than a normal: a fifth of a slate in 100 is allowed.
      const standardError = Math.sqrt(100 / 4 / runs);
      expect(Math.abs(count / runs - expected[pile])).toBeLessThan(5 * standardError + 0.2);
    }
  });
});

describe('grade figures', () => {
  const course = fc.integer({ min: 1, max: 40 }).map((slates) => ({ slates, joints: slates - 1 }));
  const grounds = fc.record({
    bins: spread(1, 30),
    stockSlates: fc.integer({ min: 1, max: 1500 }),
    courses: fc.array(course, { minLength: 1, maxLength: 30 }),
    kickAllowanceMm: allowance
  });

  it('account for every slate, every course and every kicker', () => {
    fc.assert(
      fc.property(grounds, thresholds, (ground, thresholdsMm) => {
        const figures = gradeFigures(ground)(thresholdsMm);
        const sum = (of: (pile: (typeof figures.piles)[number]) => number) =>
          figures.piles.reduce((total, pile) => total + of(pile), 0);
        expect(sum(({ share }) => share)).toBeCloseTo(1, 12);
        expect(sum(({ predictedSlates }) => predictedSlates)).toBeCloseTo(ground.stockSlates, 8);
        expect(sum(({ courses }) => courses)).toBe(figures.roof?.coursesLaid);
        for (const pile of figures.piles) expect(pile.slatesLeftOver).toBeGreaterThan(-1e-6);
        let next = 0;
        const kickers = sum(({ courses, kickProbability }) => {
          const own = ground.courses.slice(next, next + courses);
          next += courses;
          return own.reduce((total, { joints }) => total + joints, 0) * kickProbability;
        });
        expect(figures.roof?.expectedKickers).toBeCloseTo(kickers, 9);
      }),
      { seed: SEED, numRuns: 400 }
    );
  });

  it('at the thresholds that suit the roof are the optimum itself, and no method beats it', () => {
    const roofs = fc.tuple(grounds, fc.integer({ min: 1, max: 5 }));
    fc.assert(
      fc.property(
        roofs.filter(([{ bins }, piles]) => bins.hundredths.length >= piles),
        ([ground, piles]) => {
          const suited = suitTheRoof({ ...ground, piles });
          if (!suited.ok) throw new Error(suited.reason);
          const stockSlates = ground.stockSlates + suited.missingSlates;
          const figuresAt = gradeFigures({ ...ground, stockSlates });
          const own = figuresAt(suited.thresholdsMm);
          expect(own.roof?.expectedKickers).toBeCloseTo(suited.expectedKickers, 6);
          expect(own.piles.map(({ courses }) => courses)).toEqual(suited.coursesPerPile);
          for (const method of [naturalBreaks, equalShares]) {
            const other = method(ground.bins, piles);
            if (!other.ok) throw new Error(other.reason);
            const { roof } = figuresAt(other.thresholdsMm);
            if (roof?.coursesMissing === 0)
              expect(roof.expectedKickers).toBeGreaterThan(suited.expectedKickers - 1e-5);
          }
        }
      ),
      { seed: SEED, numRuns: 300 }
    );
  });

  it('leave a curve of kickers that suits the roof ever better with every pile', () => {
    fc.assert(
      fc.property(grounds, (ground) => {
        // Stock to spare, so that every number of piles lays the whole roof.
        const need = ground.courses.reduce((sum, { slates }) => sum + slates, 0);
        const rich = { ...ground, stockSlates: 60 * need * ground.bins.hundredths.length };
        const curve = kickerCurve(gradeFigures(rich), (piles) => suitTheRoof({ ...rich, piles }));
        for (const [index, point] of curve.slice(1).entries())
          expect(point.expectedKickersPer100Joints).toBeLessThan(
            curve[index].expectedKickersPer100Joints + 1e-5
          );
      }),
      { seed: SEED, numRuns: 40 }
    );
  });

  it('leave their inputs as they were', () => {
    fc.assert(
      fc.property(grounds, thresholds, (ground, thresholdsMm) => {
        const copy = structuredClone(ground);
        const frozen = { ...ground, courses: Object.freeze(ground.courses.map(Object.freeze)) };
        const frozenThresholds = Object.freeze(thresholdsMm);
        const chanceAbove = normalMisgrading(0.3);
        gradeFigures(frozen as typeof ground)(frozenThresholds);
        gradeFigures({ ...(frozen as typeof ground), chanceAbove })(frozenThresholds);
        suitTheRoof({ ...(frozen as typeof ground), piles: 2 });
        naturalBreaks(ground.bins, 3);
        equalShares(ground.bins, 3);
        expect(ground).toEqual(copy);
      }),
      { seed: SEED, numRuns: 100 }
    );
  });
});

describe('regrade advice', () => {
  it('counts exactly the slates whose pile changes', () => {
    const moved = fc.tuple(spread(1, 30), thresholds, thresholds).map(([bins, one, other]) => {
      const count = Math.min(one.length, other.length);
      return { bins, one: one.slice(0, count), other: other.slice(0, count) };
    });
    fc.assert(
      fc.property(moved, ({ bins, one, other }) => {
        const ground = { bins, stockSlates: 100, courses: [], kickAllowanceMm: 1 };
        const { recheck, slatesToRecheck } = regradeAdvice(ground, one, other, [
          { palletId: 'A', bins }
        ]);
        const slates = slatesOf(bins);
        const changed = slates.filter((slate) => pileOf(slate, one) !== pileOf(slate, other));
        expect(slatesToRecheck).toBe(changed.length);
        for (const { fromPile, toPile, thinnestMm, thickestMm } of recheck)
          for (const edge of [thinnestMm, thickestMm]) {
            expect(pileOf(edge, one)).toBe(fromPile);
            expect(pileOf(edge, other)).toBe(toPile);
          }
      }),
      { seed: SEED, numRuns: 400 }
    );
  });
});

describe('weighted kappa', () => {
  const table = fc.integer({ min: 2, max: 5 }).chain((size) =>
    fc.array(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: size, maxLength: size }), {
      minLength: size,
      maxLength: size
    })
  );
  const weights = fc.constantFrom('equal' as const, 'linear' as const, 'quadratic' as const);

  it('is the same when tap and gauge change places, and never above 1', () => {
    fc.assert(
      fc.property(table, weights, (counts, kind) => {
        const one = weightedKappa(counts, kind);
        const other = weightedKappa(
          counts.map((_row, column) => counts.map((row) => row[column])),
          kind
        );
        expect(other.ok).toBe(one.ok);
        if (!one.ok || !other.ok) return;
        expect(one.kappa).toBeLessThanOrEqual(1);
        expect(other.kappa).toBeCloseTo(one.kappa, 10);
        expect(other.standardError).toBeCloseTo(one.standardError, 8);
      }),
      { seed: SEED, numRuns: 500 }
    );
  });

  it('keeps its value and halves its error with four times the slates', () => {
    fc.assert(
      fc.property(table, weights, (counts, kind) => {
        const one = weightedKappa(counts, kind);
        const four = weightedKappa(
          counts.map((row) => row.map((count) => 4 * count)),
          kind
        );
        expect(four.ok).toBe(one.ok);
        if (!one.ok || !four.ok) return;
        expect(four.kappa).toBeCloseTo(one.kappa, 10);
        expect(four.standardError).toBeCloseTo(one.standardError / 2, 8);
      }),
      { seed: SEED, numRuns: 300 }
    );
  });
});
