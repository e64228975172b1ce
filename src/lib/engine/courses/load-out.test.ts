import { describe, expect, it } from 'vitest';
import { loadOut } from './load-out.ts';
import { aCourse, aPile, aRequest, planOf } from '../../../../tests/support/course-requests.ts';

const spec = {
  lengthMm: 500,
  widthMm: 250,
  slateAndAHalfWidthMm: 375,
  densityKgPerM3: 2800,
  pileThicknessMm: [6, 5]
};
const limits = { stackHeightMm: 300, liftMassKg: 250 };

function lifts(...asked: Parameters<typeof loadOut>) {
  const list = loadOut(...asked);
  if (!list.ok) throw new Error(list.reason);
  return list;
}

describe('loadOut', () => {
  it('loads nothing for an empty plan', () => {
    expect(loadOut(planOf(aRequest([], [aPile(1), aPile(1)])), spec, limits)).toEqual({
      ok: true,
      lifts: [],
      massKg: 0
    });
  });

  it('stacks 50 slates of 6 mm to 300 mm, 105 kg, two stacks to a lift of 250 kg', () => {
    const plan = planOf(
      aRequest(
        [1, 2, 3].map((number) => aCourse(number, 40)),
        [aPile(120), aPile(0)]
      )
    );
    const list = lifts(plan, spec, limits);
    expect(list.massKg).toBeCloseTo(120 * 2.1, 9);
    expect(
      list.lifts.map(({ stacks }) =>
        stacks.map(({ stack, count, fromCourse, toCourse }) => [stack, count, fromCourse, toCourse])
      )
    ).toEqual([
      [
        [1, 50, 1, 2],
        [2, 50, 2, 3]
      ],
      [[3, 20, 3, 3]]
    ]);
    expect(list.lifts[0].stacks[0].heightMm).toBe(300);
    expect(list.lifts[0].stacks[0].massKg).toBeCloseTo(105, 9);
    expect(list.lifts[0].massKg).toBeCloseTo(210, 9);
  });

  it('stacks the undereave row by itself, with the first lift', () => {
    const courses = [aCourse(1, 12), aCourse(2, 40), aCourse(3, 40)];
    const above = planOf(aRequest(courses, [aPile(92), aPile(0)]));
    const lowered = above.courses.map((course) => ({ ...course, course: course.course - 1 }));
    const plan = { ...above, courses: lowered };
    const [first] = lifts(plan, spec, limits).lifts;
    expect(
      first.stacks.map(({ count, fromCourse, toCourse }) => [count, fromCourse, toCourse])
    ).toEqual([
      [12, 0, 0],
      [50, 1, 2],
      [30, 2, 2]
    ]);
  });

  it('keeps slopes, piles and sizes apart and lifts first what is laid first', () => {
    const courses = [
      aCourse(1, 10, { wide: true }),
      aCourse(2, 10),
      aCourse(1, 10, { slopeId: 'east', heightMm: 300 })
    ];
    const plan = planOf(aRequest(courses, [aPile(10, 0, 1), aPile(20)]));
    const [lift] = lifts(plan, spec, limits).lifts;
    expect(
      lift.stacks.map(({ slopeId, pile, size, count }) => [slopeId, pile, size, count])
    ).toEqual([
      ['south', 1, 'slate', 10],
      ['south', 1, 'slate-and-a-half', 1],
      ['east', 2, 'slate', 10],
      ['south', 2, 'slate', 10]
    ]);
    expect(lift.stacks[1].massKg).toBeCloseTo(3.15, 9);
  });

  it('stacks slate-and-a-halves of a common stock without a pile', () => {
    const request = {
      ...aRequest([aCourse(1, 4, { wide: true })], [aPile(4)], {
        within: [0.1],
        between: [[0]],
        common: { withPile: [0.2], within: 0 }
      }),
      common: { slateAndAHalves: 1, reservedSlateAndAHalves: 0 }
    };
    const common = { ...spec, pileThicknessMm: [6], commonThicknessMm: 5.5 };
    const stacks = lifts(planOf(request), common, limits).lifts[0].stacks;
    expect(stacks[1]).not.toHaveProperty('pile');
    expect(stacks[1].heightMm).toBe(5.5);
    expect(() => loadOut(planOf(request), { ...spec, pileThicknessMm: [6] }, limits)).toThrow(
      /common/
    );
  });

  it('never passes a limit and never loses a slate', () => {
    const plan = planOf(
      aRequest(
        [1, 2, 3, 4, 5].map((number) => aCourse(number, 37)),
        [aPile(90), aPile(110)]
      )
    );
    const tight = { stackHeightMm: 130, liftMassKg: 47 };
    const { lifts: list } = lifts(plan, spec, tight);
    const stacks = list.flatMap((lift) => lift.stacks);
    expect(stacks.reduce((sum, { count }) => sum + count, 0)).toBe(185);
    for (const { heightMm } of stacks) expect(heightMm).toBeLessThanOrEqual(130);
    for (const { massKg } of list) expect(massKg).toBeLessThanOrEqual(47 + 1e-9);
  });

  it('fills a lift to a limit met exactly, though decimals round: 3 stacks of 42.63 kg in 127.89', () => {
    const courses = [1, 2, 3].map((number) => aCourse(number, 29));
    const plan = planOf(aRequest(courses, [aPile(87), aPile(0)]));
    const thin = { ...spec, pileThicknessMm: [4.2, 4] };
    const exact = { stackHeightMm: 121.8, liftMassKg: 127.89 };
    expect(
      lifts(plan, thin, exact).lifts.map(({ stacks }) => stacks.map(({ count }) => count))
    ).toEqual([[29, 29, 29]]);
  });

  it('says what limits a single slate needs', () => {
    const plan = planOf(aRequest([aCourse(1, 3)], [aPile(3), aPile(0)]));
    expect(loadOut(plan, spec, { stackHeightMm: 5, liftMassKg: 250 })).toEqual({
      ok: false,
      reason: 'limits-too-tight',
      needsStackHeightMm: 6,
      needsLiftMassKg: 2.1
    });
  });

  it('refuses figures that are not above 0', () => {
    const plan = planOf(aRequest([aCourse(1, 3)], [aPile(3), aPile(0)]));
    expect(() => loadOut(plan, { ...spec, densityKgPerM3: 0 }, limits)).toThrow(/density/);
    expect(() => loadOut(plan, spec, { ...limits, liftMassKg: Number.NaN })).toThrow(/finite/);
    expect(() => loadOut(plan, { ...spec, pileThicknessMm: [6] }, limits)).toThrow(/thicknesses/);
  });
});
