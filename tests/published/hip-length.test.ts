/**
 * Lengths of hips and valleys against printed figures.
 *
 * Sources, read: Griffith, Carpentry, "Hip and Valley Rafters of Square Cornered Buildings" (a hip is the
 * diagonal of a square prism whose base is the run and whose height is the rise; its run for 12 in of
 * common run is 16.97 in). A training manual of building constructors (NAVEDTRA 14044), "Hip rafters":
 * for 8 in of rise 18.76 in a foot of common run; a run of 21.21 ft and a rise of 10 ft give 23.45 ft.
 */
import { describe, expect, it } from 'vitest';
import { MM_PER_INCH } from '$lib/engine';
import { makeSlope, sideLengthMm } from '$lib/engine/roof';

/** A hip at a square corner of equal pitches, by common run and rise in inches; its length in inches. */
function hipInches(runInches: number, riseInches: number): number {
  const rafterLengthMm = Math.hypot(runInches, riseInches) * MM_PER_INCH;
  const slope = makeSlope({
    id: 'a',
    rafterLengthMm,
    eaveWidthMm: 4 * runInches * MM_PER_INCH,
    pitchDegrees: (Math.atan2(riseInches, runInches) * 180) / Math.PI,
    left: { kind: 'hip', planAngleDegrees: 45 },
    right: { kind: 'valley', planAngleDegrees: 45 }
  });
  expect(sideLengthMm(slope, 'right')).toBeCloseTo(sideLengthMm(slope, 'left'), 9);
  return sideLengthMm(slope, 'left') / MM_PER_INCH;
}

describe('a hip or valley', () => {
  it('is 18.76 in for each foot of common run at 8 in of rise', () => {
    expect(hipInches(12, 8)).toBeCloseTo(18.76, 2);
  });

  it('is 23.45 ft for a common run of 15 ft and a rise of 10 ft', () => {
    expect(hipInches(15 * 12, 10 * 12) / 12).toBeCloseTo(23.45, 2);
  });

  it('flat, it is its run: 16.97 in for 12 in', () => {
    expect(hipInches(12, 1e-9)).toBeCloseTo(16.97, 2);
  });
});
