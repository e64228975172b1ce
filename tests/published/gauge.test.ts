/**
 * Gauge, undereave length and headlap limits against printed tables. Sizes and gauges in the old
 * tables are in inches; everything runs in mm through the same functions the app uses.
 */
import { describe, expect, it } from 'vitest';
import { inchesToMm, mmToInches } from '$lib/engine';
import {
  headlapAtGaugeMm,
  headlapHint,
  largestHeadlapMm,
  maximumGaugeMm,
  nailLength,
  slateSpec,
  slateSpecProblems,
  undereaveLengthMm
} from '$lib/engine/roof';

function specInInches(length: number, lap: number, nailing: 'centre' | 'head') {
  return {
    lengthMm: inchesToMm(length),
    headlapMm: inchesToMm(lap),
    nailing,
    headNailLineMm: inchesToMm(1)
  };
}

describe('Modern Buildings, vol. 1, ch. XXI, table of slate sizes, lap 3 in, nail line 1 in', () => {
  // length, head gauge, head undereave, centre gauge, centre undereave; every cell of the table
  it.each([
    [12, 4, 8, 4.5, 7.5],
    [13, 4.5, 8.5, 5, 8],
    [16, 6, 10, 6.5, 9.5],
    [18, 7, 11, 7.5, 10.5],
    [20, 8, 12, 8.5, 11.5],
    [22, 9, 13, 9.5, 12.5],
    [24, 10, 14, 10.5, 13.5],
    [26, 11, 15, 11.5, 14.5]
  ])('%d in slates', (length, headGauge, headUndereave, centreGauge, centreUndereave) => {
    const head = maximumGaugeMm(specInInches(length, 3, 'head'));
    const centre = maximumGaugeMm(specInInches(length, 3, 'centre'));
    expect(mmToInches(head)).toBeCloseTo(headGauge, 9);
    expect(mmToInches(undereaveLengthMm(inchesToMm(length), head))).toBeCloseTo(headUndereave, 9);
    expect(mmToInches(centre)).toBeCloseTo(centreGauge, 9);
    expect(mmToInches(undereaveLengthMm(inchesToMm(length), centre))).toBeCloseTo(
      centreUndereave,
      9
    );
  });
});

describe('Building Construction, part 1, "Lap and gauge"', () => {
  it.each([
    [20, 3, 'centre', 8.5],
    [20, 3, 'head', 8],
    [20, 4, 'centre', 8],
    [20, 4, 'head', 7.5],
    [16, 3, 'head', 6]
  ] as const)('%d in slates, lap %d in, %s-nailed: %d in', (length, lap, nailing, gauge) => {
    const spec = specInInches(length, lap, nailing);
    expect(mmToInches(maximumGaugeMm(spec))).toBeCloseTo(gauge, 9);
    expect(mmToInches(headlapAtGaugeMm(spec, inchesToMm(gauge)))).toBeCloseTo(lap, 9);
  });
});

describe('NHBC Standards 7.2.19, table 12: headlap at most a third of the length', () => {
  it('500 mm slates: 167 mm is the most, 168 is refused with 167 as the nearest', () => {
    expect(largestHeadlapMm(500)).toBe(167);
    const problemsAt = (headlapMm: number) =>
      slateSpecProblems(slateSpec({ lengthMm: 500, widthMm: 250, headlapMm }));
    expect(problemsAt(167)).toEqual([]);
    expect(problemsAt(168)).toMatchObject([{ code: 'headlap-above-third', nearest: 167 }]);
  });
});

describe('headlap by pitch, moderate exposure, where trade guides agree', () => {
  it.each([
    [500, 300, 20, 115],
    [500, 300, 22.5, 105],
    [500, 300, 25, 95],
    [500, 300, 27.5, 85],
    [500, 300, 30, 80],
    [500, 300, 35, 70],
    [500, 300, 40, 60],
    [500, 300, 45, 55],
    [500, 250, 27.5, 85],
    [500, 250, 30, 80],
    [500, 250, 35, 70],
    [500, 250, 40, 60],
    [500, 250, 45, 55],
    [400, 250, 30, 80],
    [400, 200, 35, 70],
    [350, 250, 40, 60],
    [300, 200, 45, 55]
  ])('%d × %d at %d°: %d mm', (length, width, pitch, headlapMm) => {
    expect(headlapHint(length, width, pitch)).toEqual({ headlapMm, atPitchDegrees: pitch });
  });

  it.each([
    [500, 250, 25],
    [400, 250, 27.5],
    [500, 300, 19.9],
    [600, 300, 35]
  ])('%d × %d at %d°: guides disagree or list nothing, so no hint', (length, width, pitch) => {
    expect(headlapHint(length, width, pitch)).toBeUndefined();
  });
});

describe('nail length, a trade manual: twice the thickness and 20 to 25 mm', () => {
  it.each([
    [5, 30, 35, 30],
    [6, 32, 37, 35],
    [7.5, 35, 40, 35],
    [9, 38, 43, 40]
  ])('%d mm slates', (thickness, leastMm, mostMm, nearestSoldMm) => {
    expect(nailLength(thickness)).toEqual({ leastMm, mostMm, nearestSoldMm });
  });
});
