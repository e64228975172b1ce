import { describe, expect, it } from 'vitest';
import { type CoursePart, type Plan, kickChances } from '$lib/engine/courses';
import { binsFromPairs } from '$lib/engine/thickness';
import { aCourse, aPile, aRequest } from '../../../tests/support/course-requests.ts';
import {
  changesOf,
  firstThinBelowThick,
  moveChange,
  ownPartsOf,
  ownPlanOf,
  pilesLacking,
  setPileOfCourse
} from './own-plan.ts';
import { planOfParts } from './plan-of-parts.ts';
import type { PlanGround } from './plan-request.ts';

const SLATES = 10;
const piles = [aPile(60), aPile(80), aPile(60)];
const kicks = kickChances(
  [
    [700, 720],
    [600, 620],
    [500, 520]
  ].map((hundredths) => binsFromPairs(hundredths.map((mm) => [mm, 40]))),
  1.5
);

/** Two slopes of six courses of ten slates at the same heights, the fourth of both meeting at a hip. */
const courses = ['back', 'front'].flatMap((slopeId) =>
  [1, 2, 3, 4, 5, 6].map((course) => ({
    ...aCourse(course, SLATES, { slopeId }),
    ...(course === 4 && { meets: true as const })
  }))
);
const request = aRequest(courses, piles, kicks);
const ground = { request, left: piles, undereave: [] } as unknown as PlanGround;

function planOfPiles(pilesOf: Record<string, readonly number[]>): Plan {
  return planOfParts(ground.request, courses, (place) => {
    const [slopeId, course] = place.split('|');
    const pile = pilesOf[slopeId][Number(course) - 1];
    return [{ pile, slates: SLATES, slateAndAHalves: 0 }];
  });
}
const pilesOn = (plan: Plan, slope: string): number[][] =>
  plan.courses
    .filter(({ slopeId }) => slopeId === slope)
    .toSorted((one, other) => one.course - other.course)
    .map(({ parts }) => parts.map(({ pile }) => pile));

const together = planOfPiles({ back: [1, 1, 2, 2, 3, 3], front: [1, 1, 2, 2, 3, 3] });

describe('changes of an own plan', () => {
  it('are told slope by slope with what leaves each pile a course', () => {
    expect(changesOf(together, 'front')).toEqual([
      { slopeId: 'front', lower: 1, upper: 2, upTo: 2, least: 1, most: 3, heightMm: 600 },
      { slopeId: 'front', lower: 2, upper: 3, upTo: 4, least: 3, most: 5, heightMm: 1000 }
    ]);
  });

  it('move together on slopes that change at the same height, and no further than a course is left', () => {
    const [, change] = changesOf(together, 'front');
    const moved = ownPlanOf(ground, moveChange(ground, ownPartsOf(together), change, 5));
    for (const slope of ['front', 'back'])
      expect(pilesOn(moved, slope)).toEqual([[1], [1], [2], [2], [2], [3]]);
    const far = ownPlanOf(ground, moveChange(ground, ownPartsOf(together), change, 99));
    expect(pilesOn(far, 'front')).toEqual([[1], [1], [2], [2], [2], [3]]);
  });

  it('move alone on a slope that changes elsewhere, but take along courses that meet', () => {
    const apart = planOfPiles({ back: [1, 1, 1, 2, 2, 3], front: [1, 2, 2, 2, 3, 3] });
    const [first, second] = changesOf(apart, 'front');
    const moved = ownPlanOf(ground, moveChange(ground, ownPartsOf(apart), first, 2));
    expect(pilesOn(moved, 'front')).toEqual([[1], [1], [2], [2], [3], [3]]);
    expect(pilesOn(moved, 'back')).toEqual(pilesOn(apart, 'back'));
    const lowered = ownPlanOf(ground, moveChange(ground, ownPartsOf(apart), second, 3));
    expect(pilesOn(lowered, 'front')).toEqual([[1], [2], [2], [3], [3], [3]]);
    expect(pilesOn(lowered, 'back')).toEqual([[1], [1], [1], [3], [2], [3]]);
  });

  it('make a course that was laid from two piles one of one pile', () => {
    const parts = new Map<string, readonly CoursePart[]>(ownPartsOf(together));
    const two = [
      { pile: 1, slates: 4, slateAndAHalves: 0 },
      { pile: 2, slates: 6, slateAndAHalves: 0 }
    ];
    parts.set('front|2', two);
    const [change] = changesOf(ownPlanOf(ground, parts), 'front');
    expect(change).toMatchObject({ upTo: 2, least: 1, most: 3 });
    const up = ownPlanOf(ground, moveChange(ground, parts, change, 3));
    expect(pilesOn(up, 'front')).toEqual([[1], [1], [1], [2], [3], [3]]);
    const down = ownPlanOf(ground, moveChange(ground, parts, change, 1));
    expect(pilesOn(down, 'front')).toEqual([[1], [2], [2], [2], [3], [3]]);
  });
});

describe('a step of an own plan', () => {
  it('makes new courses of those that it changes and keeps all others as they were', () => {
    const [change] = changesOf(together, 'front');
    const parts = ownPartsOf(together);
    const before = ownPlanOf(ground, parts);
    const after = ownPlanOf(ground, moveChange(ground, parts, change, 3));
    const kept = after.courses.filter((course) => before.courses.includes(course));
    expect(kept).toHaveLength(10);
    const changed = after.courses.filter((course) => !before.courses.includes(course));
    expect(changed.map(({ course, parts }) => [course, parts[0].pile])).toEqual([
      [3, 1],
      [3, 1]
    ]);
    // Other chances of the same parts are other figures.
    const unlike = { ...ground, request: { ...request, kicks: { ...kicks, within: [1, 1, 1] } } };
    expect(ownPlanOf(unlike, parts).courses[0].kickers).toBe(SLATES - 1);
    expect(ownPlanOf(ground, parts).courses[0].kickers).toBe(before.courses[0].kickers);
  });
});

describe('an own plan', () => {
  it('may put thin below thick, which is told, and takes figures from what it lays', () => {
    const own = setPileOfCourse(ground, ownPartsOf(together), { slopeId: 'back', course: 1 }, 3);
    const plan = ownPlanOf(ground, own);
    expect(firstThinBelowThick(plan.courses)).toEqual({ slopeId: 'back', course: 2 });
    expect(firstThinBelowThick(together.courses)).toBeUndefined();
    expect(plan.piles.map(({ slates }) => slates)).toEqual([30, 40, 50]);
    expect(plan.joints).toBe(12 * (SLATES - 1));
  });

  it('that leaves courses out takes each on where it is given a pile, with those that meet it', () => {
    const lowest = new Map(
      [...ownPartsOf(together)].filter(([place]) => Number(place.split('|')[1]) <= 3)
    );
    const own = setPileOfCourse(ground, lowest, { slopeId: 'back', course: 4 }, 2);
    const plan = ownPlanOf(ground, own);
    expect(pilesOn(plan, 'back')).toEqual([[1], [1], [2], [2]]);
    // the fourth of both slopes meets at a hip
    expect(pilesOn(plan, 'front')).toEqual([[1], [1], [2], [2]]);
  });

  it('says of which piles it takes more than there is', () => {
    expect(pilesLacking(ground, together)).toEqual([]);
    const thick = planOfPiles({ back: [1, 1, 1, 1, 1, 1], front: [1, 1, 2, 2, 3, 3] });
    expect(pilesLacking(ground, thick)).toEqual([{ pile: 1, takes: 80, has: 60 }]);
  });
});
