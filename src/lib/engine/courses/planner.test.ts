import { describe, expect, it } from 'vitest';
import type { CourseDemand } from '../roof/index.ts';
import { checkPlan } from './plan-check.ts';
import type { KickChances, PileStock, Plan, PlanRequest } from './plan-types.ts';
import { planCourses } from './planner.ts';

const course = (
  number: number,
  slates: number,
  { slopeId = 'south', heightMm = number * 200, wide = false } = {}
): CourseDemand => ({
  slopeId,
  course: number,
  heightMm,
  runs: [{ slates, startsWithSlateAndAHalf: wide, endsWithSlateAndAHalf: false }]
});

const pile = (slates: number, reservedSlates = 0, slateAndAHalves = 0): PileStock => ({
  slates,
  slateAndAHalves,
  reservedSlates,
  reservedSlateAndAHalves: 0
});

const two: KickChances = {
  within: [0.1, 0.2],
  between: [
    [0, 0.5],
    [0.5, 0]
  ]
};

const none: KickChances = { within: [], between: [] };

const one: KickChances = { within: [0.1], between: [[0]] };

function request(
  courses: readonly CourseDemand[],
  piles: readonly PileStock[],
  kicks: KickChances = two
): PlanRequest {
  return Object.freeze({ courses: Object.freeze(courses), piles: Object.freeze(piles), kicks });
}

function planned(asked: PlanRequest): Plan {
  const result = planCourses(asked);
  if (result.status !== 'optimal') throw new Error(`short: ${JSON.stringify(result)}`);
  expect(checkPlan(asked, result)).toEqual([]);
  return result;
}

describe('planCourses: degenerate roofs', () => {
  it('gives an empty plan for no courses and for courses without pieces', () => {
    const nothing = request([], [pile(5), pile(5)]);
    expect(planned(nothing)).toMatchObject({ kickers: 0, joints: 0, per100Joints: 0, courses: [] });
    expect(planned(request([course(1, 0)], [], none)).courses[0].parts).toEqual([]);
  });

  it('counts no joint for a single slate', () => {
    expect(planned(request([course(1, 1)], [pile(1)], one))).toMatchObject({
      joints: 0,
      kickers: 0
    });
  });

  it('takes a stock that is just enough, and falls short by one when one is gone', () => {
    const courses = [course(1, 6), course(2, 6)];
    expect(planned(request(courses, [pile(12)], one)).kickers).toBe(1);
    expect(planCourses(request(courses, [pile(11)], one))).toEqual({
      status: 'short',
      missingSlates: 1,
      missingSlateAndAHalves: 0,
      missingReserve: [],
      missingCommonReserve: 0,
      mendedBy: [{ pile: 1, slates: 1, slateAndAHalves: 0 }]
    });
  });
});

