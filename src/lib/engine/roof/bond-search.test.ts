import { describe, expect, it } from 'vitest';
import { askedSideLapMm, searchBonds, sideLapBetweenMm } from './bond-search.ts';
import { layBonds } from './bonds.ts';
import { slateSpec } from './slate-spec.ts';
import { slopeProblems } from './slope-problems.ts';
import { makeSlope } from './slope-shape.ts';

const SPEC = Object.freeze(slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 70 }));

describe('searchBonds', () => {
  it('asks for the headlap, or what half bond leaves of a narrow slate', () => {
    expect(askedSideLapMm(SPEC)).toBe(70);
    expect(askedSideLapMm({ ...SPEC, widthMm: 150, headlapMm: 75 })).toBe(65);
  });

  it('cuts at both ends where a cut at one end lets joints meet: 380 mm of 250 mm slates', () => {
    const { A, B, isSound } = layBonds(380, SPEC);
    expect(isSound).toBe(true);
    // Two pieces and a joint of 3 mm are 377 mm; 70 apart leaves both above the limit of 150.
    expect(Math.min(...[...A.pieces, ...B.pieces].map(({ widthMm }) => widthMm))).toBeGreaterThan(
      149
    );
    expect(Math.abs(A.pieces[1].leftMm - B.pieces[1].leftMm)).toBeGreaterThanOrEqual(73);
  });

  it('finds nothing where two pieces would be too narrow to nail, and the slope is refused', () => {
    const narrow = slateSpec({
      lengthMm: 300,
      widthMm: 75,
      slateAndAHalfWidthMm: 94,
      headlapMm: 70
    });
    expect(searchBonds(100, [3, 5], narrow)).toBeUndefined();
    const size = { rafterLengthMm: 1600, eaveWidthMm: 100, pitchDegrees: 40, vergeOverhangMm: 0 };
    expect(slopeProblems(makeSlope({ id: 'one', ...size }), narrow)).toMatchObject([
      { field: 'eaveWidthMm', code: 'joints-too-close', value: 100 }
    ]);
  });

  it('counts joints beside cut pieces', () => {
    const bond = (...widths: number[]) => {
      let leftMm = -3;
      const pieces = widths.map((widthMm, index) => {
        leftMm += 3 + (index > 0 ? widths[index - 1] : 0);
        return { kind: 'cut' as const, leftMm, widthMm };
      });
      return { jointMm: 3, pieces };
    };
    expect(sideLapBetweenMm(bond(227, 150), bond(227, 150))).toBe(0);
    expect(sideLapBetweenMm(bond(227, 150), bond(150, 227))).toBe(74);
    expect(sideLapBetweenMm(bond(377), bond(150, 227))).toBe(Infinity);
  });
});
