import { describe, expect, it } from 'vitest';
import { binsFromPairs } from './bins.ts';
import { lag1Autocorrelation, momentsOfBins, momentsOfList } from './moments.ts';

describe('momentsOfBins', () => {
  it('says when there is nothing to describe', () => {
    expect(momentsOfBins(binsFromPairs([]))).toEqual({ ok: false, reason: 'empty' });
  });

  it('gives one slate no spread', () => {
    expect(momentsOfBins(binsFromPairs([[612, 1]]))).toEqual({
      ok: true,
      count: 1,
      meanMm: 6.12,
      sdMm: null,
      thinnestMm: 6.12,
      thickestMm: 6.12
    });
  });

  it('gives equal slates a spread of 0', () => {
    expect(momentsOfBins(binsFromPairs([[612, 9]]))).toMatchObject({ meanMm: 6.12, sdMm: 0 });
  });

  it('agrees with a sum by hand: 5, 6, 6 mm has mean 17/3 and variance 1/3', () => {
    const moments = momentsOfBins(
      binsFromPairs([
        [500, 1],
        [600, 2]
      ])
    );
    expect(moments).toMatchObject({ count: 3, thinnestMm: 5, thickestMm: 6 });
    if (!moments.ok) throw new Error('not empty');
    expect(moments.meanMm).toBeCloseTo(17 / 3, 14);
    expect(moments.sdMm).toBeCloseTo(Math.sqrt(1 / 3), 14);
  });

  it('takes fractional counts as they stand', () => {
    const moments = momentsOfBins(
      binsFromPairs([
        [500, 0.5],
        [700, 1.5]
      ])
    );
    // n 2, mean 6.5, squares 0.5 · 1.5² + 1.5 · 0.5² = 1.5, over n − 1 = 1
    expect(moments).toMatchObject({
      count: 2,
      meanMm: 6.5,
      sdMm: expect.closeTo(Math.sqrt(1.5), 14)
    });
  });
});

describe('momentsOfList', () => {
  it('says when there is nothing to describe', () => {
    expect(momentsOfList([])).toEqual({ ok: false, reason: 'empty' });
  });

  it('gives one number no spread', () => {
    expect(momentsOfList(Object.freeze([7]))).toMatchObject({ count: 1, mean: 7, sd: null });
  });

  it('refuses NaN and infinity', () => {
    expect(() => momentsOfList([1, Number.NaN])).toThrow(/value 1 is NaN/);
    expect(() => momentsOfList([Infinity])).toThrow(/not-finite/);
  });

  it('keeps what cancels: 1, 1e100, 1, −1e100 has mean 0.5', () => {
    expect(momentsOfList(Object.freeze([1, 1e100, 1, -1e100]))).toMatchObject({ mean: 0.5 });
  });
});

describe('lag1Autocorrelation', () => {
  it('needs two values that differ', () => {
    expect(lag1Autocorrelation([5])).toEqual({ ok: false, reason: 'too-few' });
    expect(lag1Autocorrelation([5, 5, 5])).toEqual({ ok: false, reason: 'no-spread' });
  });

  it('is −1/2 for two values and 1/4 for 1, 2, 3, 4', () => {
    expect(lag1Autocorrelation([1, 2])).toEqual({ ok: true, correlation: -0.5 });
    // deviations −1.5 −0.5 0.5 1.5: products 0.75 − 0.25 + 0.75 over squares 5
    expect(lag1Autocorrelation(Object.freeze([1, 2, 3, 4]))).toEqual({
      ok: true,
      correlation: 0.25
    });
  });
});
