import * as fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import {
  type Plan,
  type PlanRequest,
  checkPlan,
  planByRule,
  planCourses
} from '$lib/engine/courses';
import { largestRemainder } from '$lib/engine/grading';
import { rounds } from '../support/rounds.ts';
import { planRequests } from './courses-cases.ts';
import { ruleOptimum } from './rule-brute-force.ts';
import { solveRule } from './rule-milp.ts';

/** Requests in which courses of one height meet at a hip or valley now and then. */
function withMeetings(requests: fc.Arbitrary<PlanRequest>): fc.Arbitrary<PlanRequest> {
  return fc
    .tuple(
      requests,
      fc.uniqueArray(fc.constantFrom<number[]>(0, 100, 200, 300, 400), { maxLength: 3 })
    )
    .map(([request, heights]) => ({
      ...request,
      courses: request.courses.map((course) =>
        heights.includes(course.heightMm) ? { ...course, meets: true as const } : course
      )
    }));
}

/** The same with a stock that is enough by a few slates, shared out as it was. */
function withTightStock(requests: fc.Arbitrary<PlanRequest>): fc.Arbitrary<PlanRequest> {
  return fc.tuple(requests, fc.integer({ min: 0, max: 3 })).map(([request, more]) => {
    const runs = request.courses.flatMap((course) => course.runs);
    const needed = runs.reduce((sum, run) => sum + run.slates, 0) + more;
    const shares = largestRemainder(
      request.piles.map(({ slates }) => slates + 1),
      needed
    );
    return {
      ...request,
      piles: request.piles.map((pile, index) => ({
        ...pile,
        slates: shares[index] + pile.reservedSlates,
        slateAndAHalves: 100
      }))
    };
  });
}

interface Seen {
  readonly [kind: string]: number;
}

/** The plan by the rule of a request is what laying it in every way finds; says what kind it was. */
function expectBestByRule(request: PlanRequest): string {
  const plan = planByRule(request);
  const best = ruleOptimum(request);
  if (!best) {
    // Nothing fits in this order of the slopes: what then holds is what every order gives.
    expect(plan).toEqual(planCourses(request));
    return plan.status === 'short' ? 'short' : 'otherOrder';
  }
  if (plan.status === 'short') throw new Error('there is a plan');
  expect(checkPlan(request, plan)).toEqual([]);
  if (plan.courses.every(({ parts }) => parts.length === 0)) return 'empty';
  expect({
    thousandths: plan.objective / 1e6,
    pieces: plan.piles.map(({ slates, slateAndAHalves }) => slates + slateAndAHalves),
    offCourses: plan.rule?.offCourses,
    changesInCourses: plan.changeovers,
    isApart: plan.changesApart === true
  }).toEqual({
    thousandths: best.thousandths,
    pieces: best.pieces,
    offCourses: best.offCourses,
    changesInCourses: best.changesInCourses,
    isApart: best.changesWhereSlopesMeet > 0
  });
  if (best.changesWhereSlopesMeet > 0) return 'whereSlopesMeet';
  if (best.changesInCourses > 0) return 'inCourses';
  if (best.changesInHeights > 0) return 'inHeights';
  return best.offCourses > 1 ? 'farOff' : 'whole';
}

function countKinds(requests: fc.Arbitrary<PlanRequest>, seed: number, numRuns: number): Seen {
  const seen: Record<string, number> = {};
  fc.assert(
    fc.property(requests, (request) => {
      const kind = expectBestByRule(request);
      seen[kind] = (seen[kind] ?? 0) + 1;
    }),
    { seed, numRuns }
  );
  return seen;
}

const small = withMeetings(
  planRequests({ slopes: 3, coursesPerSlope: 3, runsPerCourse: 2, slatesPerRun: 2, piles: 4 })
);

describe('the plan by the rule is exact', () => {
  it('agrees with laying small roofs in every way, in all that is compared', () => {
    const seen = countKinds(small, 1717, rounds(400, 6000));
    expect(seen.whole).toBeGreaterThan(rounds(200, 3000));
    expect(seen.short).toBeGreaterThan(rounds(100, 1500));
    expect(seen.farOff).toBeGreaterThan(rounds(5, 100));
  });

  it('agrees where the stock is so tight that heights and courses are divided', () => {
    const tight = withTightStock(small);
    const seen = countKinds(tight, 1718, rounds(300, 4000));
    expect(seen.inHeights).toBeGreaterThan(rounds(6, 100));
    expect(seen.inCourses).toBeGreaterThan(rounds(20, 350));
    expect(seen.whereSlopesMeet).toBeGreaterThan(rounds(6, 100));
  });

  it('agrees with HiGHS on medium roofs whose heights are of one pile each', async () => {
    const highs = await loadHighs();
    const seen = { whole: 0, divided: 0, farOff: 0, leftOut: 0 };
    const medium = planRequests({
      ...{ slopes: 3, coursesPerSlope: 9, runsPerCourse: 2, slatesPerRun: 12, piles: 5 }
    }).map(({ common: _common, ...request }) => request);
    for (const request of fc.sample(medium, { seed: 99, numRuns: rounds(60, 400) })) {
      const plan = planByRule(request);
      const solved = solveRule(request, highs);
      if (!solved) {
        // No plan leaves every height whole: there is none, or it divides one.
        if (plan.status === 'optimal' && plan.joints > 0) expect(heightsAreWhole(plan)).toBe(false);
        seen.divided++;
        continue;
      }
      if (plan.status === 'short') throw new Error('there is a plan');
      expect(heightsAreWhole(plan)).toBe(true);
      expect({ offCourses: plan.rule?.offCourses, thousandths: plan.objective / 1e6 }).toEqual({
        offCourses: solved.offCourses,
        thousandths: solved.thousandths
      });
      seen.whole++;
      if (solved.offCourses > 1) seen.farOff++;
      if (solved.pilesLeftOut > 0) seen.leftOut++;
    }
    expect(seen.whole).toBeGreaterThan(rounds(25, 200));
    expect(seen.divided).toBeGreaterThan(rounds(5, 40));
  }, 120_000);
});

/** Whether all that lies at one height is of one pile. */
function heightsAreWhole({ courses }: Plan): boolean {
  const piles = new Map<number, Set<number>>();
  for (const { heightMm, parts } of courses)
    for (const { pile } of parts)
      piles.set(heightMm, (piles.get(heightMm) ?? new Set<number>()).add(pile));
  return [...piles.values()].every(({ size }) => size === 1);
}
