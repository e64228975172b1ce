import * as fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { makeSlope, slateSpec } from '$lib/engine/roof';
import { type SetStock, chooseCourses, setOutSets } from '$lib/engine/sizes';
import { rounds } from '../support/rounds.ts';
import { bestByTrying, setsMilp } from './set-choices.ts';

const LENGTHS = [500, 450, 400, 350, 300, 455, 362.4];
const base = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 75 });

const widths = fc.oneof(
  fc.integer({ min: 120, max: 290 }).map((widthMm) => ({ kind: 'one', widthMm }) as const),
  fc.constant({ kind: 'random', fromMm: 150, toMm: 280, meanMm: 200 } as const)
);

function stocksOf(most: number, width = widths): fc.Arbitrary<SetStock[]> {
  return fc
    .uniqueArray(fc.constantFrom(...LENGTHS), { minLength: 1, maxLength: most })
    .chain((lengths) =>
      fc.tuple(
        ...[...lengths]
          .sort((one, other) => other - one)
          .map((lengthMm) =>
            fc.tuple(width, fc.integer({ min: 0, max: 160 })).map(([given, stock]) => ({
              set: { id: String(lengthMm), lengthMm, widths: given },
              stock: given.kind === 'one' ? stock : stock * 200
            }))
          )
      )
    );
}

const slope = fc
  .record({
    rafterLengthMm: fc.integer({ min: 700, max: 1900 }),
    eaveWidthMm: fc.integer({ min: 1500, max: 4000 }),
    inset: fc.constantFrom(0, 0, 300, 700)
  })
  .map(({ rafterLengthMm, eaveWidthMm, inset }) => ({ rafterLengthMm, eaveWidthMm, inset }));

function slopesOf(
  given: readonly { rafterLengthMm: number; eaveWidthMm: number; inset: number }[]
) {
  return given.map(({ inset, ...measures }, index) =>
    makeSlope({
      ...measures,
      id: String(index),
      pitchDegrees: 40,
      left: { kind: inset ? 'hip' : 'verge', insetAtTopMm: inset }
    })
  );
}

