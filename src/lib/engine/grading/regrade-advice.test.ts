import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { gradeFigures } from './grade-figures.ts';
import { regradeAdvice } from './regrade-advice.ts';

const bins = binsFromPairs([
  [450, 20],
  [600, 20],
  [800, 20]
]);
const courses = Array.from({ length: 3 }, () => ({ slates: 20, joints: 19 }));
const ground = Object.freeze({ bins, stockSlates: 60, courses, kickAllowanceMm: 1 });
const figuresAt = gradeFigures(ground);
/** Two pallets on three piles, every slate on the pile that the thresholds 6 and 5 mm give it. */
const sorted = Object.freeze([
  {
    palletId: 'A',
    pile: 1,
    bins: binsFromPairs([
      [600, 3],
      [610, 1],
      [800, 2]
    ])
  },
  { palletId: 'B', pile: 1, bins: binsFromPairs([[650, 2]]) },
  { palletId: 'B', pile: 3, bins: binsFromPairs([[450, 4]]) }
]);

describe('regradeAdvice', () => {
  it('asks for nothing where nothing moves', () => {
    expect(regradeAdvice(figuresAt, [7, 5], [7, 5], sorted)).toMatchObject({
      gainPer100Joints: 0,
      recheck: [],
      slatesToRecheck: 0
    });
  });

  it('lists by pallet and pile the slates between an old threshold and a new one', () => {
    const advice = regradeAdvice(figuresAt, [6, 5], [7, 5], sorted);
    expect(advice.recheck).toEqual([
      { palletId: 'A', fromPile: 1, toPile: 2, slates: 4, thinnestMm: 6, thickestMm: 6.1 },
      { palletId: 'B', fromPile: 1, toPile: 2, slates: 2, thinnestMm: 6.5, thickestMm: 6.5 }
    ]);
    expect(advice.slatesToRecheck).toBe(6);
  });

  it('tells the gain: the mixed pile of two beds comes apart', () => {
    const { before, after, gainPer100Joints } = regradeAdvice(figuresAt, [6, 5], [7, 5], sorted);
    // before: 6 and 8 mm share a pile, 20 × 20 kicking pairs of 780, over two courses of three
    expect(before.expectedKickers).toBeCloseTo((2 * 19 * 400) / 780, 12);
    expect(after.expectedKickers).toBe(0);
    expect(gainPer100Joints).toBeCloseTo((100 * 2 * 400) / 780 / 3, 12);
  });

  it('reads the whole stock while there is no roof', () => {
    const advice = regradeAdvice(gradeFigures({ ...ground, courses: [] }), [6, 5], [7, 5], []);
    expect(advice.gainPer100Joints).toBeCloseTo(((40 / 60) * 100 * 400) / 780, 12);
    expect(advice.before).toMatchObject({ joints: 59, coursesMissing: 0 });
  });

  it('follows a slate over several piles and keeps one on the threshold', () => {
    const far = regradeAdvice(
      figuresAt,
      [6, 5],
      [9, 8],
      [
        {
          palletId: 'A',
          pile: 1,
          bins: binsFromPairs([
            [600, 1],
            [800, 1]
          ])
        },
        { palletId: 'A', pile: 2, bins: binsFromPairs([[599, 1]]) }
      ]
    );
    expect(far.recheck.map(({ fromPile, toPile, slates }) => [fromPile, toPile, slates])).toEqual([
      [1, 2, 1],
      [1, 3, 1],
      [2, 3, 1]
    ]);
  });

  it('leaves where they lie slates that a wrong tap put on another pile', () => {
    const tapped = [
      { palletId: 'A', pile: 1, bins: binsFromPairs([[650, 0.75]]) },
      { palletId: 'A', pile: 2, bins: binsFromPairs([[650, 0.15]]) },
      { palletId: 'A', pile: 3, bins: binsFromPairs([[650, 0.1]]) }
    ];
    expect(regradeAdvice(figuresAt, [6, 5], [7, 5], tapped).recheck).toEqual([
      { palletId: 'A', fromPile: 1, toPile: 2, slates: 0.75, thinnestMm: 6.5, thickestMm: 6.5 }
    ]);
  });

  it('leaves alone a slate on a wrong pile that no threshold moves past', () => {
    const wrong = [{ palletId: 'A', pile: 2, bins: binsFromPairs([[800, 1]]) }];
    expect(regradeAdvice(figuresAt, [6, 5], [7, 5], wrong).recheck).toEqual([]);
  });

  it('leaves alone slates on no pile, or on one that there is not', () => {
    const nowhere = [0, 4].map((pile) => ({ palletId: 'A', pile, bins }));
    expect(regradeAdvice(figuresAt, [6, 5], [7, 4], nowhere).recheck).toEqual([]);
  });

  it('refuses another number of piles', () => {
    expect(() => regradeAdvice(figuresAt, [6, 5], [7], sorted)).toThrow(/wrong-length/);
  });
});
