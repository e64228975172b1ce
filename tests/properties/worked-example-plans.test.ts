import { describe, expect, it } from 'vitest';
import { type Plan, checkPlan } from '$lib/engine/courses';
import { exampleEvents } from '$lib/example';
import { gradesOf, planRequestOf, settingsOf, tallyPallets } from '$lib/job';
import { createPilesAsSorted, heldRiskOf, roofPlans, runOutChances } from '$lib/job/sorted';
import { EMPTY_VIEW, foldAll, readEvent } from '$lib/journal';

const events = exampleEvents({
  jobId: '018f0000-0000-7000-8000-00000000000a',
  deviceId: '018f0000-0000-7000-8000-00000000000b',
  endsAt: Date.UTC(2026, 2, 3, 16, 0),
  randomHex: () => '0123456789abcdef'
});
const view = foldAll(events.map(readEvent), EMPTY_VIEW);
const ground = planRequestOf(view, (stock) => createPilesAsSorted()(view, stock).bins);
if (!ground.ok) throw new Error('the worked example has a plan');
const limit = settingsOf(view).runOutRisk;
const risk = heldRiskOf(ground, tallyPallets(view), gradesOf(view), limit);
if (!risk) throw new Error('the worked example is measured');
const plans = roofPlans(ground.request, risk);
const planOf = (way: 'byRule' | 'mostEven'): Plan => {
  const plan = plans[way];
  if (plan.status !== 'optimal') throw new Error('the worked example has slates enough');
  return plan;
};
const likeliest = (plan: Plan): number =>
  Math.max(...runOutChances(plan, risk.estimates, risk.breakages).map(({ chance }) => chance));

describe('the worked example by the rule and as even as can be', () => {
  it('is sound both ways, and lays the same roof', () => {
    for (const way of ['byRule', 'mostEven'] as const) {
      const plan = planOf(way);
      expect(checkPlan(ground.request, plan)).toEqual([]);
      const laid = plan.piles.reduce((sum, { slates }) => sum + slates, 0);
      const wanted = ground.request.courses.flatMap(({ runs }) => runs);
      expect(laid).toBe(wanted.reduce((sum, { slates }) => sum + slates, 0));
    }
  });

  it('holds every pile to the limit by the rule alone, at the price of some kickers', () => {
    expect(limit).toBe(0.1);
    expect(plans.heldUnder).toBe(limit);
    expect(likeliest(planOf('byRule'))).toBeLessThanOrEqual(limit);
    expect(likeliest(planOf('mostEven'))).toBeGreaterThan(limit);
    expect(planOf('byRule').objective).toBeGreaterThan(planOf('mostEven').objective);
  });

  it('uses every pile by the rule, each within a course of its share of what may be laid', () => {
    const { piles } = planOf('byRule');
    const may = ground.request.piles.map(
      ({ slates, reservedSlates }, pile) => slates - reservedSlates - plans.raisedBy[pile]
    );
    const all = may.reduce((sum, slates) => sum + slates, 0);
    const needed = piles.reduce((sum, { slates }) => sum + slates, 0);
    const atOneHeight = Math.max(
      ...ground.request.courses.map(({ heightMm }) =>
        ground.request.courses
          .filter((course) => Math.abs(course.heightMm - heightMm) < 0.01)
          .flatMap(({ runs }) => runs)
          .reduce((sum, { slates }) => sum + slates, 0)
      )
    );
    let [below, share] = [0, 0];
    for (const [index, { slates }] of piles.entries()) {
      expect(slates).toBeGreaterThan(0);
      below += slates;
      share += (needed * may[index]) / all;
      expect(Math.abs(below - share)).toBeLessThanOrEqual(
        atOneHeight * (planOf('byRule').rule?.offCourses ?? 0)
      );
    }
    expect(planOf('byRule').rule?.offCourses).toBe(1);
  });
});