describe('courses of several lengths are chosen exactly', () => {
  it('as trying every number of courses finds, gables and hips, one width and random widths', () => {
    const seen = { optimal: 0, short: 0, impossible: 0, severalSets: 0 };
    fc.assert(
      fc.property(
        fc.array(slope, { minLength: 1, maxLength: 2 }),
        stocksOf(4),
        fc.boolean(),
        (given, stocks, hasUndereave) => {
          const slopes = slopesOf(given);
          const chosen = chooseCourses(slopes, base, stocks, hasUndereave);
          const best = bestByTrying(slopes, base, stocks, 13, hasUndereave);
          seen[chosen.status]++;
          if (chosen.status !== 'optimal') {
            expect(best).toBeUndefined();
            return;
          }
          expect(chosen.objective).toBeCloseTo(best!.objective, 9);
          if (chosen.sets.filter(({ courses }) => courses > 0).length > 1) seen.severalSets++;
          for (const { used, stock } of chosen.sets) expect(used).toBeLessThanOrEqual(stock);
        }
      ),
      { seed: 21, numRuns: rounds(150, 1500) }
    );
    expect(seen.optimal).toBeGreaterThan(20);
    expect(seen.short).toBeGreaterThan(20);
    expect(seen.severalSets).toBeGreaterThan(10);
  });

  it('as trying every number finds where sets must have some courses, and not more', () => {
    const seen = { optimal: 0, held: 0 };
    const held = fc
      .tuple(
        stocksOf(3),
        fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 })), {
          minLength: 3,
          maxLength: 3
        })
      )
      .map(([stocks, limits]) =>
        stocks.map((one, set) => {
          const [least, more] = limits[set];
          return { ...one, stock: 3 * one.stock, least, ...(more < 3 && { most: least + more }) };
        })
      );
    fc.assert(
      fc.property(fc.array(slope, { minLength: 1, maxLength: 2 }), held, (given, stocks) => {
        const slopes = slopesOf(given);
        const chosen = chooseCourses(slopes, base, stocks);
        const best = bestByTrying(slopes, base, stocks, 18);
        if (chosen.status !== 'optimal') {
          expect(best).toBeUndefined();
          return;
        }
        seen.optimal++;
        expect(chosen.objective).toBeCloseTo(best!.objective, 9);
        for (const [set, { courses }] of chosen.sets.entries()) {
          expect(courses).toBeGreaterThanOrEqual(stocks[set].least);
          expect(courses).toBeLessThanOrEqual(stocks[set].most ?? Infinity);
        }
        const free = chooseCourses(
          slopes,
          base,
          stocks.map(({ set, stock }) => ({ set, stock }))
        );
        if (free.status === 'optimal' && free.objective < chosen.objective - 1e-9) seen.held++;
      }),
      { seed: 4, numRuns: rounds(200, 1500) }
    );
    expect(seen.optimal).toBeGreaterThan(20);
    expect(seen.held).toBeGreaterThan(5);
  });

  it('as a general solver finds on rafters of 15 to 40 courses', async () => {
    const highs = await loadHighs();
    const oneWidth = fc
      .integer({ min: 150, max: 290 })
      .map((widthMm) => ({ kind: 'one', widthMm }) as const);
    let optimal = 0;
    const cases = fc.sample(
      fc.tuple(
        fc.integer({ min: 3000, max: 7000 }),
        stocksOf(6, oneWidth as typeof widths),
        fc.integer({ min: 2, max: 6 })
      ),
      { seed: 2, numRuns: rounds(12, 100) }
    );
    for (const [at, [rafterLengthMm, scarce, plenty]] of cases.entries()) {
      const hasUndereave = at % 2 === 1;
      const stocks = scarce.map(({ set, stock }) => ({ set, stock: stock * plenty + 1 }));
      const [only] = slopesOf([{ rafterLengthMm, eaveWidthMm: 5000, inset: 0 }]);
      const chosen = chooseCourses([only], base, stocks, hasUndereave);
      const solved = highs.solve(setsMilp(only, base, stocks, hasUndereave), {
        mip_rel_gap: 0,
        output_flag: false
      });
      if (chosen.status !== 'optimal') {
        expect(solved.Status).toBe('Infeasible');
        continue;
      }
      optimal++;
      expect(solved.Status).toBe('Optimal');
      expect(chosen.objective).toBeCloseTo(solved.ObjectiveValue, 6);
    }
    expect(optimal).toBeGreaterThan(4);
  });

  it('every choice sets out: rafter whole, no headlap below the asked, no margin above the one below', () => {
    let laid = 0;
    fc.assert(
      fc.property(fc.integer({ min: 2500, max: 8000 }), stocksOf(5), (rafterLengthMm, scarce) => {
        const stocks = scarce.map(({ set, stock }) => ({ set, stock: stock * 20 + 4000 }));
        const [only] = slopesOf([{ rafterLengthMm, eaveWidthMm: 3000, inset: 0 }]);
        const chosen = chooseCourses([only], base, stocks);
        if (chosen.status !== 'optimal') return;
        const { courses, headlapMm } = setOutSets(only, base, chosen.sets);
        const full = courses.filter(({ kind }) => kind === 'full');
        expect(full.at(-1)!.battenMm).toBeCloseTo(rafterLengthMm - only.ridgeGapMm, 6);
        expect(headlapMm).toBeGreaterThanOrEqual(75);
        for (const [index, course] of full.entries()) {
          if (index >= 2) expect(course.headlapMm).toBeGreaterThanOrEqual(headlapMm - 1e-6);
          if (index >= 1)
            expect(course.marginMm).toBeLessThanOrEqual(full[index - 1].marginMm + 1e-6);
        }
        laid++;
      }),
      { seed: 5, numRuns: rounds(40, 400) }
    );
    expect(laid).toBeGreaterThan(20);
  });
});
