import { describe, expect, it } from 'vitest';
import { createRandom } from '../random.ts';
import { binsFromPairs } from '../thickness/index.ts';
import { kickChances } from './kick-chances.ts';
import type { Plan, PlanRequest } from './plan-types.ts';
import { planCourses } from './planner.ts';
import { type SimulationRequest, createSimulation } from './simulate.ts';
import { createTally } from './simulation-tally.ts';

const thick = binsFromPairs([
  [700, 6],
  [800, 6]
]);
const thin = binsFromPairs([
  [400, 6],
  [500, 6]
]);

const plannedFor: PlanRequest = {
  courses: [1, 2, 3, 4].map((course) => ({
    slopeId: 'south',
    course,
    heightMm: course * 200,
    runs: [{ slates: 5, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false }]
  })),
  piles: [12, 12].map((slates) => ({
    slates,
    slateAndAHalves: 0,
    reservedSlates: 0,
    reservedSlateAndAHalves: 0
  })),
  kicks: kickChances([thick, thin], 0.5)
};

const request: SimulationRequest = Object.freeze({
  plan: planCourses(plannedFor) as Plan,
  courses: plannedFor.courses,
  piles: [thick, thin],
  stocks: plannedFor.piles,
  kickAllowanceMm: 0.5
});

describe('createSimulation', () => {
  it('has an exact expectation and nothing simulated before its first step', () => {
    const { times, planned, ...figures } = createSimulation(request, createRandom(1)).summary();
    expect(times).toBe(0);
    expect(planned).toMatchObject({ mean: 0, sd: 0, standardError: 0, worstOfEachRoof: 0 });
    expect(planned).not.toHaveProperty('worstCourse');
    // 16 joints, each with chance 2 × 6 × 6 / (12 × 11)
    expect(figures.expectedKickers).toBeCloseTo((16 * 72) / 132, 12);
    expect(figures.expectedKickers).toBeCloseTo(request.plan.kickers, 7);
  });

  it('finds the expected kickers within four standard errors, planned and unsorted', () => {
    const simulation = createSimulation(request, createRandom(2));
    simulation.step(4000);
    const { planned, unsorted, expectedKickers, expectedKickersUnsorted } = simulation.summary();
    expect(Math.abs(planned.mean - expectedKickers)).toBeLessThan(4 * planned.standardError);
    expect(Math.abs(unsorted.mean - expectedKickersUnsorted)).toBeLessThan(
      4 * unsorted.standardError
    );
    expect(planned.distribution.reduce((sum, { roofs }) => sum + roofs, 0)).toBe(4000);
  });

  it('gives the same summary for the same seed, however it is stepped', () => {
    const once = createSimulation(
      { ...request, hand: { sdMm: 0.7, source: 'assumed' } },
      createRandom(3)
    );
    const often = createSimulation(
      { ...request, hand: { sdMm: 0.7, source: 'assumed' } },
      createRandom(3)
    );
    once.step(30);
    for (let step = 0; step < 3; step++) often.step(10);
    expect(often.summary()).toEqual(once.summary());
  });

  it('kicks never where every slate is the same, and always where none is within the allowance', () => {
    const same = binsFromPairs([[600, 1]]);
    const even = createSimulation({ ...request, piles: [same, same] }, createRandom(4));
    even.step(5);
    expect(even.summary().planned).toMatchObject({ mean: 0, high: 0 });
    const all = binsFromPairs(Array.from({ length: 12 }, (_bin, index) => [300 + 100 * index, 1]));
    const uneven = createSimulation({ ...request, piles: [all, all] }, createRandom(4));
    uneven.step(5);
    expect(uneven.summary().planned).toMatchObject({ mean: 16, low: 16, sd: 0, per100Joints: 100 });
  });

  it('grades by hand as well as by gauge with no error, and worse with a large one', () => {
    const gauged = { ...request, kickAllowanceMm: 1.5 };
    const exact = createSimulation(
      { ...gauged, hand: { sdMm: 0, source: 'measured' } },
      createRandom(5)
    );
    exact.step(20);
    expect(exact.summary().byHand).toMatchObject({ mean: 0, source: 'measured' });
    const rough = createSimulation(
      { ...gauged, hand: { sdMm: 3, source: 'assumed' } },
      createRandom(5)
    );
    rough.step(20);
    expect(rough.summary().byHand!.mean).toBeGreaterThan(1);
    expect(rough.summary().planned.mean).toBe(0);
  });

  it('puts what feels thickest on pile 1, though piles differ in size', () => {
    const [first, second] = plannedFor.piles;
    const uneven: PlanRequest = {
      ...plannedFor,
      piles: [
        { ...first, slates: 15 },
        { ...second, slates: 5 }
      ]
    };
    const simulation = createSimulation(
      {
        ...request,
        plan: planCourses(uneven) as Plan,
        stocks: uneven.piles,
        kickAllowanceMm: 1.5,
        hand: { sdMm: 0, source: 'measured' }
      },
      createRandom(7)
    );
    simulation.step(10);
    expect(simulation.summary().byHand!.mean).toBe(0);
  });

  it('deals slate-and-a-halves of a common stock from that stock', () => {
    const wide: PlanRequest = {
      ...plannedFor,
      courses: plannedFor.courses.map((course) => ({
        ...course,
        runs: [{ slates: 4, startsWithSlateAndAHalf: true, endsWithSlateAndAHalf: false }]
      })),
      common: { slateAndAHalves: 4, reservedSlateAndAHalves: 0 },
      kicks: kickChances([thick, thin], 2, binsFromPairs([[2000, 4]]))
    };
    const plan = planCourses(wide) as Plan;
    expect(plan.kickers).toBe(4);
    const simulation = createSimulation(
      {
        ...request,
        plan,
        courses: wide.courses,
        kickAllowanceMm: 2,
        common: { bins: binsFromPairs([[2000, 1]]), slateAndAHalves: 4 }
      },
      createRandom(6)
    );
    simulation.step(3);
    expect(simulation.summary()).toMatchObject({ expectedKickers: 4, planned: { mean: 4, sd: 0 } });
  });

  it('refuses piles without spread, plans for other courses and stocks below the plan', () => {
    const make = (change: Partial<SimulationRequest>) => () =>
      createSimulation({ ...request, ...change }, createRandom(1));
    expect(make({ piles: [thick, binsFromPairs([])] })).toThrow(/no spread/);
    expect(make({ piles: [thick] })).toThrow(/1 spreads/);
    expect(make({ courses: plannedFor.courses.slice(1) })).toThrow(/other courses/);
    expect(make({ stocks: request.stocks.map((stock) => ({ ...stock, slates: 3 })) })).toThrow(
      /uses more/
    );
    expect(make({ kickAllowanceMm: -1 })).toThrow(/allowance/);
    expect(make({ hand: { sdMm: -1, source: 'assumed' } })).toThrow(/SD/);
    expect(() => createSimulation(request, createRandom(1)).step(0.5)).toThrow(/whole/);
  });
});

describe('createTally', () => {
  it('gives mean, spread, quantiles of type 7 and the worst course of frozen roofs', () => {
    const tally = createTally(request.plan.courses);
    for (const kickers of [[0], [1, 1], [2, 2, 2], [3, 3, 3, 3, 0]]) {
      for (const course of kickers) tally.kick(course);
      tally.endRoof();
    }
    expect(tally.result(100)).toMatchObject({
      mean: 2.75,
      median: 2.5,
      low: 1.15,
      worstOfEachRoof: 2.5,
      worstCourse: { course: 4, meanKickers: 1 },
      distribution: [1, 2, 3, 5].map((count) => ({ kickers: count, roofs: 1 }))
    });
    expect(tally.result(100).high).toBeCloseTo(4.7, 12);
    expect(tally.result(100).sd).toBeCloseTo(1.707825, 6);
  });
});
