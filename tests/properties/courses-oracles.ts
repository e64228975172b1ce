import type loadHighs from 'highs';
import { expect } from 'vitest';
import { type PlanRequest, checkPlan, planCourses } from '$lib/engine/courses';
import { bruteForceOptimum } from './courses-brute-force.ts';
import { milpOf } from './courses-milp.ts';

type Highs = Awaited<ReturnType<typeof loadHighs>>;
type PlanOrShort = ReturnType<typeof planCourses>;

const BILLIONTHS_PER_THOUSANDTH = 1e6;

/** The plan of a request is what trying everything finds, or there is none; gives it. */
export function expectBest(request: PlanRequest): PlanOrShort {
  const plan = planCourses(request);
  const best = bruteForceOptimum(request);
  if (plan.status === 'short') {
    expect(best).toBeUndefined();
    return plan;
  }
  expect(checkPlan(request, plan)).toEqual([]);
  expect({
    thousandths: plan.objective / BILLIONTHS_PER_THOUSANDTH,
    changeovers: plan.changeovers,
    pieces: plan.piles.map((pile) => pile.slates + pile.slateAndAHalves)
  }).toEqual(best);
  return plan;
}

/** The plan of a request is as good as the solver's, or the solver finds none either; gives it. */
export function expectAsSolved(request: PlanRequest, highs: Highs): PlanOrShort {
  const plan = planCourses(request);
  const model = milpOf(request);
  const solved = model && highs.solve(model.lp, { mip_rel_gap: 0, output_flag: false });
  if (plan.status === 'short') {
    if (solved) expect(solved.Status).toBe('Infeasible');
    return plan;
  }
  expect(checkPlan(request, plan)).toEqual([]);
  expect(solved?.Status).toBe('Optimal');
  expect(plan.objective / BILLIONTHS_PER_THOUSANDTH).toBeCloseTo(
    solved!.ObjectiveValue + model!.constant,
    5
  );
  return plan;
}
