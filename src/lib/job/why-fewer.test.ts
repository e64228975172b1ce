import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type KickChances, planCourses } from '$lib/engine/courses';
import { aCourse, aPile, aRequest, planOf } from '../../../tests/support/course-requests.ts';
import { rounds } from '../../../tests/support/rounds.ts';
import { ownPlanOf } from './own-plan.ts';
import { placeOf } from './plan-of-parts.ts';
import type { PlanGround } from './plan-request.ts';
import { whyFewerJoints } from './why-fewer.ts';

/** Three piles, the middle one the most uneven, and a step between any two shows. */
const KICKS: KickChances = {
  within: [0.05, 0.3, 0.1],
  between: [
    [0, 0.6, 0.9],
    [0.6, 0, 0.6],
    [0.9, 0.6, 0]
  ]
};
const SLATES = 4;
const laidOf = (pile: number, slates: number) => [{ pile, slates, slateAndAHalves: 0 }];

function groundOf(
  heights: Record<string, readonly number[]>,
  stock: readonly number[],
  reserved = 0
): PlanGround {
  const courses = Object.entries(heights).flatMap(([slopeId, own]) =>
    own.map((heightMm, at) => aCourse(at + 1, SLATES, { slopeId, heightMm }))
  );
  const piles = stock.map((slates) => aPile(slates, reserved));
  return { request: aRequest(courses, piles, KICKS), laid: [] } as unknown as PlanGround;
}

/** The own plan that lays each course of the request from one pile, in the order of its courses. */
function ownOf(ground: PlanGround, pileOf: readonly number[]) {
  const parts = ground.request.courses.map(
    (course, at) => [placeOf(course), laidOf(pileOf[at], SLATES)] as const
  );
  return ownPlanOf(ground, new Map(parts));
}

describe('why an own plan has fewer joints than the most even one', () => {
  it('is that it lays thin below thick: the best of all orders then needs no joint between piles', () => {
    // Two heights of unlike length: 6 thick and 4 thin cover them only with a step, thick first.
    const courses = [aCourse(1, 4), aCourse(2, 6)];
    const request = aRequest(courses, [aPile(6), aPile(0), aPile(4)], KICKS);
    const ground = { request, laid: [] } as unknown as PlanGround;
    const even = planOf(request);
    const own = ownPlanOf(
      ground,
      new Map([
        ['south|1', laidOf(3, 4)],
        ['south|2', laidOf(1, 6)]
      ])
    );
    expect(own.kickers).toBeLessThan(even.kickers);
    expect(whyFewerJoints(ground, own, even)).toBe('thinBelowThick');
    expect(whyFewerJoints(ground, even, even)).toBeUndefined();
  });

  it('is that slopes change pile at unlike heights', () => {
    // The front's one course lies between the two of the back: in order of height it is laid of both.
    const courses = [
      aCourse(1, 4, { slopeId: 'back', heightMm: 100 }),
      aCourse(1, 6, { slopeId: 'front', heightMm: 200 }),
      aCourse(2, 4, { slopeId: 'back', heightMm: 300 })
    ];
    const request = aRequest(courses, [aPile(8), aPile(0), aPile(6)], KICKS);
    const ground = { request, laid: [] } as unknown as PlanGround;
    const even = planOf(request);
    const own = ownPlanOf(
      ground,
      new Map([
        ['back|1', laidOf(1, 4)],
        ['front|1', laidOf(3, 6)],
        ['back|2', laidOf(1, 4)]
      ])
    );
    expect(own.kickers).toBeLessThan(even.kickers);
    expect(whyFewerJoints(ground, own, even)).toBe('slopesApart');
  });

  it('is that it lays slates that are kept back', () => {
    const ground = groundOf({ back: [100, 200, 300] }, [12, 0, 4], 3);
    const own = ownOf(ground, [1, 1, 1]);
    const even = planOf({ ...ground.request, piles: [aPile(12, 3), aPile(0), aPile(4)] });
    expect(own.kickers).toBeLessThan(even.kickers);
    expect(whyFewerJoints(ground, own, even)).toBe('intoReserve');
  });

  it('is always one of these: no plan that keeps all three is more even than the most even one', () => {
    const seen = { fewer: 0, none: 0, same: 0 };
    const heights = fc.uniqueArray(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(
        fc.tuple(heights, heights),
        fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: 0, max: 16 }))),
        fc.integer({ min: 0, max: 2 }),
        fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 6, maxLength: 6 }),
        ([back, front], stock, reserved, pileOf) => {
          const rising = (own: number[]) =>
            own.toSorted((one, other) => one - other).map((height) => height * 100);
          const ground = groundOf({ back: rising(back), front: rising(front) }, stock, reserved);
          const even = planCourses(ground.request);
          const own = ownOf(ground, pileOf);
          const has = stock.every((slates, at) => own.piles[at].slates <= slates);
          if (even.status !== 'optimal' || !has) return;
          const why = whyFewerJoints(ground, own, even);
          if (own.kickers < even.kickers - 1e-6) {
            expect(why).toBeDefined();
            seen.fewer++;
          } else {
            expect(why).toBeUndefined();
            seen[own.kickers > even.kickers + 1e-6 ? 'none' : 'same']++;
          }
        }
      ),
      { numRuns: rounds(1500, 60_000), seed: 50 }
    );
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(10);
  });
});
