import { describe, expect, it } from 'vitest';
import { piecesInRun } from './course-demand.ts';
import { courseOf, layOutRoof, type RoofLayout } from './layout.ts';
import { slateSpec } from './slate-spec.ts';
import { type SlopeInput, makeSlope } from './slope-shape.ts';

const SPEC = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });

function slope(given: Partial<SlopeInput> = {}) {
  return makeSlope({
    id: 'south',
    rafterLengthMm: 5500,
    eaveWidthMm: 7900,
    pitchDegrees: 35,
    ...given
  });
}

function laidOut(...given: Parameters<typeof layOutRoof>): RoofLayout {
  const roof = layOutRoof(...given);
  if (!roof.ok) throw new Error(JSON.stringify(roof.problems));
  return roof;
}

describe('layOutRoof', () => {
  it('lays out no slopes as an empty roof', () => {
    const roof = laidOut([], SPEC);
    expect(roof.demand).toEqual([]);
    expect(roof.totals.slates).toBe(0);
  });

  it('counts a plain slope: 28 courses in turn, worked by hand', () => {
    const roof = laidOut([slope()], SPEC);
    const [south] = roof.slopes;
    // Fixing length 5500 − 25 − (500 − 50) = 5025; 26 spaces of 193.27 mm.
    expect(south.spaces).toBe(26);
    expect(south.gaugeMm).toBeCloseTo(5025 / 26, 9);
    expect(south.headlapMm).toBeCloseTo(500 - 10050 / 26, 9);
    expect(south.courses).toHaveLength(28);
    // 8000 mm: no joint of 3 to 5 mm finishes both bonds whole (31 slates: 7750 + 30 joints of
    // 8.3; 30 and a slate-and-a-half: 7875 + 30 joints of 4.17, which does).
    expect(south.perps.isWhole).toBe(true);
    expect(south.perps.bonds.A.jointMm).toBeCloseTo(125 / 30, 9);
    expect(courseOf(roof, 'south', 1).counts).toMatchObject({ full: 30, cut: 0, slateAndAHalf: 1 });
    expect(roof.demand[0]).toEqual({
      slopeId: 'south',
      course: 1,
      heightMm: 0,
      runs: [{ slates: 30, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: true }]
    });
    expect(roof.demand[1].runs[0]).toEqual({
      slates: 30,
      startsWithSlateAndAHalf: true,
      endsWithSlateAndAHalf: false
    });
    expect(roof.totals).toMatchObject({
      courses: 28,
      slates: 840,
      slateAndAHalves: 28,
      undereaveSlates: 30,
      undereaveSlateAndAHalves: 1,
      nails: 2 * (868 + 31)
    });
    expect(roof.totals.areaM2).toBeCloseTo(8 * 5.55, 9);
    expect(roof.totals.battenM).toBeCloseTo(28 * 7.9, 9);
  });

  it('splits a course into runs beside a rooflight and notches the slates above and below', () => {
    const rooflight = {
      kind: 'rooflight',
      fromLeftMm: 3000,
      widthMm: 800,
      fromEaveMm: 2000,
      heightMm: 1200
    } as const;
    const roof = laidOut([slope({ openings: [rooflight] })], SPEC);
    const { courses } = roof.slopes[0];
    const split = courses.filter((course) => course.runs.length === 2);
    expect(split.length).toBeGreaterThan(0);
    for (const course of split) {
      expect(course.tailMm).toBeGreaterThanOrEqual(2000);
      expect(course.tailMm + course.marginMm).toBeLessThanOrEqual(3200);
      expect(course.runs[0].rightMm).toBeLessThanOrEqual(3000);
      expect(course.runs[1].leftMm).toBeGreaterThanOrEqual(3800);
    }
    const below = courses.find((course) => course.headMm > 2000)!;
    expect(below.runs).toHaveLength(1);
    expect(below.counts.cut).toBeGreaterThan(0);
  });

  it('keeps heights of slopes that meet equal, and orders the demand by height', () => {
    const roof = laidOut(
      [slope(), slope({ id: 'north' }), slope({ id: 'high', eaveHeightMm: 900 })],
      SPEC
    );
    const heights = roof.demand.map((course) => course.heightMm);
    expect(heights).toEqual([...heights].sort((one, other) => one - other));
    expect(roof.demand.slice(0, 2).map((course) => course.slopeId)).toEqual(['south', 'north']);
    expect(roof.demand[0].heightMm).toBe(roof.demand[1].heightMm);
  });

  it('leaves a course without slates out of the demand, where hips meet at a point', () => {
    const hip = { kind: 'hip', insetAtTopMm: 3950 } as const;
    const roof = laidOut([slope({ left: hip, right: hip })], SPEC);
    for (const course of roof.demand) {
      expect(course.runs.length).toBeGreaterThan(0);
      for (const run of course.runs) expect(piecesInRun(run)).toBeGreaterThan(0);
    }
  });

  it('lets hips that cross by a tape error meet on the ridge, and refuses more', () => {
    const hips = (insetAtTopMm: number) => ({
      left: { kind: 'hip', insetAtTopMm } as const,
      right: { kind: 'hip', insetAtTopMm } as const
    });
    const { courses, totals } = laidOut([slope(hips(3960))], SPEC).slopes[0];
    const last = courses[courses.length - 1];
    expect(last.marginRightMm - last.marginLeftMm).toBeCloseTo(0, 9);
    expect(courses.reduce((sum, one) => sum + one.areaM2, 0)).toBeCloseTo(totals.areaM2, 9);
    expect(layOutRoof([slope(hips(3961))], SPEC)).toMatchObject({
      problems: [{ field: 'left.insetAtTopMm', code: 'closes-before-ridge', nearest: 3939 }]
    });
  });

  it('is plain frozen data that survives a structured clone', () => {
    const roof = laidOut([slope()], SPEC);
    expect(structuredClone(roof)).toEqual(roof);
    expect(Object.isFrozen(roof.slopes[0].courses[0].runs[0].pieces[0])).toBe(true);
    expect(Object.isFrozen(roof.slopes[0].perps.bonds.A.marksMm)).toBe(true);
  });

  it('does not freeze or change what it was given', () => {
    const given = slope();
    const before = structuredClone(given);
    laidOut([given], SPEC);
    expect(given).toEqual(before);
    expect(Object.isFrozen(given.openings)).toBe(false);
  });

  it('refuses with every problem, the slate first', () => {
    const wrong = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 200 });
    expect(layOutRoof([slope()], wrong)).toEqual({
      ok: false,
      reason: 'problems',
      problems: [
        { field: 'headlapMm', code: 'headlap-above-third', value: 200, limit: 167, nearest: 167 }
      ]
    });
    const twice = layOutRoof([slope(), slope({ rafterLengthMm: 300 })], SPEC);
    expect(twice).toMatchObject({
      ok: false,
      problems: [
        { slopeId: 'south', field: 'id', code: 'same-id' },
        { slopeId: 'south', field: 'rafterLengthMm', code: 'no-course', nearest: 475 }
      ]
    });
  });

  it('refuses to name a course that is not there', () => {
    expect(() => courseOf(laidOut([slope()], SPEC), 'south', 29)).toThrow(/no course 29/);
  });
});
