import { describe, expect, it } from 'vitest';
import {
  VARIABLES_AQLS,
  acceptabilityFrom,
  allowedShareFrom,
  estimateShareOutside,
  findVariablesPlan,
  judgeByVariables,
  roundedIndex,
  shareBeyond,
  variablesAcceptance,
  variablesPlan,
  type VariablesLetter
} from '$lib/engine/delivery';

describe('readings 197 188 184 205 201, limits 180 and 209 (AQLSchemes, EPn)', () => {
  const readings = Object.freeze([197, 188, 184, 205, 201]);
  const limits = { low: 180, high: 209 };
  const plan = { allowedShare: 0.0333 };

  it('mean 195, SD 8.803408430830, 2.799208542 % outside (computed)', () => {
    const result = judgeByVariables(readings, limits, plan);
    if (!result.ok) throw new Error(result.reason);
    const { mean, sd, shareOutside, accepted } = result.judgement;
    expect(mean).toBe(195);
    expect(sd).toBeCloseTo(8.80340843083, 11);
    expect((limits.high - mean) / sd).toBeCloseTo(1.590293135892, 11);
    expect((mean - limits.low) / sd).toBeCloseTo(1.703885502741, 11);
    expect(shareOutside.above * 100).toBeCloseTo(2.182311752, 8);
    expect(shareOutside.below * 100).toBeCloseTo(0.61689679, 8);
    expect(shareOutside.total * 100).toBeCloseTo(2.799208542, 8);
    expect(accepted).toBe(true);
  });

  it('with Q rounded as in the examples of MIL-STD-414: 2.187090 and .659473 % (computed)', () => {
    // Consistent with the remembered 2.19, 0.66 and 2.85 % of Examples B-1 to B-3, M 3.32 %.
    // Their SD is remembered as 8.81; the data give 8.80, so it is not asserted.
    const { below, above, total } = estimateShareOutside(195, 8.80340843083, 5, limits, (index) =>
      roundedIndex(index, 2)
    );
    expect(above * 100).toBeCloseTo(2.18709, 5);
    expect(below * 100).toBeCloseTo(0.659473, 5);
    expect(total).toBeLessThan(0.0332);
  });

  it('by the one-limit rule too: Q 1.59 is at least k 1.525 for letter D, AQL 1.0', () => {
    const found = variablesPlan(40, 1);
    expect(found.ok && found.plan.letter).toBe('D');
    expect(found.ok && found.plan.acceptability).toBeCloseTo(1.525, 3); // computed from M
    expect(found.ok && found.plan.acceptability).toBeLessThan(1.590293);
  });
});

/** MIL-STD-414 / ANSI Z1.9, M in per cent, as tabulated in AQLSchemes (AAZ19): n, then AQLs. */
const ALLOWED: Record<VariablesLetter, readonly number[]> = {
  B: [3, NaN, NaN, 7.59, 18.86, 26.94, 33.69],
  C: [4, 1.49, 5.46, 10.88, 16.41, 22.84, 29.43],
  D: [5, 3.33, 5.82, 9.8, 14.37, 20.19, 26.55],
  E: [7, 3.54, 5.34, 8.4, 12.19, 17.34, 23.3],
  F: [10, 3.27, 4.72, 7.26, 10.53, 15.17, 20.73],
  G: [15, 3.06, 4.32, 6.55, 9.48, 13.74, 18.97],
  H: [20, 2.93, 4.1, 6.18, 8.95, 13.01, 18.07],
  I: [25, 2.86, 3.97, 5.98, 8.65, 12.6, 17.55],
  J: [35, 2.66, 3.7, 5.58, 8.11, 11.89, 16.67],
  K: [50, 2.47, 3.44, 5.21, 7.61, 11.23, 15.87],
  L: [75, 2.27, 3.17, 4.83, 7.1, 10.58, 15.07]
};
const LOTS: readonly (readonly [number, number, VariablesLetter])[] = [
  [3, 8, 'B'],
  [9, 15, 'B'],
  [16, 25, 'C'],
  [26, 50, 'D'],
  [51, 90, 'E'],
  [91, 150, 'F'],
  [151, 280, 'G'],
  [281, 400, 'H'],
  [401, 500, 'I'],
  [501, 1200, 'J'],
  [1201, 3200, 'K'],
  [3201, 10000, 'L']
];

