import { describe, expect, it } from 'vitest';
import type { CoursePart, PlannedCourse } from '$lib/engine/courses';
import { layOutRoof, makeSlope, slateSpec } from '$lib/engine/roof';
import { courseBands, pileStretches } from './course-bands.ts';

const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const slope = makeSlope({ id: 's', rafterLengthMm: 2400, eaveWidthMm: 5000, pitchDegrees: 35 });
const roof = layOutRoof([slope], spec);
if (!roof.ok) throw new Error('the slope is sound');
const laid = roof.slopes[0];

function planned(course: number, parts: CoursePart[]): PlannedCourse {
  const figures = { joints: 0, kickers: 0, per100Joints: 0, commonSlateAndAHalves: 0 };
  return { slopeId: 's', course, heightMm: course, parts, ...figures };
}
const whole = (course: number, pile: number) =>
  planned(course, [{ pile, slates: 19, slateAndAHalves: 1 }]);

describe('courseBands', () => {
  it('gives a band without parts to a course without a plan', () => {
    const bands = courseBands(laid, new Map());
    expect(bands).toHaveLength(laid.courses.length);
    expect(bands[0].parts).toEqual([]);
  });

  it('gives the band of a course that is as it was as the same object, and of no other', () => {
    const before = new Map([1, 2, 3].map((course) => [course, whole(course, 1)]));
    const first = courseBands(laid, before);
    const second = courseBands(laid, new Map([...before, [2, whole(2, 3)]]));
    expect(second.map((band, at) => band === first[at]).indexOf(false)).toBe(1);
    expect(second.filter((band, at) => band !== first[at])).toHaveLength(1);
    expect(second[1].parts[0].pile).toBe(3);
    const begun = courseBands(laid, before, new Map([[3, { pieces: 4, of: 20, from: 'left' }]]));
    expect(begun[2].begunPath).toBeDefined();
    expect(courseBands(laid, before)[2].begunPath).toBeUndefined();
  });

  it('stacks the bands from the eaves to the ridge without a gap', () => {
    const bands = courseBands(laid, new Map());
    expect(bands[0].bottomMm).toBe(2450); // 50 mm past the eave
    expect(bands.at(-1)?.topMm).toBeCloseTo(0, 6);
    for (const [index, band] of bands.entries())
      if (index > 0) expect(band.bottomMm).toBeCloseTo(bands[index - 1].topMm, 6);
  });

  it('splits a course where its pile changes: at the left edge of the first slate of the next', () => {
    const split = planned(1, [
      { pile: 1, slates: 8, slateAndAHalves: 0 },
      { pile: 2, slates: 12, slateAndAHalves: 0 }
    ]);
    const [band] = courseBands(laid, new Map([[1, split]]));
    expect(band.parts.map(({ pile }) => pile)).toEqual([1, 2]);
    expect(band.changeAtMm).toBe(laid.courses[0].runs[0].pieces[8].leftMm);
  });
});

describe('a course that was begun', () => {
  const [first] = laid.courses;
  const pieces = first.runs[0].pieces;
  const xs = (path = ''): number[] =>
    [...path.matchAll(/[ML]([-\d.]+) /g)].map(([, x]) => Number(x));
  const bandOf = (from: 'left' | 'right') =>
    courseBands(laid, new Map(), new Map([[1, { pieces: 6, of: pieces.length, from }]]))[0];

  it('lies up to the left edge of the first slate that is missing', () => {
    const [left, right] = [xs(bandOf('left').begunPath), xs(bandOf('right').begunPath)];
    expect(Math.max(...left)).toBeCloseTo(pieces[6].leftMm, 1);
    expect(Math.min(...left)).toBeCloseTo(xs(bandOf('left').path)[0], 1);
    expect(Math.min(...right)).toBeCloseTo(pieces[pieces.length - 6].leftMm, 1);
    expect(Math.max(...right)).toBeCloseTo(Math.max(...xs(bandOf('right').path)), 1);
  });

  it('is the only one: the others have no such part', () => {
    const bands = courseBands(laid, new Map(), new Map([[2, { pieces: 1, of: 20, from: 'left' }]]));
    expect(bands.filter(({ begunPath }) => begunPath).map(({ course }) => course)).toEqual([2]);
  });
});

describe('pileStretches', () => {
  const plan = new Map(
    laid.courses.map(({ course }) => [course, whole(course, course < 3 ? 1 : 2)])
  );
  const bands = courseBands(laid, plan);

  it('marks each pile once, in the middle of its courses', () => {
    const stretches = pileStretches(bands, 0.1, 20, 245);
    expect(stretches).toMatchObject([
      { pile: 1, fromCourse: 1, toCourse: 2 },
      { pile: 2, fromCourse: 3, toCourse: 12 }
    ]);
    const middle = ((bands[0].bottomMm + bands[1].topMm) / 2) * 0.1;
    expect(stretches[0].yPx).toBeCloseTo(middle, 6);
  });

  it('keeps marks apart by their own height and inside the drawing', () => {
    const many = new Map(laid.courses.map(({ course }) => [course, whole(course, course)]));
    const stretches = pileStretches(courseBands(laid, many), 0.1, 20, 245);
    for (const [index, { yPx }] of stretches.entries()) {
      expect(yPx).toBeGreaterThanOrEqual(10);
      expect(yPx).toBeLessThanOrEqual(245 - 10);
      if (index > 0) expect(stretches[index - 1].yPx - yPx).toBeGreaterThanOrEqual(20 - 1e-9);
    }
  });
});
