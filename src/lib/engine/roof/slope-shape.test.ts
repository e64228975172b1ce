import { describe, expect, it } from 'vitest';
import {
  insetAtTopMm,
  leftAtMm,
  makeSlope,
  meetingAtRidge,
  openingsAsSlated,
  rightAtMm,
  slopeAreaMm2,
  stripAreaMm2,
  widthAtMm
} from './slope-shape.ts';

const GIVEN = { id: 'one', rafterLengthMm: 5000, eaveWidthMm: 6000, pitchDegrees: 30 } as const;
/** A pitch whose cosine is 4/5. */
const PITCH_3_4_5 = (Math.acos(0.8) * 180) / Math.PI;

describe('insetAtTopMm', () => {
  it.each([
    [{ kind: 'verge', insetAtTopMm: 0 }, 0],
    [{ kind: 'hip', insetAtTopMm: 1200 }, 1200],
    [{ kind: 'hip', planAngleDegrees: 90 }, 0],
    [{ kind: 'hip', planAngleDegrees: 45 }, 4000],
    [{ kind: 'valley', planAngleDegrees: 45 }, -4000]
  ] as const)('%o on a 5000 mm rafter of 4000 mm run: %d', (edge, inset) => {
    const slope = { ...GIVEN, pitchDegrees: PITCH_3_4_5 };
    expect(insetAtTopMm(slope, edge)).toBeCloseTo(inset, 6);
  });
});

describe('sides and areas', () => {
  it('a plain slope takes both verge overhangs', () => {
    const slope = makeSlope(GIVEN);
    expect([leftAtMm(slope, 0), rightAtMm(slope, 5000)]).toEqual([-50, 6050]);
    expect(slopeAreaMm2(slope)).toBe(6100 * 5050);
  });

  it('a hip narrows, a valley widens, and below the eave they run on', () => {
    const slope = makeSlope({
      ...GIVEN,
      left: { kind: 'hip', insetAtTopMm: 1000 },
      right: { kind: 'valley', insetAtTopMm: -500 }
    });
    expect(leftAtMm(slope, -50)).toBe(-10);
    expect(leftAtMm(slope, 2500)).toBe(500);
    expect(rightAtMm(slope, 5000)).toBe(6500);
    expect(widthAtMm(slope, 5000)).toBe(5500);
    expect(stripAreaMm2(slope, 0, 5000)).toBe(5750 * 5000);
  });

  it('takes openings off strip by strip, the overhang with one that reaches a verge', () => {
    const slope = makeSlope({
      ...GIVEN,
      openings: [
        { kind: 'chimney', fromLeftMm: 0, widthMm: 600, fromEaveMm: 4500, heightMm: 500 },
        { kind: 'rooflight', fromLeftMm: 2000, widthMm: 800, fromEaveMm: 1000, heightMm: 1000 }
      ]
    });
    expect(openingsAsSlated(slope)[0]).toMatchObject({ fromLeftMm: -50, widthMm: 650 });
    expect(stripAreaMm2(slope, 900, 1100)).toBe(6100 * 200 - 800 * 100);
    expect(slopeAreaMm2(slope)).toBe(6100 * 5050 - 650 * 500 - 800 * 1000);
  });

  it('leaves a slope alone whose edges do not cross, or cross by more than a tape error', () => {
    const hips = (insetAtTopMm: number) =>
      makeSlope({
        ...GIVEN,
        left: { kind: 'hip', insetAtTopMm },
        right: { kind: 'hip', insetAtTopMm }
      });
    expect(meetingAtRidge(hips(3000))).toEqual(hips(3000));
    expect(meetingAtRidge(hips(3011))).toEqual(hips(3011));
    expect(meetingAtRidge(hips(3010))).toEqual(hips(3000));
  });
});
