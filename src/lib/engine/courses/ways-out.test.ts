import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { kickChances } from './kick-chances.ts';
import type { PlanRequest, Shortage } from './plan-types.ts';
import { planCourses } from './planner.ts';
import { aCourse, aPile, aRequest } from '../../../../tests/support/course-requests.ts';
import type { StockKnowledge, WayOut } from './way-out-types.ts';
import { toBuy } from '../roof/index.ts';
import { waysOut } from './ways-out.ts';

function ways(request: PlanRequest, knowledge?: StockKnowledge): WayOut[] {
  const short = planCourses(request);
  if (short.status !== 'short') throw new Error('the stock must be short');
  return waysOut(request, short, knowledge);
}

function way<Kind extends WayOut['way']>(all: readonly WayOut[], kind: Kind) {
  return all.filter((one): one is Extract<WayOut, { way: Kind }> => one.way === kind);
}

describe('waysOut: the reserve', () => {
  it('is narrowed by the fewest slates, for each pile that can mend the roof alone', () => {
    const all = ways(aRequest([aCourse(1, 10), aCourse(2, 10)], [aPile(15, 5), aPile(12, 4)]));
    const narrowed = way(all, 'narrow-reserve');
    expect(narrowed.map(({ release }) => release)).toEqual([
      [{ pile: 1, slates: 2, slateAndAHalves: 0 }],
      [{ pile: 2, slates: 2, slateAndAHalves: 0 }]
    ]);
    expect(narrowed.map(({ plan }) => plan.changeovers)).toEqual([1, 0]);
  });

  it('is narrowed in proportion where no pile can mend the roof alone', () => {
    const [narrowed] = way(
      ways(aRequest([aCourse(1, 10), aCourse(2, 10)], [aPile(12, 5), aPile(10, 5)])),
      'narrow-reserve'
    );
    expect(narrowed.release).toEqual([
      { pile: 1, slates: 4, slateAndAHalves: 0 },
      { pile: 2, slates: 4, slateAndAHalves: 0 }
    ]);
  });

  it('of a common stock gives what the verges need', () => {
    const request: PlanRequest = {
      ...aRequest([aCourse(1, 5, { wide: true })], [aPile(5)], {
        within: [0.1],
        between: [[0]],
        common: { withPile: [0.2], within: 0 }
      }),
      common: { slateAndAHalves: 2, reservedSlateAndAHalves: 2 }
    };
    const [narrowed] = way(ways(request), 'narrow-reserve');
    expect(narrowed).toMatchObject({ release: [], releaseCommonSlateAndAHalves: 1 });
    const [order] = way(ways(request), 'order-slates');
    expect(order).toMatchObject({ order: [], orderCommonSlateAndAHalves: 1 });
  });

  it('is not offered where there is none or where it is not enough', () => {
    expect(way(ways(aRequest([aCourse(1, 10)], [aPile(5)])), 'narrow-reserve')).toEqual([]);
    expect(way(ways(aRequest([aCourse(1, 10)], [aPile(5, 3)])), 'narrow-reserve')).toEqual([]);
  });
});

describe('waysOut: a part of the roof', () => {
  it('leaves out the largest course of the last height, whatever the slopes are called', () => {
    for (const [long, short] of ['ab', 'ba']) {
      const courses = [
        aCourse(1, 10, { slopeId: long, heightMm: 0 }),
        aCourse(1, 4, { slopeId: short, heightMm: 0 })
      ];
      const [part] = way(ways(aRequest(courses, [aPile(5)])), 'lay-part');
      expect(part).toMatchObject({ courses: 1, ofCourses: 2 });
      expect(part.plan.courses[0].slopeId).toBe(short);
    }
  });
});

describe('waysOut: an order', () => {
  it('goes to the pile that gives fewest kickers among those that need fewest slates', () => {
    const request = aRequest([aCourse(1, 10), aCourse(2, 10)], [aPile(10), aPile(8)], {
      within: [0.1, 0.3],
      between: [
        [0, 0.7],
        [0.7, 0]
      ]
    });
    const [order] = way(ways(request), 'order-slates');
    // two more on pile 2 make two clean courses: 0.9 + 2.7; on pile 1: 0.9 + 0.1 + 0.7 + 2.1
    expect(order.order).toEqual([{ pile: 2, slates: 2, slateAndAHalves: 0 }]);
    expect(order.plan.kickers).toBeCloseTo(3.6, 12);
  });

  it('buys so many that the courses still have theirs once a share of what comes is kept back', () => {
    const courses = Array.from({ length: 6 }, (_, at) => aCourse(at + 1, 100));
    const share = 0.045;
    const pile = (slates: number) => aPile(slates, Math.ceil(slates * share));
    const request = { ...aRequest(courses, [pile(250), pile(251)]), reserveShare: share };
    const [{ order }] = way(ways(request), 'order-slates');
    const after = (less: number) => ({
      ...request,
      piles: [250, 251].map((slates, index) => {
        const bought = order.find((one) => one.pile === index + 1)?.slates ?? 0;
        return pile(slates + Math.max(0, bought - less));
      })
    });
    expect(planCourses(after(0)).status).toBe('optimal');
    expect(planCourses(after(2)).status).toBe('short');
    expect(() => toBuy(1, 1)).toThrow(/less than 1/);
  });

  it('makes good a reserve and names the thickness to ask for', () => {
    const bins = [
      binsFromPairs([[640, 3]]),
      binsFromPairs([
        [500, 1],
        [520, 1]
      ])
    ];
    const request = aRequest([aCourse(1, 10)], [aPile(10), aPile(3, 5)]);
    const [order] = way(
      ways(request, { kickAllowanceMm: 1.5, pileBins: bins, thresholdsMm: [6] }),
      'order-slates'
    );
    expect(order.order).toEqual([{ pile: 2, slates: 2, slateAndAHalves: 0, aboutMm: 5.1 }]);
  });
});

