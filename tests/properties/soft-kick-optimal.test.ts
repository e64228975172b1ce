import * as fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { type PlanRequest, kickChances } from '$lib/engine/courses';
import { kickSoftness } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';
import { type CaseSize, planRequests } from './courses-cases.ts';
import { expectAsSolved, expectBest } from './courses-oracles.ts';
import { rounds } from '../support/rounds.ts';

/** Random roofs whose chances are those of random piles under the soft kick, in whole thousandths. */
function softRequests(size: CaseSize): fc.Arbitrary<PlanRequest> {
  const pile = fc
    .array(fc.tuple(fc.integer({ min: 0, max: 250 }), fc.integer({ min: 1, max: 9 })), {
      minLength: 1,
      maxLength: 5
    })
    .map((pairs) => pairs.map(([more, slates]): [number, number] => [more, slates]));
  const softness = fc
    .tuple(fc.constantFrom(0, 0.3, 0.5), fc.constantFrom(0, 0.05, 0.1))
    .map(([taperSdMm, gaugeSdMm]) => kickSoftness(taperSdMm, gaugeSdMm, 0.57));
  return fc
    .tuple(planRequests(size), fc.array(pile, { minLength: 5, maxLength: 5 }), softness)
    .map(([request, spreads, soft]): PlanRequest => {
      const bins = request.piles.map((_pile, at) =>
        binsFromPairs(spreads[at].map(([more, slates]) => [800 - 120 * at + more, slates]))
      );
      const whole = (chance: number) => Math.round(1000 * chance) / 1000;
      const kicks = kickChances(bins, 1, binsFromPairs(spreads[4]), soft);
      const { within, between, common } = kicks;
      return {
        ...request,
        kicks: {
          within: within.map(whole),
          between: between.map((row) => row.map(whole)),
          ...(request.common &&
            common && {
              common: { withPile: common.withPile.map(whole), within: whole(common.within) }
            })
        }
      };
    });
}

describe('the planner is exact under the soft kick', () => {
  it('agrees with trying everything on small roofs', () => {
    const seen = { optimal: 0, short: 0, dear: 0 };
    const small = softRequests({
      slopes: 2,
      coursesPerSlope: 3,
      runsPerCourse: 2,
      slatesPerRun: 3,
      piles: 4
    });
    fc.assert(
      fc.property(small, (request) => {
        const plan = expectBest(request);
        seen[plan.status]++;
        if (plan.status === 'optimal' && plan.objective > 0) seen.dear++;
      }),
      { seed: 1507, numRuns: rounds(400, 2000) }
    );
    expect(seen.dear).toBeGreaterThan(rounds(100, 500));
    expect(seen.short).toBeGreaterThan(rounds(20, 100));
  });

  it('agrees with HiGHS on medium roofs', async () => {
    const highs = await loadHighs();
    const seen = { optimal: 0, short: 0 };
    const medium = softRequests({
      slopes: 3,
      coursesPerSlope: 6,
      runsPerCourse: 2,
      slatesPerRun: 12,
      piles: 4
    });
    for (const request of fc.sample(medium, { seed: 15, numRuns: rounds(15, 200) })) {
      const plan = expectAsSolved(request, highs);
      seen[plan.status]++;
    }
    expect(seen.optimal).toBeGreaterThan(rounds(5, 50));
  }, 60_000);
});
