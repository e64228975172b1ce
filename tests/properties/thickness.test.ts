import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom, shuffled } from '$lib/engine';
import {
  type ThicknessBins,
  binsFromPairs,
  countBetween,
  gradeIntervals,
  histogram,
  lag1Autocorrelation,
  momentsOfBins,
  momentsOfList,
  quantilesMm,
  readSlate,
  totalCount
} from '$lib/engine/thickness';

const SEED = 20_260_801;
const check = <T>(property: fc.IProperty<T>) => fc.assert(property, { seed: SEED, numRuns: 300 });

const readings = fc.array(fc.integer({ min: 150, max: 3000 }), { minLength: 1, maxLength: 60 });
const inBins = (hundredths: readonly number[]): ThicknessBins =>
  binsFromPairs(hundredths.map((value) => [value, 1]));
const near = (value: number, expected: number, tolerance = 1e-10) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance * (1 + Math.abs(expected)));

function moments(hundredths: readonly number[]) {
  const result = momentsOfBins(inBins(hundredths));
  if (!result.ok) throw new Error(result.reason);
  return result;
}

function quantile(hundredths: readonly number[], share: number): number {
  const result = quantilesMm(inBins(hundredths), [share]);
  if (!result.ok) throw new Error(result.reason);
  return result.quantilesMm[0];
}

describe('moments', () => {
  it('are the same in any order, from bins and from the list', () =>
    check(
      fc.property(readings, fc.integer(), (list, seed) => {
        const own = moments(list);
        expect(moments(shuffled(list, createRandom(seed)))).toEqual(own);
        const plain = momentsOfList(Object.freeze(list.map((value) => value / 100)));
        if (!plain.ok) throw new Error(plain.reason);
        near(plain.mean, own.meanMm);
        near(plain.sd ?? -1, own.sdMm ?? -1);
        expect([plain.least, plain.greatest]).toEqual([own.thinnestMm, own.thickestMm]);
      })
    ));

  it('move with a shift and stretch with a scale', () =>
    check(
      fc.property(readings, fc.integer({ min: 1, max: 900 }), (list, shift) => {
        const own = moments(list);
        const shifted = moments(list.map((value) => value + shift));
        near(shifted.meanMm, own.meanMm + shift / 100);
        near(shifted.sdMm ?? 0, own.sdMm ?? 0);
        const stretched = moments(list.map((value) => 3 * value));
        near(stretched.meanMm, 3 * own.meanMm);
        near(stretched.sdMm ?? 0, 3 * (own.sdMm ?? 0));
      })
    ));

  it('autocorrelation is at most 1 in size and the same after shift, scale and reversal', () =>
    check(
      fc.property(readings, (list) => {
        const own = lag1Autocorrelation(list);
        if (!own.ok) return;
        expect(Math.abs(own.correlation)).toBeLessThanOrEqual(1);
        for (const other of [list.map((value) => 7 * value + 40), [...list].reverse()]) {
          const result = lag1Autocorrelation(other);
          if (!result.ok) throw new Error(result.reason);
          near(result.correlation, own.correlation, 1e-9);
        }
      })
    ));
});

describe('quantiles', () => {
  it('equal type 7 on the sorted list', () =>
    check(
      fc.property(readings, fc.double({ min: 0, max: 1, noNaN: true }), (list, share) => {
        const sorted = list.map((value) => value / 100).sort((one, other) => one - other);
        const rank = (sorted.length - 1) * share;
        const below = sorted[Math.floor(rank)];
        const above = sorted[Math.min(sorted.length - 1, Math.floor(rank) + 1)];
        near(quantile(list, share), below + (rank - Math.floor(rank)) * (above - below));
      })
    ));

  it('do not fall as the share rises', () =>
    check(
      fc.property(readings, (list) => {
        const result = quantilesMm(inBins(list), [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1]);
        if (!result.ok) throw new Error(result.reason);
        expect([...result.quantilesMm].sort((one, other) => one - other)).toEqual(
          result.quantilesMm
        );
      })
    ));
});

describe('histogram', () => {
  it('shows every slate once, in few enough bars with edges on whole multiples of the width', () =>
    check(
      fc.property(readings, fc.integer({ min: 1, max: 50 }), (list, mostBars) => {
        const { widthMm, bars } = histogram(inBins(list), mostBars);
        expect(bars.length).toBeLessThanOrEqual(mostBars);
        for (const { fromMm, toMm, count } of bars) {
          near(fromMm / widthMm, Math.round(fromMm / widthMm), 1e-9);
          expect(count).toBe(list.filter((v) => v / 100 >= fromMm && v / 100 < toMm).length);
        }
        expect(bars.reduce((sum, { count }) => sum + count, 0)).toBe(list.length);
        expect(bars[0].count).toBeGreaterThan(0);
        expect(bars[bars.length - 1].count).toBeGreaterThan(0);
      })
    ));
});

describe('grade intervals', () => {
  it('give every slate exactly one grade', () =>
    check(
      fc.property(
        readings,
        fc.uniqueArray(fc.integer({ min: 150, max: 3000 }), { maxLength: 7 }),
        (list, cuts) => {
          const thresholds = cuts.sort((one, other) => other - one).map((cut) => cut / 100);
          const bins = inBins(list);
          const counts = gradeIntervals(thresholds).map((band) => countBetween(bins, band));
          expect(counts.reduce((sum, count) => sum + count, 0)).toBe(totalCount(bins));
        }
      )
    ));
});

describe('readings', () => {
  it('are the same whichever point is read first, and lie between their points', () =>
    check(
      fc.property(
        fc.array(fc.integer({ min: 150, max: 4000 }), { minLength: 1, maxLength: 4 }),
        fc.integer(),
        (points, seed) => {
          const lengths = Object.freeze(points.map((point) => point / 100));
          const reading = readSlate(lengths);
          const other = readSlate(shuffled(lengths, createRandom(seed)));
          if (!reading.ok || !other.ok) throw new Error('within range');
          expect(other.thicknessMm).toBe(reading.thicknessMm);
          expect(other.taperMm).toBe(reading.taperMm);
          expect(reading.thicknessMm).toBeGreaterThanOrEqual(Math.min(...lengths));
          expect(reading.thicknessMm).toBeLessThanOrEqual(Math.max(...lengths));
        }
      )
    ));
});