describe('planCourses: the most even plan', () => {
  it('changes pile once, with a single joint between unlike slates: 2.9 kickers by hand', () => {
    const plan = planned(request([course(1, 10), course(2, 10)], [pile(12), pile(8)]));
    expect(plan.kickers).toBe(2.9); // 9 × 0.1, then 1 × 0.1 + 0.5 + 7 × 0.2
    expect(plan.objective).toBe(2_900_000_000);
    expect(plan.changeovers).toBe(1);
    expect(plan.courses[1].parts).toEqual([
      { pile: 1, slates: 2, slateAndAHalves: 0 },
      { pile: 2, slates: 8, slateAndAHalves: 0 }
    ]);
  });

  it('changes between courses where stock allows, so that no joint is unlike', () => {
    const plan = planned(request([course(1, 10), course(2, 10)], [pile(12), pile(10)]));
    expect(plan.changeovers).toBe(0);
    expect(plan.kickers).toBeCloseTo(2.7, 12);
  });

  it('leaves an uneven pile out when the other lasts', () => {
    const plan = planned(request([course(1, 10), course(2, 10)], [pile(20), pile(20)]));
    expect(plan.piles.map((use) => use.slates)).toEqual([20, 0]);
    expect(plan.piles.map((use) => use.spareSlates)).toEqual([0, 20]);
  });

  it('breaks ties by fewer changeovers, then by thicker stock lower', () => {
    const level: KickChances = {
      within: [0.1, 0.1],
      between: [
        [0, 0.1],
        [0.1, 0]
      ]
    };
    const plan = planned(request([course(1, 4), course(2, 4)], [pile(7), pile(7)], level));
    expect(plan.changeovers).toBe(0);
    expect(plan.piles.map((use) => use.slates)).toEqual([4, 4]);
  });

  it('changes pile at the same height on slopes that meet', () => {
    const courses = [1, 2, 3, 4].flatMap((number) => [
      course(number, 5, { slopeId: 'south' }),
      course(number, 5, { slopeId: 'east' })
    ]);
    const plan = planned(request(courses, [pile(20), pile(20)]));
    const pileAt = new Map<number, Set<number>>();
    for (const { heightMm, parts } of plan.courses)
      for (const part of parts)
        pileAt.set(heightMm, (pileAt.get(heightMm) ?? new Set()).add(part.pile));
    expect([...pileAt.values()].map((piles) => [...piles])).toEqual([[1], [1], [2], [2]]);
  });

  it('kicks nothing across an opening', () => {
    const split: CourseDemand = {
      ...course(1, 0),
      runs: [5, 5].map((slates) => ({
        slates,
        startsWithSlateAndAHalf: false,
        endsWithSlateAndAHalf: false
      }))
    };
    const plan = planned(request([split], [pile(5), pile(5)]));
    expect(plan).toMatchObject({ changeovers: 1, joints: 8 });
    expect(plan.kickers).toBeCloseTo(4 * 0.1 + 4 * 0.2, 12);
  });

  it('draws slate-and-a-halves from the pile that lays the end of the course', () => {
    const courses = [course(1, 4, { wide: true }), course(2, 4, { wide: true })];
    const plan = planned(request(courses, [pile(10, 0, 1), pile(10, 0, 1)]));
    expect(plan.piles.map((use) => use.slateAndAHalves)).toEqual([1, 1]);
  });

  it('prices slate-and-a-halves of a common stock with their own chance', () => {
    const asked: PlanRequest = {
      ...request([course(1, 4, { wide: true })], [pile(4)], {
        ...one,
        common: { withPile: [0.4], within: 0.6 }
      }),
      common: { slateAndAHalves: 3, reservedSlateAndAHalves: 1 }
    };
    const plan = planned(asked);
    expect(plan.kickers).toBeCloseTo(3 * 0.1 + 0.4, 12);
    expect(plan.courses[0].commonSlateAndAHalves).toBe(1);
    expect(plan.spareCommonSlateAndAHalves).toBe(1);
  });

  it('never goes back to a thicker pile on a slope laid in part', () => {
    const asked: PlanRequest = {
      ...request([course(3, 5), course(4, 5)], [pile(10), pile(10)]),
      thickestPileOfSlope: new Map([['south', 2]])
    };
    expect(planned(asked).piles.map((use) => use.slates)).toEqual([0, 10]);
  });

  it('gives the same plan whatever the order of the courses', () => {
    const courses = [course(1, 6), course(2, 7), course(3, 5)];
    const piles = [pile(8), pile(12)];
    expect(planCourses(request(courses.toReversed(), piles))).toEqual(
      planCourses(request(courses, piles))
    );
  });
});

