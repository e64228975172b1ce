/**
 * The plan by the rule against the simplest rival, as a slater does it on the back of a slate: share the
 * roof out among the piles in proportion, thickest first, and round every change to a whole course.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlanRequest, planByRule } from '$lib/engine/courses';
import { roofPlans, runOutChances } from '$lib/engine/courses/risk';
import { isLong, report, rounds } from '../support/rounds.ts';

/** A roof of courses at each height, and piles that hold it with a little to spare. */
const roofs = fc
  .record({
    slopes: fc.integer({ min: 1, max: 3 }),
    courses: fc.array(fc.integer({ min: 12, max: 40 }), { minLength: 8, maxLength: 30 }),
    weights: fc.array(fc.integer({ min: 5, max: 20 }), { minLength: 2, maxLength: 5 }),
    spare: fc.integer({ min: 2, max: 15 }),
    within: fc.array(fc.integer({ min: 5, max: 200 }), { minLength: 5, maxLength: 5 }),
    doubts: fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 5, maxLength: 5 })
  })
  .map(({ slopes, courses, weights, spare, within, doubts }) => {
    const needed = slopes * courses.reduce((sum, slates) => sum + slates, 0);
    const weight = weights.reduce((sum, one) => sum + one, 0);
    const piles = weights.map((one) => {
      const slates = Math.ceil((needed * (1 + spare / 100) * one) / weight);
      const reservedSlates = Math.floor(slates * 0.01);
      return { slates, slateAndAHalves: 0, reservedSlates, reservedSlateAndAHalves: 0 };
    });
    const request: PlanRequest = {
      courses: Array.from({ length: slopes }, (_slope, slope) =>
        courses.map((slates, index) => ({
          ...{ slopeId: `slope ${slope}`, course: index + 1, heightMm: 200 * index },
          runs: [{ slates, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false }]
        }))
      ).flat(),
      piles,
      kicks: {
        within: piles.map((_pile, pile) => within[pile] / 1000),
        between: piles.map(() => piles.map(() => 0.4))
      }
    };
    const estimates = piles.map(({ slates }, pile) => ({
      meanSlates: slates,
      sdSlates: (slates * doubts[pile]) / 1000
    }));
    return { request, estimates };
  });

/** What the rival lays: the slates and joints of each pile, whole heights of courses from the eaves up. */
function layByTrade({ courses, piles, kicks }: PlanRequest) {
  const heights = [...new Set(courses.map(({ heightMm }) => heightMm))].sort((a, b) => a - b);
  const of = (height: number) => {
    const here = courses.filter(({ heightMm }) => heightMm === height);
    const slates = here.reduce((sum, { runs }) => sum + runs[0].slates, 0);
    return { slates, joints: slates - here.length };
  };
  const rows = heights.map(of);
  const below = [0];
  for (const { slates } of rows) below.push(below[below.length - 1] + slates);
  const needed = below[below.length - 1];
  const may = piles.map(({ slates, reservedSlates }) => slates - reservedSlates);
  const all = may.reduce((sum, slates) => sum + slates, 0);
  let share = 0;
  let from = 0;
  const laid = may.map((slates) => {
    share += slates;
    const target = (needed * share) / all;
    const off = below.map((at) => Math.abs(at - target));
    const to = Math.max(from, off.indexOf(Math.min(...off)));
    const own = rows.slice(from, to);
    from = to;
    return {
      slates: own.reduce((sum, row) => sum + row.slates, 0),
      joints: own.reduce((sum, row) => sum + row.joints, 0)
    };
  });
  return {
    slates: laid.map(({ slates }) => slates),
    kickers: laid.reduce((sum, { joints }, pile) => sum + joints * kicks.within[pile], 0),
    fits: laid.every(({ slates }, pile) => slates <= may[pile]),
    leavesOut: laid.some(({ slates }) => slates === 0)
  };
}

const ROUNDS = rounds(200, 4000);

describe('the plan by the rule against sharing out in proportion and rounding', () => {
  it('never has more kickers where the rival fits, fewer now and then, and fits where it does not', () => {
    const seen = { both: 0, fewer: 0, onlyRule: 0, neither: 0 };
    const kickers = { rule: 0, rival: 0 };
    fc.assert(
      fc.property(roofs, ({ request }) => {
        const rival = layByTrade(request);
        const plan = planByRule(request);
        if (!rival.fits || rival.leavesOut) {
          if (plan.status === 'optimal') seen.onlyRule++;
          else seen.neither++;
          return;
        }
        if (plan.status === 'short') throw new Error('the rival lays it');
        expect(plan.rule?.offCourses).toBe(1);
        expect(plan.kickers).toBeLessThanOrEqual(rival.kickers + 1e-6);
        seen.both++;
        if (plan.kickers < rival.kickers - 1e-6) seen.fewer++;
        kickers.rule += plan.kickers;
        kickers.rival += rival.kickers;
      }),
      { seed: 1719, numRuns: ROUNDS }
    );
    if (isLong)
      report('by the rule against the trade', {
        ...seen,
        kickersSavedPercent: (100 * (1 - kickers.rule / kickers.rival)).toFixed(1)
      });
    expect(seen.both).toBeGreaterThan(ROUNDS / 3);
    expect(seen.fewer).toBeGreaterThan(seen.both / 10);
    expect(seen.onlyRule).toBeGreaterThan(ROUNDS / 20);
  });

  it('holds the chance of running out wherever the rival does, and often where it does not', () => {
    const mostChance = 0.1;
    const seen = { both: 0, onlyRule: 0, neither: 0 };
    fc.assert(
      fc.property(roofs, ({ request, estimates }) => {
        const breakages = request.piles.map(() => 0);
        const rival = layByTrade(request);
        const plans = roofPlans(request, { estimates, mostChance, breakages });
        const plan = plans.byRule;
        if (plan.status === 'short') {
          expect(rival.fits).toBe(false);
          seen.neither++;
          return;
        }
        const likeliest = (slates: readonly number[]): number => {
          const piles = slates.map((own, pile) => ({ ...plan.piles[pile], slates: own }));
          const chances = runOutChances({ ...plan, piles }, estimates);
          return Math.max(...chances.map(({ chance }) => chance));
        };
        const isHeld = plans.heldUnder !== undefined;
        const rule = likeliest(plan.piles.map(({ slates }) => slates));
        expect(isHeld).toBe(rule <= mostChance);
        const doesRivalHold = rival.fits && likeliest(rival.slates) <= mostChance;
        if (doesRivalHold) expect(isHeld).toBe(true);
        seen[doesRivalHold ? 'both' : isHeld ? 'onlyRule' : 'neither']++;
      }),
      { seed: 1720, numRuns: ROUNDS }
    );
    if (isLong) report('chance of 1 in 10 held, by the rule and by the trade', seen);
    expect(seen.both).toBeGreaterThan(ROUNDS / 10);
    expect(seen.onlyRule).toBeGreaterThan(ROUNDS / 10);
  });
});
