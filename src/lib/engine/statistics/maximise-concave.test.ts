import { describe, expect, it } from 'vitest';
import { maximiseConcave } from './maximise-concave.ts';
import { invertPositiveDefinite } from './symmetric.ts';

describe('invertPositiveDefinite', () => {
  it('inverts, whatever the units of the rows', () => {
    const matrix = Object.freeze([
      [4e12, 2e3],
      [2e3, 3e-6]
    ]);
    const inverse = invertPositiveDefinite(matrix);
    // determinant 4e12 · 3e-6 − 4e6 = 8e6
    expect(inverse?.[0][0]).toBeCloseTo(3e-6 / 8e6, 25);
    expect(inverse?.[0][1]).toBeCloseTo(-2e3 / 8e6, 16);
    expect(inverse?.[1][1]).toBeCloseTo(4e12 / 8e6, 6);
  });

  it('refuses a matrix that is singular, indefinite or not a number', () => {
    const refused = [
      [
        [1, 1],
        [1, 1]
      ],
      [
        [1, 2],
        [2, 1]
      ],
      [
        [0, 0],
        [0, 1]
      ],
      [
        [Number.NaN, 0],
        [0, 1]
      ]
    ];
    for (const matrix of refused) expect(invertPositiveDefinite(matrix)).toBeNull();
  });
});

describe('maximiseConcave', () => {
  /** log x − x, which has its top at 1 and exists above 0 only. */
  const logLess = ([x]: readonly number[]) =>
    x > 0
      ? { value: Math.log(x) - x, gradient: [1 / x - 1], information: [[1 / (x * x)]] }
      : { value: -Infinity, gradient: [0], information: [[0]] };

  it.each([1e-6, 0.5, 1, 1.999, 50])('finds the top from %f', (start) => {
    const top = maximiseConcave([start], logLess);
    expect(top).toMatchObject({ ok: true, value: -1, at: [expect.closeTo(1, 12)] });
    if (top.ok) expect(top.covariance[0][0]).toBeCloseTo(1, 10);
  });

  it('says so where there is no top', () => {
    const endless = ([x]: readonly number[]) => ({
      value: x,
      gradient: [1],
      information: [[0]]
    });
    expect(maximiseConcave([0], endless)).toEqual({ ok: false, reason: 'not-determined' });
  });
});
