import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '$lib/engine';
import {
  equalShares,
  gradeFigures,
  kickerCurve,
  misgradedPiles,
  naturalBreaks,
  pileOf,
  regradeAdvice,
  splitIntoPiles,
  suitTheRoof,
  weightedKappa
} from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import { binsFromPairs, mergeBins, totalCount } from '$lib/engine/thickness';
import { SEED, spread, allowance, thresholds, slatesOf } from './grading-cases.ts';

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
    let told = 0;
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
          // A pile of one reading has no pair: the search leaves it out, the figures do not.
          const isTold = splitIntoPiles(ground.bins, suited.thresholdsMm).every(
            (pile, at) => totalCount(pile) > 1 || suited.coursesPerPile[at] === 0
          );
          if (isTold) {
            told++;
            expect(own.roof?.expectedKickers).toBeCloseTo(suited.expectedKickers, 6);
          } else expect(own.roof?.expectedKickers).toBeGreaterThan(suited.expectedKickers - 1e-6);
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
    expect(told).toBeGreaterThan(100);
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
        const slates = slatesOf(bins);
        const onPiles = Array.from({ length: one.length + 1 }, (_, index) => ({
          palletId: 'A',
          pile: index + 1,
          bins: binsFromPairs(
            slates
              .filter((slate) => pileOf(slate, one) === index + 1)
              .map((slate) => [Math.round(slate * 100), 1])
          )
        }));
        const { recheck, slatesToRecheck } = regradeAdvice(
          gradeFigures(ground),
          one,
          other,
          onPiles
        );
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
