import { describe, expect, it } from 'vitest';
import { setOutCourses } from './courses.ts';
import { equalGauge, maximumGaugeMm } from './gauge.ts';
import { slateSpec } from './slate-spec.ts';
import { makeSlope } from './slope-shape.ts';

const SPEC = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const slope = (rafterLengthMm: number, pitchDegrees = 30) =>
  makeSlope({ id: 'one', rafterLengthMm, eaveWidthMm: 6000, pitchDegrees });

describe('equalGauge', () => {
  it.each([
    [0, 200, 0, 200],
    [1, 200, 1, 1],
    [199.99, 200, 1, 199.99],
    [200, 200, 1, 200],
    [200.01, 200, 2, 100.005],
    [5025, 200, 26, 5025 / 26]
  ])('%d mm at most %d: %d spaces', (length, most, spaces, gaugeMm) => {
    expect(equalGauge(length, most)).toEqual({ spaces, gaugeMm });
  });

  it('takes a whole multiple as whole in spite of binary rounding', () => {
    expect(equalGauge(0.1 * 3, 0.1).spaces).toBe(3);
  });

  it('refuses a negative length, a gauge of nothing and NaN', () => {
    expect(() => equalGauge(-1, 200)).toThrow(/out-of-range/);
    expect(() => equalGauge(100, 0)).toThrow(/out-of-range/);
    expect(() => equalGauge(Number.NaN, 200)).toThrow(/not-finite/);
  });
});

describe('setOutCourses', () => {
  it('sets out one full course and the top course on the shortest rafter', () => {
    const setOut = setOutCourses(slope(475), SPEC);
    expect(setOut.courses.map(({ kind, tailMm, headMm }) => ({ kind, tailMm, headMm }))).toEqual([
      { kind: 'full', tailMm: -50, headMm: 450 },
      { kind: 'top', tailMm: 150, headMm: 450 }
    ]);
    expect(setOut.spaces).toBe(0);
  });

  it('refuses a shorter rafter', () => {
    expect(() => setOutCourses(slope(474), SPEC)).toThrow(/one course needs 475/);
  });

  it('works a slope of 2075 mm by hand: eight spaces of 200 mm, nothing gained', () => {
    // First batten 500 − 50 = 450, top batten 2075 − 25 = 2050, between them 1600 = 8 × 200.
    const setOut = setOutCourses(slope(2075), SPEC);
    expect(setOut).toMatchObject({
      gaugeMm: 200,
      headlapMm: 100,
      headlapGainedMm: 0,
      spaces: 8,
      undereaveLengthMm: 300
    });
    expect(setOut.battens.map((batten) => batten.fromEaveMm)).toEqual([
      250, 450, 650, 850, 1050, 1250, 1450, 1650, 1850, 2050
    ]);
    expect(setOut.battens.map((batten) => batten.fromFirstMm)[9]).toBe(1800);
    const last = setOut.courses[9];
    expect(last).toMatchObject({
      course: 10,
      kind: 'top',
      tailMm: 1750,
      headMm: 2050,
      battenMm: 2050,
      marginMm: 325,
      slateLengthMm: 300
    });
    // At 30° every 200 mm of rafter rises 100 mm.
    expect(last.heightMm).toBeCloseTo(900, 9);
  });

  it('puts a head-nailed slate’s nail line on the batten', () => {
    const spec = slateSpec({ lengthMm: 400, widthMm: 200, headlapMm: 75, nailing: 'head' });
    expect(maximumGaugeMm(spec)).toBe(150);
    const setOut = setOutCourses(slope(1850), spec);
    const [first] = setOut.courses;
    expect(first.battenMm).toBe(325);
    expect(first.headMm).toBe(350);
    expect(setOut.gaugeMm).toBe(150);
    expect(setOut.battens[0].fromEaveMm).toBe(175);
  });
});