describe('letters and M of MIL-STD-414 / ANSI Z1.9, level II, normal', () => {
  it.each(LOTS)('lots of %i to %i take letter %s', (from, to, letter) => {
    for (const lotSize of [from, to])
      for (const [column, aql] of VARIABLES_AQLS.entries()) {
        // The arrow of letter B at AQL 1.0 and 1.5 leads to the plan of letter C, n = 4.
        const used = Number.isNaN(ALLOWED[letter][column + 1]) ? 'C' : letter;
        expect(variablesPlan(lotSize, aql)).toMatchObject({
          ok: true,
          plan: {
            letter: used,
            sampleSize: Math.min(ALLOWED[used][0], lotSize),
            allowedShare: ALLOWED[used][column + 1] / 100
          }
        });
      }
  });

  it('letters M and beyond are not transcribed and are refused', () => {
    expect(variablesPlan(10_001, 1)).toEqual({ ok: false, reason: 'lot-beyond-table' });
  });

  // Computed from M.
  it.each<[VariablesLetter, number[]]>([
    ['D', [1.525, 1.403, 1.237, 1.069, 0.874, 0.675]],
    ['J', [1.894, 1.758, 1.573, 1.388, 1.177, 0.968]],
    ['L', [1.981, 1.841, 1.652, 1.463, 1.247, 1.033]]
  ])('k of letter %s', (letter, expected) => {
    const [sampleSize, ...allowed] = ALLOWED[letter];
    for (const [column, k] of expected.entries())
      expect(acceptabilityFrom(allowed[column] / 100, sampleSize)).toBeCloseTo(k, 3);
  });

  it('lot 3201 to 10,000, 1.5 %: n = 75, k = 1.84097, M = .0317 (AQLSchemes)', () => {
    const found = variablesPlan(5000, 1.5);
    expect(found.ok && found.plan).toMatchObject({ sampleSize: 75, allowedShare: 0.0317 });
    expect(found.ok && found.plan.acceptability).toBeCloseTo(1.84097, 5);
  });

  it('letter J, AQL 1.0: n = 35, k = 1.89 (AcceptanceSampling)', () => {
    expect(acceptabilityFrom(0.0266, 35)).toBeCloseTo(1.89, 2);
  });

  it('k = 1.905285, n = 42 gives M = .0263045512; the way back gives k (inputs AQLSchemes)', () => {
    const allowed = allowedShareFrom({ sampleSize: 42, acceptability: 1.905285 });
    expect(allowed).toBeCloseTo(0.0263045512, 10);
    expect(acceptabilityFrom(allowed, 42)).toBeCloseTo(1.905285, 10);
  });

  it('lower limit 225, mean 255, SD 15, n = 42: .0206956260 (inputs AQLSchemes, computed)', () => {
    expect(shareBeyond((255 - 225) / 15, 42)).toBeCloseTo(0.020695626, 10);
  });
});

describe('operating characteristic of one-limit plans (CRAN AcceptanceSampling manual)', () => {
  const good = { share: 0.05, acceptance: 0.95 };
  const poor = { share: 0.15, acceptance: 0.075 };

  it('SD from the sample: n = 49, k = 1.326538; .9499980 and .0739722 (computed)', () => {
    const plan = { sampleSize: 49, acceptability: 1.326538 };
    expect(variablesAcceptance(plan, 0.05)).toBeCloseTo(0.949998, 7);
    expect(variablesAcceptance(plan, 0.15)).toBeCloseTo(0.0739722, 7);
    const found = findVariablesPlan(good, poor);
    expect(found.ok && found.plan.sampleSize).toBe(49);
    expect(found.ok && found.plan.acceptability).toBeCloseTo(1.326538, 5);
  });

  it('SD known: n = 26, k = 1.322271; .9500002 and .0724904 (computed)', () => {
    const plan = { sampleSize: 26, acceptability: 1.322271 };
    expect(variablesAcceptance(plan, 0.05, 'sd known')).toBeCloseTo(0.9500002, 7);
    expect(variablesAcceptance(plan, 0.15, 'sd known')).toBeCloseTo(0.0724904, 7);
    const found = findVariablesPlan(good, poor, 'sd known');
    expect(found.ok && found.plan.sampleSize).toBe(26);
    expect(found.ok && found.plan.acceptability).toBeCloseTo(1.322271, 5);
  });
});
