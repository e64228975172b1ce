import * as fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { planRequests } from './courses-cases.ts';
import { expectAsSolved, expectBest } from './courses-oracles.ts';
import { rounds } from '../support/rounds.ts';

function count(
  plan: ReturnType<typeof expectBest>,
  seen: { optimal: number; short: number; changeovers: number }
): void {
  seen[plan.status]++;
  if (plan.status === 'optimal' && plan.changeovers > 0) seen.changeovers++;
}

describe('the planner is exact', () => {
  it('agrees with trying everything on small roofs: kickers, changeovers, thicker stock lower', () => {
    const seen = { optimal: 0, short: 0, changeovers: 0 };
    const small = planRequests({
      slopes: 2,
      coursesPerSlope: 3,
      runsPerCourse: 2,
      slatesPerRun: 3,
      piles: 4
    });
    fc.assert(
      fc.property(small, (request) => count(expectBest(request), seen)),
      { seed: 20260, numRuns: rounds(1000, 4000) }
    );
    expect(seen.optimal).toBeGreaterThan(rounds(1500 / 4, 1500));
    expect(seen.short).toBeGreaterThan(rounds(300 / 4, 300));
    expect(seen.changeovers).toBeGreaterThan(rounds(500 / 4, 500));
  });

  it('agrees with trying everything where many slopes share a height', () => {
    const seen = { optimal: 0, short: 0, changeovers: 0 };
    const shared = planRequests({
      slopes: 4,
      coursesPerSlope: 2,
      runsPerCourse: 1,
      slatesPerRun: 4,
      piles: 4
    });
    fc.assert(
      fc.property(shared, (request) => count(expectBest(request), seen)),
      { seed: 4040, numRuns: rounds(400, 1600) }
    );
    expect(seen.optimal).toBeGreaterThan(rounds(150, 600));
    expect(seen.short).toBeGreaterThan(rounds(30, 120));
    expect(seen.changeovers).toBeGreaterThan(rounds(50, 200));
  });

  it('agrees with HiGHS on medium roofs, feasible or not', async () => {
    const highs = await loadHighs();
    const seen = { optimal: 0, short: 0, changeovers: 0 };
    const medium = planRequests({
      slopes: 3,
      coursesPerSlope: 6,
      runsPerCourse: 2,
      slatesPerRun: 12,
      piles: 4
    });
    for (const request of fc.sample(medium, { seed: 7, numRuns: rounds(75, 300) })) {
      count(expectAsSolved(request, highs), seen);
    }
    expect(seen.optimal).toBeGreaterThan(rounds(150 / 4, 150));
    expect(seen.short).toBeGreaterThan(rounds(20 / 4, 20));
    expect(seen.changeovers).toBeGreaterThan(rounds(50 / 4, 50));
  }, 60_000);
});
