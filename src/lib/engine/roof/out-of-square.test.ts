import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec, slopeProblems } from './index.ts';
import { asMeasured, outOfSquareOf, sharedBattens } from './out-of-square.ts';
import type { SlopeInput } from './slope-shape.ts';

const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const slope = (given: Partial<SlopeInput> = {}) =>
  makeSlope({ id: 'a', rafterLengthMm: 5500, eaveWidthMm: 8000, pitchDegrees: 35, ...given });

describe('a slope out of square', () => {
  it('is not spoken of where nobody measured, or where it is square', () => {
    expect(outOfSquareOf(slope())).toBeUndefined();
    expect(
      outOfSquareOf(
        slope({
          rafterLeftMm: 5501,
          rafterRightMm: 5500,
          ridgeWidthMm: 8000,
          diagonalMm: Math.hypot(8000, 5500)
        })
      )
    ).toBeUndefined();
  });

  it('the rectangle of 3, 4, 5 metres has a diagonal of 5 and verges that do not lean', () => {
    const found = outOfSquareOf(
      slope({
        rafterLengthMm: 3000,
        eaveWidthMm: 4000,
        rafterLeftMm: 3010, // a longer left side only, so that it is spoken of
        rafterRightMm: 3000,
        diagonalMm: 5000
      })
    );
    expect(found?.verges?.rightMm).toBeCloseTo(0, 9); // a right angle: Euclid I 48
    expect(found?.ridgeRisesMm).toBe(-10);
  });

  it('a parallelogram leans by the same at both verges (corners drawn, sides measured)', () => {
    const lean = 60;
    const side = Math.hypot(lean, 5500);
    const found = outOfSquareOf(
      slope({
        rafterLengthMm: side,
        rafterLeftMm: side,
        rafterRightMm: side,
        ridgeWidthMm: 8000,
        diagonalMm: Math.hypot(8000 + lean, 5500)
      })
    );
    expect(found?.verges?.leftMm).toBeCloseTo(60, 6);
    expect(found?.verges?.rightMm).toBeCloseTo(-60, 6);
  });

  it('shares 52 mm over 26 courses, 2 mm each, under the largest gauge everywhere', () => {
    const given = slope({ rafterLeftMm: 5474, rafterRightMm: 5526, vergeOverhangMm: 0 });
    const laid = layOutRoof([given], spec);
    if (!laid.ok) throw new Error('refused');
    const [{ outOfSquare, battens }] = laid.slopes;
    const shared = outOfSquare!.battens;
    expect(shared).toHaveLength(battens.length);
    const spaces = battens.length - 2;
    const step = (side: 'leftMm' | 'rightMm') => shared[5][side] - shared[4][side];
    expect(step('rightMm') - step('leftMm')).toBeCloseTo(52 / spaces, 9);
    // batten 1 carries the first heads, 450 mm up on both sides: the eave is straight
    expect(shared[1].leftMm).toBe(450);
    expect(shared[1].rightMm).toBe(450);
    // the top batten runs along the ridge, 25 mm below it
    expect(shared.at(-1)!.leftMm).toBeCloseTo(5474 - 25, 6);
    expect(shared.at(-1)!.rightMm).toBeCloseTo(5526 - 25, 6);
    expect(Math.max(step('leftMm'), step('rightMm'))).toBeLessThanOrEqual(200);
  });

  it('takes one more course where the longer side would pass the largest gauge', () => {
    // 5225 mm: 5225 − 25 − 450 = 4750, 24 spaces of 197.9; 5276 at the right: 4801, 25 spaces
    const square = layOutRoof([slope({ rafterLengthMm: 5250 })], spec);
    const longer = layOutRoof([slope({ rafterLengthMm: 5250, rafterRightMm: 5280 })], spec);
    if (!square.ok || !longer.ok) throw new Error('refused');
    expect(square.slopes[0].spaces).toBe(24);
    expect(longer.slopes[0].spaces).toBe(25);
  });

  it('a bow in the middle is shared too', () => {
    const given = slope({ rafterLengthMm: 5510, rafterLeftMm: 5500, rafterRightMm: 5500 });
    const shared = sharedBattens(given, spec, 26);
    expect(shared[27].middleMm - shared[27].leftMm).toBeCloseTo(10, 9);
  });

  it('is laid as wide as it is anywhere', () => {
    const side = Math.hypot(30, 5500);
    const widened = asMeasured(
      slope({
        rafterLengthMm: side,
        ridgeWidthMm: 8060,
        rafterLeftMm: side,
        rafterRightMm: side,
        diagonalMm: Math.hypot(8030, 5500)
      })
    );
    expect(widened.eaveWidthMm).toBeCloseTo(8060, 3);
  });
});

describe('measures that cannot be shared out', () => {
  const field = (given: Partial<SlopeInput>) =>
    slopeProblems(slope(given), spec).map((problem) => [problem.field, problem.code]);

  it('more than a course is refused where it was typed', () => {
    expect(field({ rafterLeftMm: 5750 })).toEqual([['rafterLeftMm', 'out-by-a-course']]);
    expect(field({ rafterRightMm: 5250 })).toEqual([['rafterRightMm', 'out-by-a-course']]);
    expect(field({ rafterLeftMm: 5380, rafterRightMm: 5620 })).toEqual([
      ['rafterRightMm', 'out-by-a-course']
    ]);
    expect(field({ ridgeWidthMm: 8500 })).toEqual([['ridgeWidthMm', 'out-by-a-course']]);
  });

  it('diagonals that no four-sided slope can have', () => {
    for (const diagonalMm of [13_500, 20_000, 2500, 1])
      expect(field({ diagonalMm })).toEqual([['diagonalMm', 'no-such-diagonal']]);
    expect(field({ diagonalMm: 9000 })).toEqual([['diagonalMm', 'out-by-a-course']]);
  });

  it('the nearest value is taken', () => {
    for (const given of [{ diagonalMm: 13_500 }, { diagonalMm: 9000 }, { rafterLeftMm: 5750 }]) {
      const [{ field: name, nearest }] = slopeProblems(slope(given), spec);
      expect(slopeProblems(slope({ ...given, [name]: nearest }), spec)).toEqual([]);
    }
  });

  it('a slope between hips is not measured for square', () => {
    const hip = { kind: 'hip' as const, insetAtTopMm: 3000 };
    expect(field({ left: hip, rafterRightMm: 5510 })).toEqual([
      ['rafterRightMm', 'square-sides-only']
    ]);
  });
});
