/**
 * Courses of several lengths against worked figures. The rule (longest at the eave, each margin at
 * most the one below, the first batten of a shorter set nearer by half the difference in length)
 * was read on a stone-roofing society's pages; the figures follow from it and were computed apart
 * from this program.
 */
import { describe, expect, it } from 'vitest';
import { inchesToMm, mmToInches } from '$lib/engine';
import { makeSlope, slateSpec } from '$lib/engine/roof';
import { checkCourses, setOutSets } from '$lib/engine/sizes';

/** A rafter that the given courses fill exactly at their greatest gauge. */
function rafter(lengthsMm: readonly number[], headlapMm: number) {
  const gauges = lengthsMm.map((length) => (length - headlapMm) / 2);
  const toTop = gauges.slice(0, -1).reduce((sum, gauge) => sum + gauge, 0) + lengthsMm.at(-1)!;
  return makeSlope({
    id: 's',
    rafterLengthMm: toTop,
    eaveWidthMm: 5000,
    pitchDegrees: 40,
    eaveOverhangMm: 0,
    ridgeGapMm: 0
  });
}

function setOut(
  long: number,
  short: number,
  headlap: number,
  longCourses: number,
  shortCourses: number
) {
  const set = (lengthMm: number) => ({
    id: String(lengthMm),
    lengthMm,
    widths: { kind: 'one', widthMm: lengthMm / 2 } as const
  });
  const lengths = [
    ...new Array<number>(longCourses).fill(long),
    ...new Array<number>(shortCourses).fill(short)
  ];
  const base = slateSpec({ lengthMm: long, widthMm: long / 2, headlapMm: headlap });
  const laid = setOutSets(rafter(lengths, headlap), base, [
    { set: set(long), courses: longCourses },
    { set: set(short), courses: shortCourses }
  ]);
  return laid.courses.filter(({ kind }) => kind === 'full');
}

describe('lap 3 in, 20 then 18 in slates', () => {
  const courses = setOut(inchesToMm(20), inchesToMm(18), inchesToMm(3), 4, 4);
  const inches = (values: (number | undefined)[]) =>
    values.map((value) => Math.round(mmToInches(value ?? Number.NaN) * 1e6) / 1e6);

  it('gauges 8½ … 6½, 7½ …', () => {
    expect(inches(courses.slice(1).map(({ stepMm }) => stepMm))).toEqual([
      8.5, 8.5, 8.5, 6.5, 7.5, 7.5, 7.5
    ]);
    expect(courses.map(({ isDrop }) => isDrop)).toEqual([
      false,
      false,
      false,
      false,
      true,
      false,
      false,
      false
    ]);
  });

  it('margins 8½ four times, then 7½', () => {
    expect(inches(courses.map(({ marginMm }) => marginMm))).toEqual([
      8.5, 8.5, 8.5, 8.5, 7.5, 7.5, 7.5, 7.5
    ]);
  });

  it('headlap 3 throughout but 4 once', () => {
    expect(inches(courses.slice(2).map(({ headlapMm }) => headlapMm))).toEqual([3, 3, 3, 4, 3, 3]);
  });

  it('the wrong way, 7½ at the change: a margin of 9½ and a headlap of 2, told as wrong', () => {
    const { faults } = checkCourses(
      [20, 20, 20, 20, 18, 18, 18, 18],
      [8.5, 8.5, 8.5, 7.5, 7.5, 7.5, 7.5],
      3
    );
    expect(faults).toEqual([
      { code: 'margin-grows', course: 4, marginMm: 9.5, belowMm: 8.5 },
      { code: 'headlap-short', course: 5, headlapMm: 2, askedMm: 3 }
    ]);
  });
});

describe('lap 75 mm, 500 then 450 mm slates', () => {
  const courses = setOut(500, 450, 75, 3, 3);

  it('gauges 212.5 … 162.5, 187.5', () => {
    expect(courses.slice(1).map(({ stepMm }) => stepMm)).toEqual([
      212.5, 212.5, 162.5, 187.5, 187.5
    ]);
  });

  it('the wrong way: a margin of 237.5 and a lap of 50', () => {
    const { faults } = checkCourses([500, 500, 500, 450, 450], [212.5, 212.5, 187.5, 187.5], 75);
    expect(faults).toEqual([
      { code: 'margin-grows', course: 3, marginMm: 237.5, belowMm: 212.5 },
      { code: 'headlap-short', course: 4, headlapMm: 50, askedMm: 75 }
    ]);
  });
});
