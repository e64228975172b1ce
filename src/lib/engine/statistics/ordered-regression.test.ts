import { describe, expect, it } from 'vitest';
import { orderedRegression } from './ordered-regression.ts';

const row = (category: number, count: number, ...covariates: number[]) => ({
  covariates,
  category,
  count
});

describe('orderedRegression', () => {
  it('says which class is empty', () => {
    expect(orderedRegression([], 2, 'probit')).toEqual({
      ok: false,
      reason: 'empty-class',
      category: 1
    });
    expect(orderedRegression([row(1, 3), row(3, 3), row(2, 0)], 3, 'logit')).toEqual({
      ok: false,
      reason: 'empty-class',
      category: 2
    });
  });

  it('refuses rows that do not fit together', () => {
    expect(() => orderedRegression([row(1, 1), row(2, 1, 5)], 2, 'probit')).toThrow(/wrong-length/);
    expect(() => orderedRegression([row(3, 1)], 2, 'probit')).toThrow(/out-of-range/);
    expect(() => orderedRegression([row(1, -1)], 2, 'probit')).toThrow(/out-of-range/);
    expect(() => orderedRegression([row(1, 1, Number.NaN)], 2, 'probit')).toThrow(/not-finite/);
    expect(() => orderedRegression([row(1, 1)], 1, 'probit')).toThrow(/out-of-range/);
  });

  it('is the log odds for two classes without covariates', () => {
    const fit = orderedRegression(Object.freeze([row(1, 30), row(2, 70)]), 2, 'logit');
    expect(fit).toMatchObject({ ok: true, cuts: [expect.closeTo(Math.log(3 / 7), 12)] });
    // variance of log odds: 1/30 + 1/70
    if (fit.ok) expect(fit.covariance[0][0]).toBeCloseTo(1 / 30 + 1 / 70, 12);
  });

  it('is the log odds ratio for a two by two table', () => {
    const fit = orderedRegression(
      [row(1, 30, 0), row(2, 70, 0), row(1, 50, 1), row(2, 50, 1)],
      2,
      'logit'
    );
    expect(fit).toMatchObject({ ok: true, coefficients: [expect.closeTo(Math.log(3 / 7), 11)] });
  });

  it('refuses classes that the covariate separates', () => {
    for (const link of ['probit', 'logit'] as const)
      expect(orderedRegression([row(1, 5, -1), row(2, 5, 1)], 2, link)).toEqual({
        ok: false,
        reason: 'not-determined'
      });
  });

  it('refuses a covariate that repeats another', () => {
    const rows = [row(1, 3, 0, 0), row(2, 7, 0, 0), row(1, 5, 1, 1), row(2, 5, 1, 1)];
    expect(orderedRegression(rows, 2, 'probit')).toEqual({ ok: false, reason: 'not-determined' });
  });
});
