/** Cuts at hips and valleys, and areas of whole roofs, against what handbooks of roof framing give. */
import { describe, expect, it } from 'vitest';
import {
  cutShape,
  layOutRoof,
  makeSlope,
  slateSpec,
  slopeAreaMm2,
  startShape
} from '$lib/engine/roof';

const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const MM_PER_INCH = 25.4;

/** Both cuts of a slope with a hip and a valley at 45° on plan, for a rise in inches on 12 of run. */
function cutsAt(riseInches: number) {
  const runMm = 4000;
  const pitchDegrees = (Math.atan2(riseInches, 12) * 180) / Math.PI;
  const slope = makeSlope({
    id: 'a',
    rafterLengthMm: (runMm * Math.hypot(12, riseInches)) / 12,
    eaveWidthMm: 9000,
    pitchDegrees,
    left: { kind: 'hip', planAngleDegrees: 45 },
    right: { kind: 'valley', planAngleDegrees: 45 }
  });
  const roof = layOutRoof([slope], spec);
  if (!roof.ok) throw new Error(JSON.stringify(roof.problems));
  const [laid] = roof.slopes;
  const shapes = laid.courses.flatMap((course) =>
    course.runs.flatMap(({ pieces }) => pieces.map((piece) => cutShape(piece, course, laid.slope)))
  );
  return shapes.flatMap(({ rakes }) => rakes);
}

describe('the cut of a slate at a hip or valley of equal pitches', () => {
  // The steel square's rafter table, line "side cut of jacks use": inches on the one arm for 12 on the
  // other, printed to the nearest sixteenth. From memory; 12 × cos(pitch) agrees with every figure.
  it.each([
    [4, 11 + 3 / 8],
    [6, 10 + 3 / 4],
    [8, 10],
    [12, 8 + 1 / 2],
    [18, 6 + 11 / 16]
  ])('at a rise of %d in 12 is %f in on 12', (rise, inches) => {
    const cuts = cutsAt(rise);
    expect(cuts.length).toBeGreaterThan(20);
    for (const { angleDegrees } of cuts)
      expect(Math.abs(12 * Math.tan((angleDegrees * Math.PI) / 180) - inches)).toBeLessThan(1 / 16);
  });

  it('leans inwards at a hip and outwards at a valley', () => {
    for (const { side, leans } of cutsAt(8)) {
      if (side === 'left') expect(leans).toBe('right');
      else expect(leans).toBe('right');
    }
  });
});

describe('the area of a whole roof of one pitch', () => {
  // Handbooks: roof area = area on plan × √(1 + (rise / run)²), whatever hips and valleys there are.
  it.each([
    ['hipped', 30, (length: number, depth: number) => length * depth],
    ['hipped', 47.5, (length: number, depth: number) => length * depth],
    ['l-with-valley', 35, (length: number, depth: number) => length * depth + depth * depth],
    ['two-slope', 22.5, (length: number, depth: number) => length * depth]
  ] as const)('%s at %f°', (shape, pitchDegrees, onPlan) => {
    const [lengthMm, depthMm] = [600 * MM_PER_INCH, 360 * MM_PER_INCH];
    const slopes = startShape(shape, { lengthMm, depthMm, pitchDegrees }).map((slope, id) =>
      makeSlope({ ...slope, id: String(id), eaveOverhangMm: 0, vergeOverhangMm: 0 })
    );
    const area = slopes.reduce((sum, slope) => sum + slopeAreaMm2(slope), 0);
    const rise = Math.tan((pitchDegrees * Math.PI) / 180);
    const byHandbook = onPlan(lengthMm, depthMm) * Math.hypot(1, rise);
    // Rafters are in whole millimetres.
    expect(Math.abs(area / byHandbook - 1)).toBeLessThan(0.0005);
  });
});
