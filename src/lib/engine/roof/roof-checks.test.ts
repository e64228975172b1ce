import { describe, expect, it } from 'vitest';
import { type CheckedRoof, checkRoof } from './roof-checks.ts';
import { leastSideLapMm } from './side-lap.ts';
import { slateSpec } from './slate-spec.ts';

const SOUND: CheckedRoof = Object.freeze({
  spec: slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 }),
  pitchDegrees: 35,
  headlapMm: 101,
  sideLapMm: 122,
  cutsWithoutNail: 0,
  narrowCuts: 0,
  narrowestCutMm: 250
});
const codes = (change: Partial<CheckedRoof>) =>
  checkRoof({ ...SOUND, ...change }).map((check) => check.code);

describe('checkRoof', () => {
  it('finds nothing on a sound roof', () => {
    expect(checkRoof(SOUND)).toEqual([]);
  });

  it.each([
    [{ headlapMm: 167.01, sideLapMm: 200 }, 'headlap-above-third'],
    [{ pitchDegrees: 19.9 }, 'pitch-below-least'],
    [{ sideLapMm: 100.9 }, 'side-lap-below-headlap'],
    [{ cutsWithoutNail: 2 }, 'cuts-without-nail'],
    [{ narrowCuts: 3, narrowestCutMm: 120 }, 'narrow-cuts'],
    [{ headlapMm: 69 }, 'headlap-below-hint'],
    [{ wholeWidth: { slatedMm: 2600, nearestMm: 2652 } }, 'bond-not-whole']
  ])('%o: %s', (change, code) => {
    expect(codes(change)).toEqual([code]);
  });

  it('warns below 54 mm, and notes what guides agree on beside it', () => {
    expect(codes({ headlapMm: 53.9 })).toEqual(['headlap-below-least', 'headlap-below-hint']);
  });

  it.each([
    [{ headlapMm: 167, sideLapMm: 200 }],
    [{ pitchDegrees: 20 }],
    [{ sideLapMm: 101 }],
    [{ headlapMm: 70, sideLapMm: 100 }]
  ])('%o: exactly on the limit is within it', (change) => {
    expect(codes(change)).toEqual([]);
  });

  it('says nothing of a pitch on which guides disagree', () => {
    expect(codes({ pitchDegrees: 25, headlapMm: 60 })).toEqual([]);
  });
});

describe('leastSideLapMm', () => {
  const course = (...edges: [number, number][]) => ({
    runs: [
      {
        leftMm: edges[0][0],
        rightMm: edges[edges.length - 1][1],
        pieces: edges.map(([left, right]) => ({
          kind: 'full' as const,
          isCut: false,
          leftMm: left,
          widthMm: right - left,
          tailWidthMm: right - left,
          marginWidthMm: right - left,
          headWidthMm: right - left,
          slateLeftMm: 0,
          slateRightMm: 250,
          holdsNail: true
        }))
      }
    ]
  });

  it('is nothing without two courses', () => {
    expect(leastSideLapMm([])).toBeUndefined();
    expect(leastSideLapMm([course([0, 250], [253, 503])])).toBeUndefined();
  });

  it('is the shorter way from joint to joint', () => {
    const lower = course([0, 250], [253, 503]);
    const upper = course([0, 375], [378, 628]);
    expect(leastSideLapMm([lower, upper])).toBe(122);
    expect(leastSideLapMm([upper, lower])).toBe(122);
  });

  it('is 0 where two joints meet', () => {
    const one = course([0, 250], [253, 503]);
    expect(leastSideLapMm([one, one])).toBe(0);
  });
});
