import { describe, expect, it } from 'vitest';
import { battenLengthM, nailLength, nailsByPile, slatesCarried } from './materials.ts';
import { makeSlope } from './slope-shape.ts';

describe('battenLengthM', () => {
  const slope = makeSlope({
    id: 'one',
    rafterLengthMm: 4000,
    eaveWidthMm: 6000,
    pitchDegrees: 35,
    right: { kind: 'hip', insetAtTopMm: 2000 },
    openings: [
      { kind: 'rooflight', fromLeftMm: 1000, widthMm: 800, fromEaveMm: 1500, heightMm: 1000 }
    ]
  });

  it('is 0 without battens', () => {
    expect(battenLengthM(slope, [])).toBe(0);
  });

  it('runs from edge to edge without overhang, shorter up a hip, openings off', () => {
    expect(battenLengthM(slope, [0])).toBe(6);
    expect(battenLengthM(slope, [4000])).toBe(4);
    expect(battenLengthM(slope, [2000])).toBeCloseTo(5 - 0.8, 9);
    expect(battenLengthM(slope, [0, 4000, 2000])).toBeCloseTo(14.2, 9);
  });
});

describe('nails', () => {
  it('are two to a piece, as long as the pile is thick', () => {
    expect(
      nailsByPile([
        { pile: 1, slates: 400, thicknessMm: 8 },
        { pile: 2, slates: 0, thicknessMm: 5 }
      ])
    ).toEqual([
      { pile: 1, nails: 800, leastMm: 36, mostMm: 41, nearestSoldMm: 40 },
      { pile: 2, nails: 0, leastMm: 30, mostMm: 35, nearestSoldMm: 30 }
    ]);
  });

  it('refuse NaN, a thickness of nothing and part of a slate', () => {
    expect(() => nailLength(Number.NaN)).toThrow(/not-finite/);
    expect(() => nailLength(0)).toThrow(/out-of-range/);
    expect(() => nailsByPile([{ pile: 1, slates: 1.5, thicknessMm: 6 }])).toThrow(/not-whole/);
  });
});

describe('what one person carries', () => {
  const slate = { lengthMm: 500, widthMm: 250, densityKgPerM3: 2800 };
  it('is the most slates within the mass: 11 of 2.1 kg within 25 kg', () => {
    const carried = slatesCarried(25, 6, slate);
    expect(carried.slates).toBe(11);
    expect(carried.massKg).toBeCloseTo(23.1, 9);
  });
  it('meets the limit exactly where the mass divides evenly, and is one slate at least', () => {
    expect(slatesCarried(21, 6, slate).slates).toBe(10);
    expect(slatesCarried(1, 6, slate).slates).toBe(1);
  });
});
