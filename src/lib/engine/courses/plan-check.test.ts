import { describe, expect, it } from 'vitest';
import type { CourseDemand } from '../roof/index.ts';
import { checkPlan } from './plan-check.ts';
import type { Plan, PlanRequest } from './plan-types.ts';
import { planCourses } from './planner.ts';

const course = (number: number): CourseDemand => ({
  slopeId: 'south',
  course: number,
  heightMm: number * 200,
  runs: [{ slates: 6, startsWithSlateAndAHalf: true, endsWithSlateAndAHalf: false }]
});

const request: PlanRequest = {
  courses: [course(1), course(2), course(3)],
  piles: [9, 9, 9].map((slates) => ({
    slates,
    slateAndAHalves: 2,
    reservedSlates: 0,
    reservedSlateAndAHalves: 0
  })),
  kicks: {
    within: [0.1, 0.1, 0.1],
    between: [
      [0, 0.4, 0.8],
      [0.4, 0, 0.4],
      [0.8, 0.4, 0]
    ]
  }
};

const plan = planCourses(request) as Plan;

/** The plan with one course changed. */
function spoilt(index: number, change: Partial<Plan['courses'][number]>): Plan {
  return { ...plan, courses: plan.courses.with(index, { ...plan.courses[index], ...change }) };
}

const rules = (broken: Plan) => new Set(checkPlan(request, broken).map((fault) => fault.rule));

describe('checkPlan', () => {
  it('finds nothing in a sound plan', () => {
    expect(plan.status).toBe('optimal');
    expect(checkPlan(request, plan)).toEqual([]);
  });

  it('finds a course left out, and one planned twice', () => {
    expect(rules({ ...plan, courses: plan.courses.slice(1) })).toContain('courses');
    expect(rules({ ...plan, courses: [...plan.courses, plan.courses[0]] })).toContain('courses');
  });

  it('finds a course with too few pieces', () => {
    const parts = [{ pile: 1, slates: 5, slateAndAHalves: 1 }];
    expect(rules(spoilt(0, { parts }))).toContain('demand');
  });

  it('finds a thicker pile above a thinner one', () => {
    const parts = [{ pile: 1, slates: 6, slateAndAHalves: 1 }];
    expect(rules(spoilt(2, { parts }))).toContain('order');
  });

  it('finds three piles in a course, and a pile that does not exist', () => {
    const three = [1, 2, 3].map((pile) => ({
      pile,
      slates: 2,
      slateAndAHalves: Number(pile === 1)
    }));
    expect(rules(spoilt(1, { parts: three }))).toContain('piles');
    expect(rules(spoilt(2, { parts: [{ pile: 4, slates: 6, slateAndAHalves: 1 }] }))).toContain(
      'piles'
    );
  });

  it('finds a stock that is overdrawn', () => {
    const lean = { ...request, piles: request.piles.with(0, { ...request.piles[0], slates: 2 }) };
    expect(checkPlan(lean, plan).map((fault) => fault.rule)).toContain('stock');
  });

  it('finds a pile out of order beside courses laid already', () => {
    const low = { slopeId: 'east', course: 1, heightMm: 0, thickestPile: 1, thinnestPile: 2 };
    const partLaid = { ...request, laid: [low] };
    expect(checkPlan(partLaid, plan).map((fault) => fault.rule)).toContain('order');
    expect(checkPlan({ ...partLaid, laidBinds: 'own-slope' }, plan)).toEqual([]);
    const high = { ...low, heightMm: 1000, thickestPile: 2, thinnestPile: 3 };
    expect(checkPlan({ ...request, laid: [high] }, plan).map((fault) => fault.rule)).toContain(
      'order'
    );
  });

  it('finds kickers, joints, changeovers and spares that do not add up', () => {
    expect(rules({ ...plan, kickers: plan.kickers + 0.01 })).toContain('figures');
    expect(rules({ ...plan, joints: plan.joints + 1 })).toContain('figures');
    expect(rules({ ...plan, changeovers: plan.changeovers + 1 })).toContain('figures');
    expect(rules(spoilt(0, { kickers: 0 }))).toContain('figures');
    const piles = plan.piles.with(0, { ...plan.piles[0], spareSlates: 99 });
    expect(rules({ ...plan, piles })).toContain('figures');
  });
});
