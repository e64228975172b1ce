/** Slopes out of square, drawn corner by corner and measured with an exact tape. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import {
  headlapAtGaugeMm,
  layOutRoof,
  makeSlope,
  slateSpec,
  slopeProblems
} from '$lib/engine/roof';
import { rounds } from '../support/rounds.ts';

/** Distance between two points, the checker's only tool. */
const tape = (one: readonly [number, number], other: readonly [number, number]) =>
  Math.hypot(one[0] - other[0], one[1] - other[1]);

it('no gauge above the largest, no headlap below the asked, and the verges lean as drawn', () => {
  let shared = 0;
  fc.assert(
    fc.property(
      fc.record({
        width: fc.integer({ min: 3000, max: 16_000 }),
        rafter: fc.integer({ min: 1500, max: 8000 }),
        ends: fc.array(fc.integer({ min: -60, max: 60 }), { minLength: 4, maxLength: 4 }),
        bow: fc.integer({ min: -15, max: 15 }),
        headlapMm: fc.integer({ min: 60, max: 110 }),
        overhang: fc.integer({ min: 0, max: 60 })
      }),
      ({ width, rafter, ends: [leftX, leftY, rightX, rightY], bow, headlapMm, overhang }) => {
        const corners = {
          eaveLeft: [0, 0],
          eaveRight: [width, 0],
          ridgeLeft: [leftX, rafter + leftY],
          ridgeRight: [width - rightX, rafter + rightY]
        } as const;
        const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm });
        const slope = makeSlope({
          id: 'a',
          pitchDegrees: 35,
          eaveWidthMm: width,
          rafterLengthMm: rafter + (leftY + rightY) / 2 + bow,
          rafterLeftMm: tape(corners.eaveLeft, corners.ridgeLeft),
          rafterRightMm: tape(corners.eaveRight, corners.ridgeRight),
          ridgeWidthMm: tape(corners.ridgeLeft, corners.ridgeRight),
          diagonalMm: tape(corners.eaveLeft, corners.ridgeRight),
          vergeOverhangMm: overhang
        });
        const roof = layOutRoof([slope], spec);
        expect(roof.ok).toBe(slopeProblems(slope, spec).length === 0);
        if (!roof.ok || !roof.slopes[0].outOfSquare) return;
        shared++;
        const { battens, verges } = roof.slopes[0].outOfSquare;
        expect(verges!.leftMm).toBeCloseTo(leftX, 5);
        expect(verges!.rightMm).toBeCloseTo(rightX, 5);
        const atSides = battens.map(({ leftMm, middleMm, rightMm }) => {
          // out over the verge the batten runs on as straight as it came
          const per = overhang / (width / 2);
          return [
            leftMm + (leftMm - middleMm) * per,
            leftMm,
            middleMm,
            rightMm,
            rightMm + (rightMm - middleMm) * per
          ];
        });
        for (const [batten, lines] of atSides.entries()) {
          if (batten < 2) continue;
          for (const [place, line] of lines.entries()) {
            const gauge = line - atSides[batten - 1][place];
            expect(gauge).toBeLessThanOrEqual((500 - headlapMm) / 2 + 1e-6);
            expect(headlapAtGaugeMm(spec, gauge)).toBeGreaterThanOrEqual(headlapMm - 1e-6);
          }
        }
        const top = battens[battens.length - 1];
        expect(top.leftMm + slope.ridgeGapMm).toBeCloseTo(slope.rafterLeftMm, 6);
        expect(top.rightMm + slope.ridgeGapMm).toBeCloseTo(slope.rafterRightMm, 6);
      }
    ),
    { seed: 18, numRuns: rounds(300, 3000) }
  );
  expect(shared).toBeGreaterThan(rounds(300, 3000) / 3);
});
