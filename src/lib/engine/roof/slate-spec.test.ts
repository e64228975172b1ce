import { describe, expect, it } from 'vitest';
import { slateSpec, slateSpecProblems } from './slate-spec.ts';

const GIVEN = Object.freeze({ lengthMm: 500, widthMm: 250, headlapMm: 100 });

describe('slateSpec', () => {
  it('fills in what is customary', () => {
    expect(slateSpec(GIVEN)).toEqual({
      ...GIVEN,
      slateAndAHalfWidthMm: 375,
      nailing: 'centre',
      headNailLineMm: 25,
      undereaveHoleFromHeadMm: 20,
      holeClearanceMm: 10,
      jointMinMm: 3,
      jointMaxMm: 5,
      narrowestCutMm: 150,
      densityKgPerM3: 2800
    });
  });

  it('keeps what is given', () => {
    expect(slateSpec({ ...GIVEN, nailing: 'head', slateAndAHalfWidthMm: 400 })).toMatchObject({
      nailing: 'head',
      slateAndAHalfWidthMm: 400
    });
  });
});

describe('slateSpecProblems', () => {
  it('finds none in a sound slate', () => {
    expect(slateSpecProblems(slateSpec(GIVEN))).toEqual([]);
  });

  it.each([
    [{ headlapMm: 200 }, 'headlapMm', 'headlap-above-third', 167],
    [{ headlapMm: -5 }, 'headlapMm', 'too-small', 1],
    [{ lengthMm: -500 }, 'lengthMm', 'too-small', 150],
    [{ lengthMm: 1e9 }, 'lengthMm', 'too-large', 1200],
    [{ widthMm: Number.NaN }, 'widthMm', 'not-a-number', undefined],
    [{ jointMinMm: 6, jointMaxMm: 3 }, 'jointMaxMm', 'range-reversed', 6],
    [{ slateAndAHalfWidthMm: 250 }, 'slateAndAHalfWidthMm', 'not-wider-than-slate', 313],
    [{ slateAndAHalfWidthMm: 600 }, 'slateAndAHalfWidthMm', 'too-large', 437],
    [{ densityKgPerM3: 2.8 }, 'densityKgPerM3', 'too-small', 2000]
  ])(
    '%o is refused beside the field, and the nearest value works',
    (change, field, code, nearest) => {
      const spec = slateSpec({ ...GIVEN, ...change });
      const problem = slateSpecProblems(spec).find((one) => one.field === field);
      expect(problem).toMatchObject({ code });
      expect(problem?.nearest).toBe(nearest);
      if (nearest === undefined) return;
      const repaired = slateSpecProblems({ ...spec, [field]: nearest });
      expect(repaired.filter((one) => one.field === field)).toEqual([]);
    }
  );

  it('gives plain data that survives JSON, NaN as null', () => {
    const problems = slateSpecProblems(slateSpec({ ...GIVEN, widthMm: Number.NaN }));
    expect(JSON.parse(JSON.stringify(problems))).toEqual(problems);
  });
});
