import loadHighs from 'highs';
import { describe, expect, it } from 'vitest';
import { type Plan, checkPlan } from '$lib/engine/courses';
import { exampleEvents } from '$lib/example';
import { gradesOf, planRequestOf, settingsOf, tallyPallets } from '$lib/job';
import { createPilesAsSorted, heldRiskOf, roofPlans, runOutChances } from '$lib/job/sorted';
import { reservesWithinRisk } from '$lib/engine/courses/risk';
import { EMPTY_VIEW, foldAll, readEvent } from '$lib/journal';
import { expectAsSolved } from './courses-oracles.ts';

const events = exampleEvents({
  jobId: '018f0000-0000-7000-8000-00000000000a',
  deviceId: '018f0000-0000-7000-8000-00000000000b',
  endsAt: Date.UTC(2026, 2, 3, 16, 0),
  randomHex: () => '0123456789abcdef'
});
/** The plans of the worked example, as it is or with its undereave slates ordered as an article. */
function plansOf(undereaveOrdered: boolean) {
  const view = foldAll(
    events.map((event) =>
      readEvent(
        event.type === 'jobSettingsSet'
          ? { ...event, body: { ...event.body, undereaveOrdered } }
          : event
      )
    ),
    EMPTY_VIEW
  );
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
  return { ground, limit, risk, plans, planOf, likeliest };
}
const cut = plansOf(false);
const ordered = plansOf(true);

const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, one) => sum + one, 0);
const needed = sumOf(
  cut.ground.request.courses.flatMap(({ runs }) => runs).map(({ slates }) => slates)
);

describe('the worked example by the rule and as even as can be', () => {
  it('is sound both ways, and lays the same roof', () => {
    for (const { ground, planOf } of [cut, ordered])
      for (const way of ['byRule', 'mostEven'] as const) {
        const plan = planOf(way);
        expect(checkPlan(ground.request, plan)).toEqual([]);
        expect(sumOf(plan.piles.map(({ slates }) => slates))).toBe(needed);
      }
  });

  it('is as even as a general solver finds, with the undereave slates kept back', async () => {
    const highs = await loadHighs();
    const thousandths = (chance: number): number => Math.round(chance * 1000) / 1000;
    for (const { ground } of [cut, ordered]) {
      const { within, between } = ground.request.kicks;
      const kicks = {
        within: within.map(thousandths),
        between: between.map((row) => row.map(thousandths))
      };
      expect(expectAsSolved({ ...ground.request, kicks }, highs).status).toBe('optimal');
    }
  }, 120_000);

  it('keeps the undereave slates of both slopes back, from the thickest pile', () => {
    const { left, request, undereave } = cut.ground;
    const row = cut.ground.roof.slopes.map(({ totals }) => totals.undereaveSlates);
    expect(undereave.map(({ slates }) => slates)).toEqual(row);
    const aside = sumOf(undereave.map(({ fromSetAside }) => fromSetAside));
    expect(left[0].slates - request.piles[0].slates).toBe(sumOf(row) - aside);
    expect(request.piles.slice(1)).toEqual(left.slice(1));
    expect(ordered.ground.request.piles).toEqual(ordered.ground.left);
  });

  it('holds every pile to the limit where the undereave slates are ordered, at the price of some kickers', () => {
    const { limit, plans, planOf, likeliest } = ordered;
    expect(limit).toBe(0.1);
    expect(plans.heldUnder).toBe(limit);
    expect(likeliest(planOf('byRule'))).toBeLessThanOrEqual(limit);
    expect(likeliest(planOf('mostEven'))).toBeGreaterThan(limit);
    expect(planOf('byRule').objective).toBeGreaterThan(planOf('mostEven').objective);
  });

  it('cannot hold it where they are cut from the piles, whatever the plan, and says so', () => {
    const { ground, limit, risk, plans, likeliest, planOf } = cut;
    const raisedBy = reservesWithinRisk(
      ground.request.piles,
      risk.estimates,
      limit,
      risk.breakages
    );
    const may = ground.request.piles.map(
      ({ slates, reservedSlates }, pile) => slates - reservedSlates - raisedBy[pile]
    );
    expect(sumOf(may)).toBeLessThan(needed);
    expect(plans.heldUnder).toBeUndefined();
    expect(likeliest(planOf('byRule'))).toBeGreaterThan(limit);
    expect(likeliest(planOf('byRule'))).toBeLessThan(likeliest(planOf('mostEven')));
  });

  it('uses every pile by the rule, each within a course of its share of what may be laid', () => {
    for (const { ground, plans, planOf } of [cut, ordered]) {
      const { piles } = planOf('byRule');
      const may = ground.request.piles.map(
        ({ slates, reservedSlates }, pile) => slates - reservedSlates - plans.raisedBy[pile]
      );
      const atOneHeight = Math.max(
        ...ground.request.courses.map(({ heightMm }) =>
          sumOf(
            ground.request.courses
              .filter((course) => Math.abs(course.heightMm - heightMm) < 0.01)
              .flatMap(({ runs }) => runs)
              .map(({ slates }) => slates)
          )
        )
      );
      let [below, share] = [0, 0];
      for (const [index, { slates }] of piles.entries()) {
        expect(slates).toBeGreaterThan(0);
        below += slates;
        share += (needed * may[index]) / sumOf(may);
        expect(Math.abs(below - share)).toBeLessThanOrEqual(
          atOneHeight * (planOf('byRule').rule?.offCourses ?? 0)
        );
      }
      expect(planOf('byRule').rule?.offCourses).toBe(1);
    }
  });
});
