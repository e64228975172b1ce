import { describe, expect, it } from 'vitest';
import { binsFromPairs } from './bins.ts';
import { quantilesMm } from './quantiles.ts';

const four = binsFromPairs([
  [400, 1],
  [500, 1],
  [700, 1],
  [800, 1]
]);

describe('quantilesMm', () => {
  it('says when there is nothing to describe', () => {
    expect(quantilesMm(binsFromPairs([]), [0.5])).toEqual({ ok: false, reason: 'empty' });
  });

  it('refuses a share outside 0 to 1', () => {
    expect(() => quantilesMm(four, [1.01])).toThrow(/out-of-range/);
    expect(() => quantilesMm(four, [Number.NaN])).toThrow(/out-of-range/);
  });

  it('gives the one slate for every share', () => {
    expect(quantilesMm(binsFromPairs([[612, 1]]), [0, 0.3, 1])).toEqual({
      ok: true,
      quantilesMm: [6.12, 6.12, 6.12]
    });
  });

  it('runs from the thinnest to the thickest and lies between order statistics', () => {
    expect(quantilesMm(four, Object.freeze([1, 0, 0.5, 0.25]))).toEqual({
      ok: true,
      quantilesMm: [8, 4, 6, 4.75]
    });
  });

  it('counts each of many equal slates', () => {
    const bins = binsFromPairs([
      [500, 99],
      [900, 1]
    ]);
    expect(quantilesMm(bins, [0.98, 0.99, 1])).toMatchObject({
      quantilesMm: [5, expect.closeTo(5.04, 10), 9] // rank 98.01 of 0…99: 0.01 of the way to 9 mm
    });
  });

  it('does with fractional counts', () => {
    const bins = binsFromPairs([
      [500, 0.25],
      [600, 0.5]
    ]);
    expect(quantilesMm(bins, [0, 0.5, 1])).toEqual({ ok: true, quantilesMm: [5, 5, 5] });
  });
});
