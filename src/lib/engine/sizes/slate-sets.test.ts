import { describe, expect, it } from 'vitest';
import { makeSlope, slateSpec } from '$lib/engine/roof';
import { EngineError } from '../errors.ts';
import { chooseCourses } from './choose-courses.ts';
import { checkCourses } from './course-check.ts';
import { setOutSets } from './set-out-sets.ts';
import { type SlateSet, setsProblems, specOfSet } from './slate-sets.ts';

const base = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 90 });
const set = (lengthMm: number, widthMm = 200): SlateSet => ({
  id: String(lengthMm),
  lengthMm,
  widths: { kind: 'one', widthMm }
});
const codes = (sets: SlateSet[]) => setsProblems(sets, base).map(({ code }) => code);
const slope = makeSlope({ id: 's', rafterLengthMm: 4000, eaveWidthMm: 5000, pitchDegrees: 40 });

describe('sets that go on one roof together', () => {
  it.each([
    [[500, 450, 400], []],
    [[400, 450], ['rising']],
    [[450, 450], ['same-length']],
    [
      [500, 170],
      ['below-twice-lap', 'wider-than-long', 'step-too-large']
    ],
    [
      [500, 260],
      ['headlap-above-third', 'step-too-large']
    ],
    [[500, Number.NaN], ['not-a-length']],
    [[500, 0], ['not-a-length']]
  ])('lengths %j: %j', (lengths, problems) => {
    expect(codes(lengths.map((length) => set(length)))).toEqual(problems);
  });

  it('no set, and 12 of them', () => {
    expect(codes([])).toEqual(['no-sets']);
    expect(codes(Array.from({ length: 12 }, (_set, index) => set(600 - 10 * index)))).toEqual([
      'too-many'
    ]);
  });

  it('a width wider than long, widths turned round', () => {
    expect(codes([set(300, 310)])).toEqual(['wider-than-long']);
    expect(codes([{ ...set(400), widths: { kind: 'random', fromMm: 300, toMm: 200 } }])).toEqual([
      'widths-reversed'
    ]);
  });

  it('random widths stand for their mean', () => {
    const random: SlateSet = { ...set(400), widths: { kind: 'random', fromMm: 150, toMm: 270 } };
    expect(specOfSet(base, random)).toMatchObject({ lengthMm: 400, widthMm: 210, headlapMm: 90 });
  });
});

describe('a right plan where it can be', () => {
  it('a set of one course is laid, its headlap kept', () => {
    const laid = setOutSets(slope, base, [
      { set: set(500), courses: 6 },
      { set: set(450), courses: 1 },
      { set: set(400), courses: 20 }
    ]);
    expect(laid.courses.filter(({ isDrop }) => isDrop).map(({ course }) => course)).toEqual([7, 8]);
    for (const { headlapMm } of laid.courses)
      if (headlapMm !== undefined) expect(headlapMm).toBeGreaterThanOrEqual(90);
  });

  it('stock for half a course is left unused', () => {
    const chosen = chooseCourses([slope], base, [
      { set: set(500), stock: 12 },
      { set: set(400), stock: 2000 }
    ]);
    expect(chosen).toMatchObject({ status: 'optimal', sets: [{ courses: 0, used: 0 }, {}] });
  });

  it('too little of everything says how much is lacking', () => {
    const chosen = chooseCourses([slope], base, [{ set: set(500), stock: 100 }]);
    expect(chosen.status).toBe('short');
    if (chosen.status === 'short') {
      const [{ used }] = chosen.sets;
      expect(chosen.lackingM2).toBeCloseTo((used - 100) * 0.1, 9);
    }
  });

  it('slopes of two lengths share the list of courses from the eave', () => {
    const short = makeSlope({ id: 't', rafterLengthMm: 2500, eaveWidthMm: 5000, pitchDegrees: 40 });
    const chosen = chooseCourses([slope, short], base, [
      { set: set(500), stock: 400 },
      { set: set(400), stock: 900 }
    ]);
    if (chosen.status !== 'optimal') throw new Error('enough for both slopes');
    const [long, other] = [slope, short].map((each) => setOutSets(each, base, chosen.sets));
    expect(other.courses.length).toBeLessThan(long.courses.length);
    const setsOf = (laid: typeof long) => laid.courses.map(({ setId }) => setId);
    expect(setsOf(other).slice(0, -1)).toEqual(setsOf(long).slice(0, other.courses.length - 1));
  });

  it('misuse is refused', () => {
    expect(() => chooseCourses([], base, [{ set: set(500), stock: 1 }])).toThrow(EngineError);
    expect(() => chooseCourses([slope], base, [{ set: set(170), stock: 1 }])).toThrow(EngineError);
    expect(() => checkCourses([], [], 90)).toThrow(EngineError);
    expect(() => checkCourses([500, 500], [], 90)).toThrow(EngineError);
    expect(() => setOutSets(slope, base, [{ set: set(500), courses: 3 }])).toThrow(
      'below the top batten'
    );
    expect(() => setOutSets(slope, base, [{ set: set(500), courses: 0 }])).toThrow(EngineError);
  });
});
