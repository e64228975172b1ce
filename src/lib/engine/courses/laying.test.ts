import { describe, expect, it } from 'vitest';
import { comparePlans } from './compare-plans.ts';
import { type LayingEvent, layingProgress } from './laying.ts';
import { aCourse, aPile, aRequest, planOf } from '../../../../tests/support/course-requests.ts';

const request = aRequest(
  [1, 2, 3, 4].map((number) => aCourse(number, 10)),
  [aPile(24, 2), aPile(30, 4)]
);
const plan = planOf(request);

const laid = (course: number, slopeId = 'south'): LayingEvent => ({
  type: 'course-laid',
  slopeId,
  course
});
const lost = (pile: number, slates: number): LayingEvent => ({
  type: 'slates-lost',
  pile,
  slates,
  slateAndAHalves: 0
});

describe('layingProgress', () => {
  it('leaves the whole roof before anything is laid', () => {
    const { remaining, ...progress } = layingProgress(request, plan, []);
    expect(progress).toEqual({ laid: [], lostSlates: 0, lostSlateAndAHalves: 0, overdrawn: [] });
    expect(planOf(remaining)).toEqual(plan);
  });

  it('takes laid courses off the stock and off the roof', () => {
    const { remaining } = layingProgress(request, plan, [laid(1), laid(2)]);
    expect(remaining.courses.map(({ course }) => course)).toEqual([3, 4]);
    expect(remaining.piles.map(({ slates }) => slates)).toEqual([4, 30]);
    expect(planOf(remaining).courses).toEqual(plan.courses.slice(2));
  });

  it('takes losses off the reserve first, down to the spares kept for repairs', () => {
    const { remaining, lostSlates } = layingProgress(
      request,
      plan,
      [lost(1, 1), lost(2, 3)],
      [0, 2]
    );
    expect(lostSlates).toBe(4);
    expect(remaining.piles.map(({ slates, reservedSlates }) => [slates, reservedSlates])).toEqual([
      [23, 1],
      [27, 2]
    ]);
  });

  it('binds the rest by the piles that were really laid', () => {
    const events: LayingEvent[] = [
      {
        type: 'course-laid',
        slopeId: 'south',
        course: 1,
        parts: [{ pile: 2, slates: 10, slateAndAHalves: 0 }]
      }
    ];
    expect(layingProgress(request, plan, events).remaining.laid).toEqual([
      { slopeId: 'south', course: 1, heightMm: 200, thickestPile: 2, thinnestPile: 2 }
    ]);
  });

  it('replaces a stock by a count, and a pile that ran out by nothing', () => {
    const count: LayingEvent = { type: 'pile-counted', pile: 1, slates: 0, slateAndAHalves: 0 };
    expect(layingProgress(request, plan, [laid(1), count]).remaining.piles[0].slates).toBe(0);
  });

  it('reports a pile that gave more than it was counted to hold, until it is counted again', () => {
    const count: LayingEvent = { type: 'pile-counted', pile: 1, slates: 3, slateAndAHalves: 0 };
    const over = [laid(1), lost(1, 20)];
    expect(layingProgress(request, plan, over)).toMatchObject({ overdrawn: [1] });
    expect(layingProgress(request, plan, over).remaining.piles[0].slates).toBe(0);
    expect(layingProgress(request, plan, [...over, count]).overdrawn).toEqual([]);
  });

  it('keeps a common stock of slate-and-a-halves', () => {
    const wide = {
      ...aRequest([aCourse(1, 5, { wide: true }), aCourse(2, 5, { wide: true })], [aPile(10)], {
        within: [0.1],
        between: [[0]],
        common: { withPile: [0.2], within: 0 }
      }),
      common: { slateAndAHalves: 4, reservedSlateAndAHalves: 2 }
    };
    const broken: LayingEvent = {
      type: 'slates-lost',
      pile: 'common',
      slates: 0,
      slateAndAHalves: 1
    };
    const { remaining } = layingProgress(wide, planOf(wide), [laid(1), broken]);
    expect(remaining.common).toEqual({ slateAndAHalves: 2, reservedSlateAndAHalves: 1 });
    expect(planOf(remaining).spareCommonSlateAndAHalves).toBe(0);
  });

  it('refuses courses and piles that are not there', () => {
    const fold =
      (...events: LayingEvent[]) =>
      () =>
        layingProgress(request, plan, events);
    expect(fold(laid(9))).toThrow(/course 9 of slope south is not in the plan/);
    expect(fold(laid(1), laid(1))).toThrow(/laid twice/);
    expect(fold(lost(3, 1))).toThrow(/no pile 3/);
    expect(fold(lost(1, 0.5))).toThrow(/whole/);
    expect(fold({ type: 'slates-lost', pile: 'common', slates: 0, slateAndAHalves: 1 })).toThrow(
      /no common stock/
    );
  });
});

describe('comparePlans', () => {
  it('says course by course what a new plan changes', () => {
    const events = [laid(1), lost(1, 8)];
    const { remaining } = layingProgress(request, plan, events);
    const change = comparePlans(plan, planOf(remaining));
    expect(change.courses.map((course) => course.change)).toEqual([
      'laid',
      'changed',
      'kept',
      'kept'
    ]);
    expect(change.courses[1].after.map(({ pile, slates }) => [pile, slates])).toEqual([
      [1, 6],
      [2, 4]
    ]);
    expect(change.changedCourses).toBe(1);
    expect(change.kickersGained).toBeCloseTo(0.4, 12); // one joint of 0.5 in place of one of 0.1
  });

  it('finds nothing changed between a plan and itself, and refuses another roof', () => {
    expect(comparePlans(plan, plan)).toMatchObject({ changedCourses: 0, kickersGained: 0 });
    const other = planOf(aRequest([aCourse(1, 3, { slopeId: 'north' })], [aPile(3)]));
    expect(() => comparePlans(plan, other)).toThrow(/slope north was not planned before/);
  });
});