describe('planCourses: a clear short, never a wrong plan', () => {
  it('no piles', () => {
    expect(planCourses(request([course(1, 6)], [], none))).toMatchObject({
      status: 'short',
      missingSlates: 6,
      mendedBy: []
    });
  });

  it('a pile of zero is passed over; all piles at zero are short', () => {
    expect(planned(request([course(1, 6)], [pile(0), pile(6)])).piles[1].slates).toBe(6);
    expect(planCourses(request([course(1, 6)], [pile(0), pile(0)]))).toMatchObject({
      status: 'short',
      missingSlates: 6,
      mendedBy: [
        { pile: 1, slates: 6, slateAndAHalves: 0 },
        { pile: 2, slates: 6, slateAndAHalves: 0 }
      ]
    });
  });

  it('a course wider than the whole stock', () => {
    expect(planCourses(request([course(1, 1000)], [pile(3), pile(4)]))).toMatchObject({
      status: 'short',
      missingSlates: 993
    });
  });

  it('three piles that would have to share one course, though there are slates enough', () => {
    const three: KickChances = {
      within: [0, 0, 0],
      between: [
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0]
      ]
    };
    expect(planCourses(request([course(1, 9)], [pile(3), pile(3), pile(3)], three))).toMatchObject({
      status: 'short',
      missingSlates: 0,
      mendedBy: [
        { pile: 1, slates: 3 },
        { pile: 2, slates: 3 },
        { pile: 3, slates: 3 }
      ]
    });
  });

  it('a reserve above its stock, even where another pile could lay the roof', () => {
    expect(planCourses(request([course(1, 5)], [pile(10), pile(3, 5)]))).toEqual({
      status: 'short',
      missingSlates: 0,
      missingSlateAndAHalves: 0,
      missingReserve: [{ pile: 2, slates: 2, slateAndAHalves: 0 }],
      missingCommonReserve: 0,
      mendedBy: []
    });
  });

  it('slate-and-a-halves that run out', () => {
    const courses = [course(1, 4, { wide: true }), course(2, 4, { wide: true })];
    expect(planCourses(request(courses, [pile(20, 0, 1)], one))).toMatchObject({
      status: 'short',
      missingSlates: 0,
      missingSlateAndAHalves: 1,
      mendedBy: [{ pile: 1, slates: 0, slateAndAHalves: 1 }]
    });
  });

  it('a common stock that falls short, of its need or of its own reserve', () => {
    const kicks = { ...one, common: { withPile: [0.1], within: 0.1 } };
    const asked = request([course(1, 4, { wide: true })], [pile(4)], kicks);
    const common = { slateAndAHalves: 0, reservedSlateAndAHalves: 2 };
    expect(planCourses({ ...asked, common })).toMatchObject({
      status: 'short',
      missingSlateAndAHalves: 1,
      missingCommonReserve: 2
    });
  });
});

describe('planCourses: misuse is refused', () => {
  it.each([
    ['a course given twice', [course(1, 5), course(1, 6)], /given twice/],
    [
      'a course below the one under it',
      [course(1, 5), course(2, 5, { heightMm: 100 })],
      /not above/
    ],
    ['a height that is not a number', [course(1, 5, { heightMm: Number.NaN })], /finite/],
    ['half a slate', [course(1, 5.5)], /whole/],
    ['slates below zero', [course(1, -1)], /at least 0/]
  ])('%s', (_name, courses, message) => {
    expect(() => planCourses(request(courses, [pile(50), pile(50)]))).toThrow(message);
  });

  it.each([
    ['a stock that is not whole', [pile(5.5), pile(5)], two, /whole/],
    ['a stock below zero', [pile(-5), pile(5)], two, /at least 0/],
    ['chances for other piles', [pile(5)], two, /2 chances within piles for 1 piles/],
    ['a chance above one', [pile(5)], { within: [1.1], between: [[0]] }, /give 0 to 1/],
    [
      'chances that depend on the side',
      [pile(5), pile(5)],
      {
        within: [0, 0],
        between: [
          [0, 0.2],
          [0.3, 0]
        ]
      },
      /0.2 and 0.3/
    ]
  ])('%s', (_name, piles, kicks, message) => {
    expect(() => planCourses(request([course(1, 5)], piles, kicks))).toThrow(message);
  });

  it('refuses a roof whose sums would not be exact', () => {
    expect(() => planCourses(request([course(1, 9_100_000)], [pile(1)], one))).toThrow(/too many/);
  });
});
