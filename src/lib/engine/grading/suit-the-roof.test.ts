import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { suitTheRoof } from './suit-the-roof.ts';

const threeBeds = binsFromPairs([
  [400, 20],
  [500, 20],
  [600, 20]
]);
const course = Object.freeze({ slates: 20, joints: 19 });
const roof = Object.freeze({
  bins: threeBeds,
  stockSlates: 60,
  courses: Object.freeze([course, course, course]),
  piles: 2,
  kickAllowanceMm: 0.5
});

describe('suitTheRoof', () => {
  it('has nothing to choose without courses, without slates or with too few thicknesses', () => {
    expect(suitTheRoof({ ...roof, courses: [] })).toEqual({ ok: false, reason: 'no-courses' });
    expect(suitTheRoof({ ...roof, bins: binsFromPairs([]) })).toMatchObject({ distinct: 0 });
    expect(suitTheRoof({ ...roof, piles: 4 })).toEqual({
      ok: false,
      reason: 'too-few-thicknesses',
      distinct: 3
    });
  });

  it('gives each bed its pile where it can', () => {
    expect(suitTheRoof({ ...roof, piles: 3 })).toEqual({
      ok: true,
      status: 'optimal',
      thresholdsMm: [5.5, 4.5],
      coursesPerPile: [1, 1, 1],
      expectedKickers: 0,
      missingSlates: 0,
      coursesInStock: 3,
      gridMm: null
    });
  });

  it('mixes two of three beds where it must: 2 × 19 × 20/39 kickers', () => {
    const result = suitTheRoof(roof);
    expect(result).toMatchObject({ status: 'optimal' });
    expect(result.ok && result.expectedKickers).toBeCloseTo((2 * 19 * 20) / 39, 12);
  });

  it('takes the kick allowance to the nearest hundredth: a step of 1 mm kicks at 0.994, not at 0.995', () => {
    const kickersAt = (kickAllowanceMm: number) => {
      const result = suitTheRoof({ ...roof, kickAllowanceMm });
      return result.ok && result.expectedKickers;
    };
    expect(kickersAt(0.994)).toBeCloseTo((2 * 19 * 20) / 39, 12);
    expect(kickersAt(0.995)).toBe(0);
  });

  it('leaves the uneven beds over where there is stock to spare', () => {
    const spare = suitTheRoof({ ...roof, courses: [course, course], piles: 3 });
    expect(spare).toMatchObject({ expectedKickers: 0 });
    const one = suitTheRoof({ ...roof, courses: [course] });
    expect(one).toMatchObject({ expectedKickers: 0 });
  });

  it('lays everything from one pile', () => {
    const result = suitTheRoof({ ...roof, piles: 1 });
    expect(result).toMatchObject({ thresholdsMm: [], coursesPerPile: [3] });
    // 40 of 59 partners lie in another bed
    expect(result.ok && result.expectedKickers).toBeCloseTo((3 * 19 * 40) / 59, 12);
  });

  it('says how many slates of the same spread are missing', () => {
    expect(suitTheRoof({ ...roof, stockSlates: 50, piles: 1 })).toMatchObject({
      status: 'short',
      missingSlates: 10,
      coursesInStock: 2
    });
    expect(suitTheRoof({ ...roof, stockSlates: 0, piles: 3 })).toMatchObject({
      status: 'short',
      missingSlates: 60,
      coursesInStock: 0,
      thresholdsMm: [5.5, 4.5]
    });
  });

  it('keeps the reserve: 64 slates less 5 per cent hold 60, 63 do not', () => {
    const reserved = { ...roof, piles: 1, reserve: 0.05 };
    expect(suitTheRoof({ ...reserved, stockSlates: 64 })).toMatchObject({ status: 'optimal' });
    expect(suitTheRoof({ ...reserved, stockSlates: 63 })).toMatchObject({
      status: 'short',
      missingSlates: 1
    });
  });

  it('settles choices without any kicker by the smaller step', () => {
    const even = binsFromPairs([
      [500, 30],
      [505, 30],
      [560, 30]
    ]);
    const result = suitTheRoof({
      ...roof,
      bins: even,
      stockSlates: 90,
      kickAllowanceMm: 1.5,
      courses: Array.from({ length: 9 }, () => ({ slates: 10, joints: 9 }))
    });
    expect(result).toMatchObject({ thresholdsMm: [5.3], coursesPerPile: [3, 6] });
  });

  it.each([
    [{ piles: 0 }, 'out-of-range'],
    [{ piles: 2.5 }, 'not-whole'],
    [{ stockSlates: -1 }, 'out-of-range'],
    [{ stockSlates: Number.NaN }, 'not-finite'],
    [{ kickAllowanceMm: -1 }, 'out-of-range'],
    [{ reserve: 1 }, 'out-of-range'],
    [{ reserve: [0.1] }, 'wrong-length'],
    [{ courses: [{ slates: 2.5, joints: 1 }] }, 'not-whole']
  ])('refuses %j: %s', (change, code) => {
    expect(() => suitTheRoof({ ...roof, ...change })).toThrow(
      expect.objectContaining({ code }) as Error
    );
  });
});
