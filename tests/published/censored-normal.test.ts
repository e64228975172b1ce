import { describe, expect, it } from 'vitest';
import { type CensoredGroup, fitCensoredNormal } from '$lib/engine/statistics';
import { MICHELSO } from './nist-data.ts';

const fit = (groups: readonly CensoredGroup[]) => {
  const result = fitCensoredNormal(Object.freeze(groups));
  if (!result.ok) throw new Error(result.reason);
  return result;
};
const group = (from: number, to: number, count: number): CensoredGroup => ({ from, to, count });
const classes = (cuts: readonly number[], counts: readonly number[]) =>
  counts.map((count, k) => group(cuts[k - 1] ?? -Infinity, cuts[k] ?? Infinity, count));

describe('smoked fish, log10 of counts with all kinds of censoring (CRAN fitdistrplus, data set smokedfish)', () => {
  const log10 = Math.log10;
  const result = fit([
    group(-Infinity, log10(0.04), 54),
    group(log10(0.04), log10(10), 26),
    group(log10(0.04), log10(100), 8),
    group(log10(0.04), log10(1), 7),
    group(-Infinity, log10(100), 2),
    group(log10(100), Infinity, 2),
    group(log10(15), log10(15), 1),
    group(-Infinity, log10(1), 1),
    group(log10(1), Infinity, 1),
    group(log10(1), log10(100), 1)
  ]);

  it('gives the digits computed at 30 digits, consistent with −1.575, 1.539 and −87.11 remembered from print', () => {
    expect(result.mean).toBeCloseTo(-1.5756191407479, 11);
    expect(result.sd).toBeCloseTo(1.5394511863044, 11);
    expect(result.meanStandardError).toBeCloseTo(0.20141636, 7);
    expect(result.sdStandardError).toBeCloseTo(0.21181002, 7);
    expect(result.logLikelihood).toBeCloseTo(-87.10945253, 8);
  });
});

describe('taps in three piles with cuts at 5 and 7 mm, which have a closed form (computed)', () => {
  const result = fit(classes([5, 7], [30, 50, 20]));

  it('SD is 2 / (z.8 − z.3) and the mean 5 − z.3 · SD', () => {
    const [z8, z3] = [0.8416212335729143, -0.5244005127080409];
    expect(result.sd).toBeCloseTo(2 / (z8 - z3), 12);
    expect(result.mean).toBeCloseTo(5 - (z3 * 2) / (z8 - z3), 12);
    expect(result.sd).toBeCloseTo(1.46410553525, 11);
    expect(result.mean).toBeCloseTo(5.76777769334, 11);
  });

  it('fits the three shares exactly, so the log likelihood is that of the shares', () => {
    const saturated = 30 * Math.log(0.3) + 50 * Math.log(0.5) + 20 * Math.log(0.2);
    expect(result.logLikelihood).toBeCloseTo(saturated, 10);
    expect(result.logLikelihood).toBeCloseTo(-102.965301406, 9);
  });

  it('has the standard errors of the curvature', () => {
    expect(result.meanStandardError).toBeCloseTo(0.16381046, 7);
    expect(result.sdStandardError).toBeCloseTo(0.17100884, 7);
  });
});

it('five classes, cuts 4, 5, 6 and 7 mm (computed at 30 digits)', () => {
  const result = fit(classes([4, 5, 6, 7], [10, 25, 40, 20, 5]));
  expect(result.mean).toBeCloseTo(5.3426334197437, 11);
  expect(result.sd).toBeCloseTo(1.011955051551, 11);
  expect(result.meanStandardError).toBeCloseTo(0.10603705, 7);
  expect(result.sdStandardError).toBeCloseTo(0.08473321, 7);
  expect(result.logLikelihood).toBeCloseTo(-141.750181754, 8);
});

it('ten readings beside thirty taps (computed)', () => {
  const readings = [4.8, 5.1, 5.3, 5.6, 5.6, 5.9, 6.0, 6.2, 6.7, 7.1];
  const result = fit([...readings.map((x) => group(x, x, 1)), ...classes([5, 7], [6, 20, 4])]);
  expect(result.mean).toBeCloseTo(5.85219164, 8);
  expect(result.sd).toBeCloseTo(0.90172627, 8);
  expect(result.meanStandardError).toBeCloseTo(0.16148821, 7);
  expect(result.sdStandardError).toBeCloseTo(0.12817931, 7);
  expect(result.logLikelihood).toBeCloseTo(-37.038122573, 8);
});

describe('NIST StRD Michelso', () => {
  it('in bins of its rounding, ±0.005, has a slightly smaller SD than as printed (computed)', () => {
    const binned = fit(MICHELSO.map((x) => group(x - 0.005, x + 0.005, 1)));
    expect(binned.sd).toBeCloseTo(0.07856149, 8);
  });

  it('as exact values has the SD with divisor n', () => {
    const exact = fit(MICHELSO.map((x) => group(x, x, 1)));
    expect(exact.mean).toBeCloseTo(299.8524, 11);
    expect(exact.sd).toBeCloseTo(0.0786145, 8);
    expect(exact.sd).toBeCloseTo(0.0790105478190518 * Math.sqrt(0.99), 13);
    expect(exact.meanStandardError).toBeCloseTo(exact.sd / 10, 12);
    expect(exact.sdStandardError).toBeCloseTo(exact.sd / Math.sqrt(200), 12);
  });
});

describe('where no finite maximum exists it says so', () => {
  it.each([
    ['nothing at all', [], 'empty'],
    ['all in one open class', classes([5, 7], [12, 0, 0]), 'no-spread-seen'],
    ['all in the middle class', classes([5, 7], [0, 12, 0]), 'no-spread-seen'],
    ['two neighbouring classes', classes([5, 7], [8, 12, 0]), 'no-spread-seen'],
    ['two bounded neighbours', classes([4, 5, 6], [0, 8, 12, 0]), 'no-spread-seen'],
    ['one reading, many times', [group(6, 6, 5)], 'no-spread-seen'],
    ['a reading inside the only class', [group(6, 6, 1), group(5, 7, 9)], 'no-spread-seen'],
    ['thin and thick only', classes([5, 7], [8, 0, 12]), 'no-inner-class']
  ])('%s', (_, groups, reason) => {
    expect(fitCensoredNormal(groups)).toEqual({ ok: false, reason });
  });
});