describe('waysOut: thresholds and piles', () => {
  // three piles must share one course of 30, though 36 slates stand there
  const bins = [
    binsFromPairs(Array.from({ length: 12 }, (_bin, index) => [700 + 10 * index, 1])),
    binsFromPairs(Array.from({ length: 12 }, (_bin, index) => [580 + 10 * index, 1])),
    binsFromPairs(Array.from({ length: 12 }, (_bin, index) => [460 + 10 * index, 1]))
  ];
  const request: PlanRequest = {
    courses: [aCourse(1, 30)],
    piles: [aPile(12), aPile(12), aPile(12)],
    kicks: kickChances(bins, 1.5)
  };
  const knowledge: StockKnowledge = {
    kickAllowanceMm: 1.5,
    pileBins: bins,
    thresholdsMm: [7, 5.8],
    otherThresholdsMm: [[6.4], [4]]
  };

  it('moves a threshold by the least step and says how many slates to look at again', () => {
    const moved = way(ways(request, knowledge), 'move-threshold');
    // six slates of an outer pile join the middle one, or the other way round: 18 + 12 = 30
    expect(
      moved.map(({ threshold, toMm, pile, lookAgain, move }) => [
        threshold,
        toMm,
        pile,
        lookAgain,
        move
      ])
    ).toEqual([
      [1, 7.55, 1, 12, 6],
      [2, 6.35, 2, 12, 6]
    ]);
    for (const { plan } of moved) expect(plan.changeovers).toBe(1);
  });

  it('moves a slate exactly on the new threshold to the thicker pile', () => {
    const thin = binsFromPairs(Array.from({ length: 20 }, (_bin, index) => [500 + 10 * index, 1]));
    const pileBins = [binsFromPairs([[720, 2]]), thin];
    const lacking: PlanRequest = {
      courses: [aCourse(1, 10)],
      piles: [aPile(2, 5), aPile(20)],
      kicks: kickChances(pileBins, 1.5)
    };
    const [moved] = way(
      ways(lacking, { kickAllowanceMm: 1.5, pileBins, thresholdsMm: [7] }),
      'move-threshold'
    );
    expect(moved).toMatchObject({ toMm: 6.7, pile: 2, lookAgain: 20, move: 3 });
  });

  it('sorts again into another number of piles, if those fit', () => {
    const others = way(ways(request, knowledge), 'other-piles');
    expect(others.map(({ thresholdsMm, lookAgain }) => [thresholdsMm, lookAgain])).toEqual([
      [[6.4], 36],
      [[4], 36]
    ]);
  });

  it('needs the spread of every pile', () => {
    const unknown = { ...knowledge, pileBins: bins.with(1, binsFromPairs([])) };
    const all = ways(request, unknown);
    expect([...way(all, 'move-threshold'), ...way(all, 'other-piles')]).toEqual([]);
    expect(() => ways(request, { ...knowledge, thresholdsMm: [7] })).toThrow(/3 piles/);
  });
});

describe('waysOut: less of the roof', () => {
  it('lays as many courses as the stock allows', () => {
    const request = aRequest([aCourse(3, 4), aCourse(1, 4), aCourse(2, 4)], [aPile(9)]);
    const [part] = way(ways(request), 'lay-part');
    expect(part).toMatchObject({ courses: 2, ofCourses: 3 });
    expect(part.plan.courses.map(({ course }) => course)).toEqual([1, 2]);
  });

  it('offers no part of a roof of which not even one course can be laid', () => {
    expect(way(ways(aRequest([aCourse(1, 4), aCourse(2, 4)], [aPile(3)])), 'lay-part')).toEqual([]);
  });

  it('lets slopes differ, or thickness rise, where courses laid already stand in the way', () => {
    const request: PlanRequest = {
      ...aRequest([aCourse(5, 8)], [aPile(20), aPile(2)]),
      laid: [{ slopeId: 'south', course: 1, heightMm: 200, thickestPile: 1, thinnestPile: 2 }]
    };
    const [rise] = way(ways(request), 'let-thickness-rise');
    expect(rise.plan.piles[0].slates).toBe(8);
    const other = { ...request, courses: [aCourse(5, 8, { slopeId: 'north' })] };
    expect(way(ways(other), 'let-thickness-rise')).toEqual([]);
    expect(way(ways(other), 'let-slopes-differ')[0].plan.piles[0].slates).toBe(8);
  });

  it('has nothing to offer where there are no piles', () => {
    const request: PlanRequest = {
      courses: [aCourse(1, 4)],
      piles: [],
      kicks: { within: [], between: [] }
    };
    expect(waysOut(request, planCourses(request) as Shortage)).toEqual([]);
  });
});
