import { describe, expect, it } from 'vitest';
import type { CourseDemand } from '../roof/index.ts';
import type { KickChances, PlanRequest } from './plan-types.ts';
import { planCourses } from './planner.ts';
import { aCourse, aPile, aRequest, planOf } from '../../../../tests/support/course-requests.ts';

const two: KickChances = {
  within: [0.1, 0.2],
  between: [
    [0, 0.5],
    [0.5, 0]
  ]
};

const none: KickChances = { within: [], between: [] };

const one: KickChances = { within: [0.1], between: [[0]] };

describe('planCourses: degenerate roofs', () => {
  it('gives an empty plan for no courses and for courses without pieces', () => {
    const nothing = aRequest([], [aPile(5), aPile(5)], two);
    expect(planOf(nothing)).toMatchObject({ kickers: 0, joints: 0, per100Joints: 0, courses: [] });
    expect(planOf(aRequest([aCourse(1, 0)], [], none)).courses[0].parts).toEqual([]);
  });

  it('counts no joint for a single slate', () => {
    expect(planOf(aRequest([aCourse(1, 1)], [aPile(1)], one))).toMatchObject({
      joints: 0,
      kickers: 0
    });
  });

  it('takes a stock that is just enough, and falls short by one when one is gone', () => {
    const courses = [aCourse(1, 6), aCourse(2, 6)];
    expect(planOf(aRequest(courses, [aPile(12)], one)).kickers).toBe(1);
    expect(planCourses(aRequest(courses, [aPile(11)], one))).toEqual({
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
    const plan = planOf(aRequest([aCourse(1, 10), aCourse(2, 10)], [aPile(12), aPile(8)], two));
    expect(plan.kickers).toBe(2.9); // 9 × 0.1, then 1 × 0.1 + 0.5 + 7 × 0.2
    expect(plan.objective).toBe(2_900_000_000);
    expect(plan.changeovers).toBe(1);
    expect(plan.courses[1].parts).toEqual([
      { pile: 1, slates: 2, slateAndAHalves: 0 },
      { pile: 2, slates: 8, slateAndAHalves: 0 }
    ]);
  });

  it('changes between courses where stock allows, so that no joint is unlike', () => {
    const plan = planOf(aRequest([aCourse(1, 10), aCourse(2, 10)], [aPile(12), aPile(10)], two));
    expect(plan.changeovers).toBe(0);
    expect(plan.kickers).toBeCloseTo(2.7, 12);
  });

  it('leaves an uneven pile out when the other lasts', () => {
    const plan = planOf(aRequest([aCourse(1, 10), aCourse(2, 10)], [aPile(20), aPile(20)], two));
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
    const plan = planOf(aRequest([aCourse(1, 4), aCourse(2, 4)], [aPile(7), aPile(7)], level));
    expect(plan.changeovers).toBe(0);
    expect(plan.piles.map((use) => use.slates)).toEqual([4, 4]);
  });

  it('changes pile at the same height on slopes that meet', () => {
    const courses = [1, 2, 3, 4].flatMap((number) => [
      aCourse(number, 5, { slopeId: 'south' }),
      aCourse(number, 5, { slopeId: 'east' })
    ]);
    const plan = planOf(aRequest(courses, [aPile(20), aPile(20)], two));
    const pileAt = new Map<number, Set<number>>();
    for (const { heightMm, parts } of plan.courses)
      for (const part of parts)
        pileAt.set(heightMm, (pileAt.get(heightMm) ?? new Set()).add(part.pile));
    expect([...pileAt.values()].map((piles) => [...piles])).toEqual([[1], [1], [2], [2]]);
  });

  it('lays the slope first that the piles fit, whatever the slopes are called', () => {
    // 7 + 10 slates at one height, piles of 7 and 10: 6 × 0.05 + 9 × 0.05, no change in a course
    const chances: KickChances = {
      within: [0.05, 0.05],
      between: [
        [0, 0.6],
        [0.6, 0]
      ]
    };
    for (const [long, short] of ['ab', 'ba']) {
      const courses = [
        aCourse(1, 10, { slopeId: long, heightMm: 0 }),
        aCourse(1, 7, { slopeId: short, heightMm: 0 })
      ];
      const plan = planOf(aRequest(courses, [aPile(7), aPile(10)], chances));
      expect(plan.kickers).toBeCloseTo(0.75, 12);
      expect(plan.courses.map(({ slopeId }) => slopeId)).toEqual([short, long]);
    }
  });

  it('finds the plan of three piles that only one order of the slopes gives', () => {
    for (const [long, short] of ['ab', 'ba']) {
      const courses = [
        aCourse(1, 10, { slopeId: long, heightMm: 0 }),
        aCourse(1, 7, { slopeId: short, heightMm: 0 })
      ];
      const plan = planOf(aRequest(courses, [aPile(7), aPile(2), aPile(8)]));
      expect(plan.courses.map(({ parts }) => parts.map(({ pile }) => pile))).toEqual([[1], [2, 3]]);
    }
  });

  it('lays what is left of a height on either side of what is laid there', () => {
    const left = [
      aCourse(1, 5, { slopeId: 'a', heightMm: 0 }),
      aCourse(1, 4, { slopeId: 'b', heightMm: 0 }),
      aCourse(1, 3, { slopeId: 'd', heightMm: 0 })
    ];
    const asked: PlanRequest = {
      ...aRequest(left, [aPile(5), aPile(4), aPile(3)]),
      laid: [{ slopeId: 'c', course: 1, heightMm: 0, thickestPile: 1, thinnestPile: 2 }]
    };
    const piles = planOf(asked).courses.map(({ slopeId, parts }) => [slopeId, parts[0].pile]);
    expect(piles).toEqual([
      ['a', 1],
      ['b', 2],
      ['d', 3]
    ]);
    // one course could only be a second one of piles 1 and 2
    const second = { ...asked, courses: [left[0]], piles: [aPile(3), aPile(2), aPile(0)] };
    expect(planCourses(second).status).toBe('short');
  });

  it('kicks nothing across an opening', () => {
    const split: CourseDemand = {
      ...aCourse(1, 0),
      runs: [5, 5].map((slates) => ({
        slates,
        startsWithSlateAndAHalf: false,
        endsWithSlateAndAHalf: false
      }))
    };
    const plan = planOf(aRequest([split], [aPile(5), aPile(5)], two));
    expect(plan).toMatchObject({ changeovers: 1, joints: 8 });
    expect(plan.kickers).toBeCloseTo(4 * 0.1 + 4 * 0.2, 12);
  });

  it('draws slate-and-a-halves from the pile that lays the end of the course', () => {
    const courses = [aCourse(1, 4, { wide: true }), aCourse(2, 4, { wide: true })];
    const plan = planOf(aRequest(courses, [aPile(10, 0, 1), aPile(10, 0, 1)]));
    expect(plan.piles.map((use) => use.slateAndAHalves)).toEqual([1, 1]);
  });

  it('prices slate-and-a-halves of a common stock with their own chance', () => {
    const asked: PlanRequest = {
      ...aRequest([aCourse(1, 4, { wide: true })], [aPile(4)], {
        ...one,
        common: { withPile: [0.4], within: 0.6 }
      }),
      common: { slateAndAHalves: 3, reservedSlateAndAHalves: 1 }
    };
    const plan = planOf(asked);
    expect(plan.kickers).toBeCloseTo(3 * 0.1 + 0.4, 12);
    expect(plan.courses[0].commonSlateAndAHalves).toBe(1);
    expect(plan.spareCommonSlateAndAHalves).toBe(1);
  });

  it('never goes back to a thicker pile on a slope laid in part', () => {
    const asked: PlanRequest = {
      ...aRequest([aCourse(3, 5), aCourse(4, 5)], [aPile(10), aPile(10)]),
      laid: [{ slopeId: 'south', course: 1, heightMm: 200, thickestPile: 1, thinnestPile: 2 }]
    };
    expect(planOf(asked).piles.map((use) => use.slates)).toEqual([0, 10]);
  });

  it('is not bound through a course without pieces', () => {
    const empty = [
      aCourse(1, 0, { slopeId: 'west', heightMm: 0 }),
      aCourse(8, 0, { slopeId: 'east' })
    ];
    const asked: PlanRequest = {
      ...aRequest([...empty, aCourse(2, 5), aCourse(3, 5)], [aPile(5), aPile(5)]),
      laid: [
        { slopeId: 'west', course: 1, heightMm: -200, thickestPile: 2, thinnestPile: 2 },
        { slopeId: 'east', course: 9, heightMm: 1800, thickestPile: 1, thinnestPile: 1 }
      ],
      laidBinds: 'own-slope'
    };
    expect(planOf(asked).piles.map((use) => use.slates)).toEqual([5, 5]);
  });

  it('counts kickers in whole billionths whatever the chances', () => {
    const third = { within: [1 / 3], between: [[0]] };
    expect(planOf(aRequest([aCourse(1, 8)], [aPile(8)], third)).objective).toBe(7 * 333_333_333);
  });

  it('puts nothing thinner below a laid course than that course', () => {
    const asked: PlanRequest = {
      ...aRequest([aCourse(1, 5, { slopeId: 'north' })], [aPile(3), aPile(10)]),
      laid: [{ slopeId: 'south', course: 9, heightMm: 2000, thickestPile: 1, thinnestPile: 1 }]
    };
    expect(planCourses(asked)).toMatchObject({
      status: 'short',
      mendedBy: [{ pile: 1, slates: 2 }]
    });
    expect(planOf({ ...asked, laidBinds: 'own-slope' }).piles.map((use) => use.slates)).toEqual([
      0, 5
    ]);
  });

  it('gives the same plan whatever the order of the courses', () => {
    const courses = [aCourse(1, 6), aCourse(2, 7), aCourse(3, 5)];
    const piles = [aPile(8), aPile(12)];
    expect(planCourses(aRequest(courses.toReversed(), piles))).toEqual(
      planCourses(aRequest(courses, piles))
    );
  });
});

describe('planCourses: a clear short, never a wrong plan', () => {
  it('no piles', () => {
    expect(planCourses(aRequest([aCourse(1, 6)], [], none))).toMatchObject({
      status: 'short',
      missingSlates: 6,
      mendedBy: []
    });
  });

  it('a pile of zero is passed over; all piles at zero are short', () => {
    expect(planOf(aRequest([aCourse(1, 6)], [aPile(0), aPile(6)])).piles[1].slates).toBe(6);
    expect(planCourses(aRequest([aCourse(1, 6)], [aPile(0), aPile(0)]))).toMatchObject({
      status: 'short',
      missingSlates: 6,
      mendedBy: [
        { pile: 1, slates: 6, slateAndAHalves: 0 },
        { pile: 2, slates: 6, slateAndAHalves: 0 }
      ]
    });
  });

  it('a course wider than the whole stock', () => {
    expect(planCourses(aRequest([aCourse(1, 1000)], [aPile(3), aPile(4)]))).toMatchObject({
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
    expect(
      planCourses(aRequest([aCourse(1, 9)], [aPile(3), aPile(3), aPile(3)], three))
    ).toMatchObject({
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
    expect(planCourses(aRequest([aCourse(1, 5)], [aPile(10), aPile(3, 5)]))).toEqual({
      status: 'short',
      missingSlates: 0,
      missingSlateAndAHalves: 0,
      missingReserve: [{ pile: 2, slates: 2, slateAndAHalves: 0 }],
      missingCommonReserve: 0,
      mendedBy: []
    });
  });

  it('slate-and-a-halves that run out', () => {
    const courses = [aCourse(1, 4, { wide: true }), aCourse(2, 4, { wide: true })];
    expect(planCourses(aRequest(courses, [aPile(20, 0, 1)], one))).toMatchObject({
      status: 'short',
      missingSlates: 0,
      missingSlateAndAHalves: 1,
      mendedBy: [{ pile: 1, slates: 0, slateAndAHalves: 1 }]
    });
  });

  it('a common stock that falls short, of its need or of its own reserve', () => {
    const kicks = { ...one, common: { withPile: [0.1], within: 0.1 } };
    const asked = aRequest([aCourse(1, 4, { wide: true })], [aPile(4)], kicks);
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
    ['a course given twice', [aCourse(1, 5), aCourse(1, 6)], /given twice/],
    [
      'a course below the one under it',
      [aCourse(1, 5), aCourse(2, 5, { heightMm: 100 })],
      /not above/
    ],
    ['a height that is not a number', [aCourse(1, 5, { heightMm: Number.NaN })], /finite/],
    ['half a slate', [aCourse(1, 5.5)], /whole/],
    ['slates below zero', [aCourse(1, -1)], /at least 0/]
  ])('%s', (_name, courses, message) => {
    expect(() => planCourses(aRequest(courses, [aPile(50), aPile(50)]))).toThrow(message);
  });

  it.each([
    ['a stock that is not whole', [aPile(5.5), aPile(5)], two, /whole/],
    ['a stock below zero', [aPile(-5), aPile(5)], two, /at least 0/],
    ['chances for other piles', [aPile(5)], two, /2 chances within piles for 1 piles/],
    ['a chance above one', [aPile(5)], { within: [1.1], between: [[0]] }, /give 0 to 1/],
    [
      'chances that depend on the side',
      [aPile(5), aPile(5)],
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
    expect(() => planCourses(aRequest([aCourse(1, 5)], piles, kicks))).toThrow(message);
  });

  it('refuses laid courses of impossible piles', () => {
    const laid = { slopeId: 'south', course: 1, heightMm: 0, thickestPile: 2, thinnestPile: 1 };
    const asked = aRequest([], [aPile(1)]);
    expect(() => planCourses({ ...asked, laid: [laid] })).toThrow(/thinnest pile/);
    expect(() => planCourses({ ...asked, laid: [{ ...laid, thinnestPile: 2 }] })).toThrow(/pile 2/);
  });

  it('refuses a roof whose sums would not be exact', () => {
    expect(() => planCourses(aRequest([aCourse(1, 9_100_000)], [aPile(1)], one))).toThrow(
      /too many/
    );
  });
});

describe('planCourses: many unlike courses at one height', () => {
  const slopes = (unlike: number, heights: number) =>
    Array.from({ length: heights }, (_height, height) =>
      Array.from({ length: unlike }, (_slope, slope) =>
        aCourse(height + 1, 30 + ((slope * 7 + height * 3) % unlike), { slopeId: `s${slope}` })
      )
    ).flat();

  it('is proved for 8 of them on each of 20 heights', () => {
    const plan = planOf(aRequest(slopes(8, 20), [aPile(2500), aPile(1500), aPile(2500)]));
    expect(plan.notEveryOrder).toBeUndefined();
  });

  it('says so where not every order is tried, and still gives a sound plan', () => {
    const courses = slopes(40, 4);
    expect(planOf(aRequest(courses, [aPile(4000), aPile(4500)])).notEveryOrder).toBe(true);
    expect(planCourses(aRequest(courses, [aPile(40)]))).toMatchObject({
      status: 'short',
      notEveryOrder: true
    });
  });

  it('tries every order of 40 alike', () => {
    const alike = Array.from({ length: 40 }, (_slope, slope) =>
      aCourse(1, 50, { slopeId: `s${slope}` })
    );
    const plan = planOf(aRequest(alike, [aPile(1010), aPile(1000)]));
    expect(plan).toMatchObject({ changeovers: 0, joints: 40 * 49 });
    expect(plan.notEveryOrder).toBeUndefined();
  });
});
