import { describe, expect, it } from 'vitest';
import { intervalSlopes, logNormalInterval, logit, probit } from './links.ts';

describe('logNormalInterval', () => {
  it('is −Infinity for an empty interval and 0 for the whole line', () => {
    expect(logNormalInterval(1, 1)).toBe(-Infinity);
    expect(logNormalInterval(2, 1)).toBe(-Infinity);
    expect(logNormalInterval(-Infinity, Infinity)).toBe(0);
  });

  // reference values computed at 60 digits
  it.each([
    [-Infinity, 0, -0.6931471805599453],
    [-1, 1, -0.38171514630212605],
    [-Infinity, -10, -53.23128515051247],
    [-Infinity, -36.9, -685.3328831653506],
    [-Infinity, -37.1, -692.7382807156232],
    [-Infinity, -100, -5005.524208694205],
    [10, Infinity, -53.23128515051247],
    [30, 31, -454.32124395634327],
    [-5 - 2 ** -13, -5, -22.430157043226316],
    [0.5, 0.5 + 2 ** -23, -16.98632371588574],
    [40, 40 + 2 ** -17, -812.7025931867436],
    [100, 100.5, -5005.524208694205]
  ])('from %f to %f is %f', (from, to, log) => {
    expect(Math.abs(logNormalInterval(from, to) / log - 1)).toBeLessThan(1e-13);
  });
});

describe('slopes of an interval', () => {
  const step = 1e-5;
  it.each([
    ['probit', -1.2, 0.4],
    ['probit', 2.1, Infinity],
    ['probit', -Infinity, -6],
    ['probit', 8, 9],
    ['logit', -1.2, 0.4],
    ['logit', 3, Infinity],
    ['logit', -Infinity, -6]
  ])('%s from %f to %f agree with differences', (name, from, to) => {
    const link = name === 'probit' ? probit : logit;
    const at = (a: number, b: number) => link.logInterval(a, b);
    const slopes = intervalSlopes(link, from, to);
    const near = (value: number, expected: number, tolerance: number) =>
      expect(Math.abs(value - expected)).toBeLessThan(tolerance * (1 + Math.abs(expected)));
    const bent = intervalSlopes(link, from + step, to);
    const bentBack = intervalSlopes(link, from - step, to);
    near(slopes.atFrom, (at(from + step, to) - at(from - step, to)) / (2 * step), 1e-6);
    near(slopes.atTo, (at(from, to + step) - at(from, to - step)) / (2 * step) || 0, 1e-6);
    near(slopes.fromFrom, (bent.atFrom - bentBack.atFrom) / (2 * step), 1e-6);
    near(slopes.fromTo, (bent.atTo - bentBack.atTo) / (2 * step), 1e-6);
    const stretched = intervalSlopes(link, from, to + step);
    const shrunk = intervalSlopes(link, from, to - step);
    near(slopes.toTo, (stretched.atTo - shrunk.atTo) / (2 * step), 1e-6);
  });
});
