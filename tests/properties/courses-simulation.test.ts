import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createSimulation, kickChances, planCourses, type PlanRequest } from '$lib/engine/courses';
import { createRandom } from '$lib/engine';
import { binsFromPairs, type ThicknessBins } from '$lib/engine/thickness';
import { planRequests } from './courses-cases.ts';

const TIMES = 400;
/** Chance that a normal mean strays this many standard errors: one in 500 million. */
const STANDARD_ERRORS = 6;

const someBins = fc
  .array(fc.tuple(fc.integer({ min: 400, max: 700 }), fc.integer({ min: 1, max: 20 })), {
    minLength: 2,
    maxLength: 12
  })
  .map(binsFromPairs);

/** A roof whose piles hold exactly the slates of their bins, so that expectations are exact. */
const roofs = fc
  .tuple(
    planRequests({ slopes: 2, coursesPerSlope: 5, runsPerCourse: 2, slatesPerRun: 12, piles: 3 }),
    fc.array(someBins, { minLength: 4, maxLength: 4 })
  )
  .map(([request, bins]) => {
    const piles = bins.slice(0, request.piles.length);
    const common = bins[3];
    const stocks = piles.map((_pile, index) => ({
      slates: total(piles[index]) - (request.common ? 0 : Math.min(9, total(piles[index]))),
      slateAndAHalves: request.common ? 0 : Math.min(9, total(piles[index])),
      reservedSlates: 0,
      reservedSlateAndAHalves: 0
    }));
    const priced: PlanRequest = {
      courses: request.courses,
      piles: stocks,
      kicks: kickChances(piles, 1, common),
      ...(request.common && {
        common: { slateAndAHalves: total(common), reservedSlateAndAHalves: 0 }
      })
    };
    return { request: priced, piles, common };
  });

describe('simulation', () => {
  it('agrees with the exact expectation, planned and unsorted, within its error', () => {
    let simulated = 0;
    let withKickers = 0;
    for (const { request, piles, common } of fc.sample(roofs, { seed: 11, numRuns: 200 })) {
      const plan = planCourses(request);
      if (plan.status === 'short') continue;
      const simulation = createSimulation(
        {
          plan,
          courses: request.courses,
          piles,
          stocks: request.piles,
          kickAllowanceMm: 1,
          ...(request.common && {
            common: { bins: common, slateAndAHalves: request.common.slateAndAHalves }
          })
        },
        createRandom(simulated)
      );
      simulation.step(TIMES);
      const found = simulation.summary();
      expect(found.joints).toBe(plan.joints);
      expect(found.expectedKickers).toBeCloseTo(plan.kickers, 6);
      for (const [kickers, expected] of [
        [found.planned, found.expectedKickers],
        [found.unsorted, found.expectedKickersUnsorted]
      ] as const) {
        const most = STANDARD_ERRORS * Math.max(kickers.standardError, 0.5 / TIMES);
        expect(Math.abs(kickers.mean - expected)).toBeLessThanOrEqual(most);
      }
      simulated++;
      if (found.expectedKickers > 1) withKickers++;
    }
    expect(simulated).toBeGreaterThan(80);
    expect(withKickers).toBeGreaterThan(40);
  });
});

function total(bins: ThicknessBins): number {
  return bins.counts.reduce((sum, count) => sum + count, 0);
}
