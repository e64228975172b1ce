import { describe, expect, it } from 'vitest';
import { least, leastPair } from './least.ts';
import { planCourses } from './planner.ts';
import { aCourse, aPile, aRequest } from '../../../../tests/support/course-requests.ts';

describe('least', () => {
  it.each([
    [0, 10, 0],
    [0, 10, 7],
    [0, 10, 10],
    [3, 3, 3],
    [5, 1000, 613]
  ])('finds, from %i to %i, the threshold %i', (low, high, threshold) => {
    expect(least(low, high, (value) => value >= threshold)).toBe(threshold);
  });

  it('finds nothing where even the highest fails', () => {
    expect(least(0, 10, () => false)).toBeUndefined();
    expect(
      leastPair({ slates: 0, slateAndAHalves: 0 }, { slates: 9, slateAndAHalves: 2 }, () => false)
    ).toBeUndefined();
  });

  it('takes the fewest slate-and-a-halves first, then the fewest slates', () => {
    const none = { slates: 0, slateAndAHalves: 0 };
    const high = { slates: 50, slateAndAHalves: 50 };
    expect(leastPair(none, high, (slates, wide) => wide >= 3 && slates >= 4)).toEqual({
      slates: 4,
      slateAndAHalves: 3
    });
  });
});

describe('shortage', () => {
  it('says for each pile the least that mends it alone, and no less', () => {
    const courses = [aCourse(1, 10), aCourse(2, 10), aCourse(3, 10)];
    const piles = [aPile(9), aPile(8), aPile(5)];
    const short = planCourses(aRequest(courses, piles));
    if (short.status !== 'short') throw new Error('8 slates are missing');
    expect(short.missingSlates).toBe(8);
    expect(short.mendedBy).toHaveLength(3);
    for (const { pile, slates } of short.mendedBy) {
      const statusWith = (more: number) =>
        planCourses(aRequest(courses, piles.with(pile - 1, aPile(piles[pile - 1].slates + more))))
          .status;
      expect(statusWith(slates)).toBe('optimal');
      expect(statusWith(slates - 1)).toBe('short');
    }
  });

  it('does not name a pile that may no longer go where slates are missing', () => {
    const asked = {
      ...aRequest([aCourse(5, 10)], [aPile(50), aPile(5)]),
      laid: [{ slopeId: 'south', course: 1, heightMm: 200, thickestPile: 1, thinnestPile: 2 }]
    };
    expect(planCourses(asked)).toMatchObject({ mendedBy: [{ pile: 2, slates: 5 }] });
  });

  it('tells missing reserves from missing slates', () => {
    expect(planCourses(aRequest([aCourse(1, 10)], [aPile(4, 6), aPile(7)]))).toMatchObject({
      missingSlates: 3,
      missingReserve: [{ pile: 1, slates: 2 }],
      mendedBy: [
        { pile: 1, slates: 3 },
        { pile: 2, slates: 3 }
      ]
    });
  });
});
