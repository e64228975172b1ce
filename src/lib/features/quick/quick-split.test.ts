import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import type { SlateSpecBody, SlopeBody } from '$lib/journal';
import { type QuickNumbers, quickSplit } from './quick-split.ts';

const COURSES: QuickNumbers = { slates: 1200, roof: { kind: 'courses', courses: 29 } };
const SPEC: SlateSpecBody = {
  lengthMm: 500,
  widthMm: 250,
  nailing: 'centre',
  headlapMm: 90,
  jointMinMm: 3,
  jointMaxMm: 5,
  eaveOverhangMm: 50,
  vergeOverhangMm: 50
};
const SLOPE: SlopeBody = {
  slopeId: 'slope',
  name: 'Roof',
  rafterLengthMm: 5000,
  eaveWidthMm: 8000,
  pitchDegrees: null,
  eaveHeightMm: 0,
  left: { kind: 'verge' },
  right: { kind: 'verge' },
  openings: []
};
/** Three heaps of thickness, far apart: ten slates of each about 8, 6 and 4.5 mm. */
const HEAPS = [8, 6, 4.5].flatMap((mm) =>
  Array.from({ length: 10 }, (_, step) => Math.round((mm + 0.02 * step) * 100) / 100)
);

function splitOf(numbers: QuickNumbers, readings: readonly number[]) {
  const split = quickSplit(numbers, readings);
  if (!split.ok) throw new Error(split.reason);
  return split;
}

describe('quickSplit', () => {
  it('splits at the gaps, and every course has its pile, thick at the eave', () => {
    const split = splitOf(COURSES, HEAPS);
    expect(split.thresholdsMm[0]).toBeGreaterThan(6.2);
    expect(split.thresholdsMm[0]).toBeLessThan(8);
    expect(split.thresholdsMm[1]).toBeGreaterThan(4.7);
    expect(split.thresholdsMm[1]).toBeLessThan(6);
    expect(split.courses).toHaveLength(29);
    expect([...split.courses].sort()).toEqual(split.courses);
    expect(split.piles.map(({ slates }) => slates)).toEqual([400, 400, 400]);
    // A third of the slates each: about a third of the courses.
    for (const { courses } of split.piles) expect(courses).toBeGreaterThanOrEqual(9);
    expect(split.piles.reduce((sum, { courses }) => sum + courses, 0)).toBe(29);
    expect(split.missingSlates).toBe(0);
  });

  it('says how many joints will show, and how many unsorted', () => {
    const split = splitOf(COURSES, HEAPS);
    // Sorted, slates of a pile differ by 0.18 mm at most; unsorted, two of three pairs are of unlike
    // heaps, all of which differ by more than 1.5 mm or, between 6 and 4.5, nearly always do.
    expect(split.kickersPer100).toBeLessThan(1);
    const pairs = HEAPS.flatMap((one, at) => HEAPS.slice(at + 1).map((other) => one - other));
    // every pair by its chance, from the assumed taper and gauge: s² as the doc comment of kickSoftness
    const mean = HEAPS.reduce((sum, mm) => sum + mm, 0) / HEAPS.length;
    const variance = HEAPS.reduce((sum, mm) => sum + (mm - mean) ** 2, 0) / (HEAPS.length - 1);
    const below = 0.57 ** 2 * (0.63 * variance + 0.4 * 0.3 ** 2);
    const s = Math.round(1000 * Math.sqrt(0.3 ** 2 / 2 + 2 * 0.05 ** 2 + below)) / 1000;
    const kicks = pairs
      .map((step) => normalCdf((step - 1.5) / s, 0, 1) + normalCdf((-step - 1.5) / s, 0, 1))
      .reduce((sum, chance) => sum + chance, 0);
    expect(split.unsortedPer100).toBeCloseTo((100 * kicks) / pairs.length, 6);
  });

  it('does not mind the order of the readings', () => {
    expect(quickSplit(COURSES, HEAPS.toReversed())).toEqual(quickSplit(COURSES, HEAPS));
  });

  it('lays out a roof of which only rafter, width and slate are known', () => {
    const size: QuickNumbers = {
      slates: 1400,
      roof: { kind: 'size', spec: SPEC, slope: SLOPE }
    };
    const split = splitOf(size, HEAPS);
    // Gauge (500 − 90) ÷ 2 = 205 mm at most (the usual formula of double-lap slating).
    expect(split.courses.length).toBeGreaterThanOrEqual(Math.floor(5000 / 205));
    expect(split.courses.length).toBeLessThanOrEqual(Math.ceil(5050 / 205) + 1);
    expect(split.missingSlates).toBe(0);
    const short = splitOf({ ...size, slates: 500 }, HEAPS);
    expect(short.missingSlates).toBeGreaterThan(300);
    expect(short.kickersPer100).toBeUndefined();
    expect(short.thresholdsMm).toHaveLength(2);
  });

  it('makes two piles of two thicknesses', () => {
    const split = splitOf(COURSES, [5, 5, 5, 7, 7, 7]);
    expect(split.piles).toHaveLength(2);
    expect(split.thresholdsMm[0]).toBeGreaterThan(5);
  });

  it('says why there is no split', () => {
    expect(quickSplit(COURSES, [6])).toEqual({
      ok: false,
      reason: 'too-few-readings',
      readings: 1
    });
    expect(quickSplit(COURSES, [])).toMatchObject({ readings: 0 });
    expect(quickSplit(COURSES, new Array<number>(20).fill(6.2))).toEqual({
      ok: false,
      reason: 'all-equal',
      thicknessMm: 6.2
    });
    expect(quickSplit({ ...COURSES, slates: 20 }, HEAPS)).toEqual({
      ok: false,
      reason: 'more-courses-than-slates'
    });
    const steep = { ...SPEC, headlapMm: 400 };
    expect(
      quickSplit({ slates: 1400, roof: { kind: 'size', spec: steep, slope: SLOPE } }, HEAPS)
    ).toMatchObject({ reason: 'roof', problem: { field: 'headlapMm' } });
  });
});
