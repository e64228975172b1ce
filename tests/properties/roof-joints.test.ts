/** No joint of a laid course comes too close to a joint of the course above it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type SlateSpec, type Slope, layOutRoof, makeSlope, slateSpec } from '$lib/engine/roof';
import { closestJoints } from '../support/joint-walk.ts';
import { rounds } from '../support/rounds.ts';

/** Two thousand roofs in the long run, checked by a walk that shares no code with the layout. */
const RUNS = { seed: 31_415, numRuns: rounds(400, 2000) };

/** The headlap, or half a slate less two joints where the slate is too narrow for it. */
const asked = (spec: SlateSpec) => Math.min(spec.headlapMm, spec.widthMm / 2 - 2 * spec.jointMaxMm);

const edge = fc.oneof(
  fc.constantFrom('verge' as const, 'abutment' as const).map((kind) => ({ kind, insetAtTopMm: 0 })),
  fc
    .integer({ min: 50, max: 3000 })
    .map((inset) => ({ kind: 'hip' as const, insetAtTopMm: inset })),
  fc
    .integer({ min: 50, max: 3000 })
    .map((inset) => ({ kind: 'valley' as const, insetAtTopMm: -inset }))
);
const roof = fc.record({
  size: fc.constantFrom([500, 250], [400, 200], [360, 180], [300, 150], [600, 300]),
  wide: fc.constantFrom(1.5, 1.5, 1.3, 1.7),
  headlapMm: fc.integer({ min: 55, max: 100 }),
  slates: fc.oneof(
    fc.double({ min: 1, max: 4, noNaN: true }),
    fc.double({ min: 4, max: 30, noNaN: true })
  ),
  rafterLengthMm: fc.integer({ min: 1500, max: 3500 }),
  left: edge,
  right: edge,
  setOutFrom: fc.constantFrom('left' as const, 'right' as const),
  opening: fc.option(fc.double({ min: 0.15, max: 0.6, noNaN: true }))
});

function closest(slope: Slope, spec: SlateSpec): number | undefined {
  const laid = layOutRoof([slope], spec);
  return laid.ok ? closestJoints(laid.slopes[0].courses) : undefined;
}

describe('joints of neighbouring courses', () => {
  it('keep the side lap asked for on random roofs, and ordinary roofs are laid', () => {
    let laid = 0;
    let square = 0;
    fc.assert(
      fc.property(
        roof,
        ({ size: [lengthMm, widthMm], wide, headlapMm, slates, opening, ...rest }) => {
          const slateAndAHalfWidthMm = Math.round(wide * widthMm);
          const spec = slateSpec({ lengthMm, widthMm, headlapMm, slateAndAHalfWidthMm });
          const eaveWidthMm = Math.round(slates * widthMm);
          const openings =
            opening === null
              ? []
              : [
                  {
                    kind: 'rooflight' as const,
                    fromLeftMm: Math.round(opening * eaveWidthMm),
                    widthMm: Math.round(eaveWidthMm / 5),
                    fromEaveMm: 500,
                    heightMm: 700
                  }
                ];
          const slope = makeSlope({ id: 'one', ...rest, eaveWidthMm, pitchDegrees: 40, openings });
          const gap = closest(slope, spec);
          if (gap === undefined) return;
          laid++;
          if (rest.left.insetAtTopMm === 0 && rest.right.insetAtTopMm === 0) square++;
          expect(gap).toBeGreaterThanOrEqual(asked(spec) - 1e-6);
        }
      ),
      RUNS
    );
    expect(laid).toBeGreaterThan(RUNS.numRuns / 2);
    expect(square).toBeGreaterThan(RUNS.numRuns / 10);
  });

  it('lays every width between verges from one slate up', () => {
    for (const widthMm of [150, 180, 200, 250, 300]) {
      const spec = slateSpec({ lengthMm: 2 * widthMm, widthMm, headlapMm: 70 });
      for (let eaveWidthMm = widthMm; eaveWidthMm < 6 * widthMm; eaveWidthMm++) {
        const slope = { id: 'one', rafterLengthMm: 1600, eaveWidthMm, pitchDegrees: 40 };
        const gap = closest(makeSlope({ ...slope, vergeOverhangMm: 0 }), spec);
        expect(gap, `${eaveWidthMm} mm in slates of ${widthMm}`).toBeGreaterThanOrEqual(
          asked(spec) - 1e-6
        );
      }
    }
  });

  it.each([
    ['500 x 250 over 280 mm, once an open joint from eave to ridge', 500, 250, 1600, 280],
    ['400 x 200 over 5,020 mm, once 45 mm told as 95', 400, 200, 2500, 5020]
  ])('%s', (_, lengthMm, widthMm, rafterLengthMm, eaveWidthMm) => {
    const spec = slateSpec({ lengthMm, widthMm, headlapMm: 70 });
    const slope = makeSlope({ id: 'one', rafterLengthMm, eaveWidthMm, pitchDegrees: 40 });
    const laid = layOutRoof([slope], spec);
    if (!laid.ok) throw new Error('refused');
    const gap = closestJoints(laid.slopes[0].courses);
    expect(gap).toBeGreaterThanOrEqual(70);
    expect(laid.slopes[0].sideLapMm).toBeCloseTo(gap, 6);
  });
});
