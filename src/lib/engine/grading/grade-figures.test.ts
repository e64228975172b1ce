import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { gradeFigures } from './grade-figures.ts';
import { kickerCurve } from './kicker-curve.ts';
import { normalMisgrading } from './misgrading/index.ts';
import { naturalBreaks } from './natural-breaks.ts';

const bins = binsFromPairs([
  [450, 10],
  [470, 10],
  [600, 20],
  [800, 1],
  [810, 9]
]);
const courses = Object.freeze(Array.from({ length: 5 }, () => ({ slates: 40, joints: 39 })));
const ground = Object.freeze({ bins, stockSlates: 250, courses, kickAllowanceMm: 1 });

describe('gradeFigures', () => {
  it('gives nothing but zeros for no slates', () => {
    const figures = gradeFigures({ ...ground, bins: binsFromPairs([]), courses: [] })([6]);
    expect(figures).toEqual({
      piles: [1, 2].map((pile) => ({
        pile,
        share: 0,
        predictedSlates: 0,
        thickness: null,
        kickProbability: 0,
        expectedKickersPer100Joints: 0,
        courses: 0,
        slatesLeftOver: 0
      })),
      expectedKickersPer100Joints: 0,
      worstStepMm: 0,
      roof: null,
      unsorted: { joints: 0, expectedKickers: 0, expectedKickersPer100Joints: 0 },
      perfectOrder: { joints: 0, expectedKickers: 0, expectedKickersPer100Joints: 0 }
    });
  });

  it('describes each pile', () => {
    const { piles, worstStepMm } = gradeFigures(ground)([7, 5]);
    expect(piles.map(({ predictedSlates }) => predictedSlates)).toEqual([50, 100, 100]);
    expect(piles.map(({ share }) => share)).toEqual([0.2, 0.4, 0.4]);
    expect(piles[2].thickness).toMatchObject({ minMm: 4.5, maxMm: 4.7, worstStepMm: 0.2 });
    expect(piles[2].thickness?.meanMm).toBeCloseTo(4.6, 14);
    expect(piles[2].thickness?.sdMm).toBeCloseTo(Math.sqrt((20 * 0.01) / 19), 14);
    expect(piles[1].thickness).toMatchObject({ sdMm: 0, worstStepMm: 0 });
    expect(worstStepMm).toBe(0.2);
  });

  it('fills whole courses, and says what is left over and missing', () => {
    const { piles, roof } = gradeFigures(ground)([7, 5]);
    expect(piles.map((pile) => pile.courses)).toEqual([1, 2, 2]);
    expect(piles.map(({ slatesLeftOver }) => slatesLeftOver)).toEqual([10, 20, 20]);
    expect(roof).toMatchObject({ joints: 195, coursesLaid: 5, coursesMissing: 0 });
    const less = gradeFigures({ ...ground, stockSlates: 180 })([7, 5]);
    expect(less.roof).toMatchObject({ joints: 78, coursesLaid: 2, coursesMissing: 3 });
  });

  it('has no kickers between beds kept apart, and those of the mixed pile otherwise', () => {
    expect(gradeFigures(ground)([7, 5]).roof?.expectedKickers).toBe(0);
    const mixed = gradeFigures(ground)([]);
    // kicking pairs of the 50 sampled: 20 × 20 + 10 × 20 + 10 × 20 of 1225
    expect(mixed.piles[0].kickProbability).toBeCloseTo(800 / 1225, 15);
    expect(mixed.unsorted.expectedKickers).toBeCloseTo((195 * 800) / 1225, 12);
    expect(mixed.roof).toMatchObject({ coursesLaid: 5 });
    expect(mixed.roof?.expectedKickers).toBeCloseTo(mixed.unsorted.expectedKickers, 12);
  });

  it('knows the least there can be: both gaps fall between courses', () => {
    const { perfectOrder } = gradeFigures(ground)([6]);
    expect(perfectOrder).toEqual({
      joints: 195,
      expectedKickers: 0,
      expectedKickersPer100Joints: 0
    });
  });

  it('weighs piles by their share while there is no roof', () => {
    const figures = gradeFigures({ ...ground, courses: [] })([7]);
    expect(figures.roof).toBeNull();
    // below 7 mm: 20 × 20 kicking pairs of 780, four fifths of the stock
    expect(figures.expectedKickersPer100Joints).toBeCloseTo((0.8 * 100 * 400) / 780, 12);
    expect(figures.unsorted.joints).toBe(249);
  });

  it('leaves a pile that nothing falls on without thickness', () => {
    const [thickest] = gradeFigures(ground)([9, 5]).piles;
    expect(thickest).toMatchObject({ predictedSlates: 0, thickness: null, courses: 0 });
  });

  it('shows what misgrading does, without the last half slate at either end', () => {
    const sharp = gradeFigures(ground)([7, 5]);
    const chanceAbove = normalMisgrading(0.5);
    const misgraded = gradeFigures({ ...ground, chanceAbove })([7, 5]);
    const total = misgraded.piles.reduce((sum, pile) => sum + pile.predictedSlates, 0);
    expect(total).toBeCloseTo(250, 10);
    expect(misgraded.piles[2].kickProbability).toBeGreaterThan(sharp.piles[2].kickProbability);
    expect(misgraded.piles[0].thickness).toMatchObject({ minMm: 6, maxMm: 8.1 });
    expect(misgraded.piles[2].thickness).toMatchObject({ minMm: 4.5, maxMm: 6 });
    // Of 20 sampled slates at 6 mm, 0.096 land above 7.3 mm: 0.48 slates of 250, 0.58 of 300.
    const thinnestAt = (stockSlates: number) =>
      gradeFigures({ ...ground, stockSlates, chanceAbove })([7.3, 5]).piles[0].thickness?.minMm;
    expect(thinnestAt(250)).toBe(8);
    expect(thinnestAt(300)).toBe(6);
    const unmoved = gradeFigures({ ...ground, chanceAbove: normalMisgrading(0) })([7, 5]);
    expect(unmoved).toEqual(sharp);
  });

  it.each([
    [{ stockSlates: -1 }, 'out-of-range'],
    [{ stockSlates: Number.NaN }, 'not-finite'],
    [{ kickAllowanceMm: -1 }, 'out-of-range'],
    [{ reserve: [0.1] }, 'wrong-length']
  ])('refuses %j: %s', (change, code) => {
    expect(() => gradeFigures({ ...ground, ...change })([7, 5])).toThrow(
      expect.objectContaining({ code }) as Error
    );
  });

  it('refuses thresholds that do not fall', () => {
    expect(() => gradeFigures(ground)([5, 7])).toThrow(/wrong-order/);
  });
});

describe('kickerCurve', () => {
  it('leaves out numbers of piles that the method cannot make', () => {
    const curve = kickerCurve(gradeFigures(ground), (piles) => naturalBreaks(bins, piles));
    expect(curve.map(({ piles }) => piles)).toEqual([1, 2, 3, 4, 5]);
    expect(curve[0].thresholdsMm).toEqual([]);
    expect(curve[0].expectedKickersPer100Joints).toBeCloseTo(80_000 / 1225, 12);
    expect(curve[2].expectedKickersPer100Joints).toBe(0);
  });

  it('reads the whole stock while there is no roof', () => {
    const figuresAt = gradeFigures({ ...ground, courses: [] });
    const [, two] = kickerCurve(figuresAt, (piles) => naturalBreaks(bins, piles), 2);
    expect(two.expectedKickersPer100Joints).toBe(
      figuresAt(two.thresholdsMm).expectedKickersPer100Joints
    );
  });

  it('refuses no piles', () => {
    expect(() => kickerCurve(gradeFigures(ground), () => ({ ok: false }), 0)).toThrow(/at least 1/);
  });
});
