import { describe, expect, it } from 'vitest';
import { bondOfCourse, setOutPerps } from './perps.ts';
import { slateSpec } from './slate-spec.ts';
import { type Slope, makeSlope } from './slope-shape.ts';

const SPEC = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const slope = (given: Partial<Slope>) =>
  makeSlope({
    id: 'one',
    rafterLengthMm: 4000,
    eaveWidthMm: 2427,
    pitchDegrees: 35,
    ...given
  });

describe('setOutPerps', () => {
  it('lays bonds in turn, the undereave as an even course', () => {
    expect([0, 1, 2, 3].map(bondOfCourse)).toEqual(['B', 'A', 'B', 'A']);
  });

  it('marks from the left verge including its overhang', () => {
    const { datum, datumMm, bonds, isWhole } = setOutPerps(slope({}), SPEC);
    expect({ datum, datumMm, isWhole }).toEqual({ datum: 'left', datumMm: -50, isWhole: true });
    expect(bonds.A.marksMm.map((mark) => Math.round(mark))).toEqual([
      0, 253, 506, 759, 1012, 1265, 1518, 1771, 2024, 2277
    ]);
    expect(bonds.A.places[0].leftMm).toBe(-50);
  });

  it('sets out from the right where asked, marks the same', () => {
    const left = setOutPerps(slope({}), SPEC);
    const right = setOutPerps(slope({ setOutFrom: 'right' }), SPEC);
    expect(right.datumMm).toBe(2477);
    expect(right.bonds.B.marksMm).toEqual(left.bonds.B.marksMm);
    expect(right.bonds.B.places[right.bonds.B.places.length - 1].kind).toBe('slate-and-a-half');
  });

  it('starts at the one square side and reaches past a valley', () => {
    const perps = setOutPerps(slope({ left: { kind: 'valley', insetAtTopMm: -3000 } }), SPEC);
    expect(perps.datum).toBe('right');
    expect(perps.bonds.A.jointMm).toBe(3);
    expect(perps.bonds.A.places[0].leftMm).toBeLessThanOrEqual(-3000);
    expect(perps.finish).toBeUndefined();
  });

  it('starts in the middle between two hips: a joint on it in bond A, a slate in bond B', () => {
    const hip = { kind: 'hip', insetAtTopMm: 1000 } as const;
    const perps = setOutPerps(slope({ left: hip, right: hip }), SPEC);
    expect(perps.datum).toBe('centre');
    expect(perps.datumMm).toBe(1213.5);
    expect(perps.bonds.A.marksMm.slice(0, 2)).toEqual([1.5, 254.5]);
    expect(perps.bonds.B.marksMm.slice(0, 2)).toEqual([128, 381]);
  });
});
