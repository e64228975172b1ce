import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom, shuffled } from '$lib/engine';
import {
  type PalletSample,
  type SpotCheck,
  anovaStudy,
  comparePallets,
  estimateGrade,
  estimateMean,
  learnHand,
  logPileChances,
  outlierPallets,
  tapPosterior
} from '$lib/engine/statistics';
import { type ThicknessBins, binsFromPairs, totalCount } from '$lib/engine/thickness';

const SEED = 20_260_802;
const check = <T>(property: fc.IProperty<T>, numRuns = 200) =>
  fc.assert(property, { seed: SEED, numRuns });
const near = (value: number, expected: number, tolerance = 1e-8) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance * (1 + Math.abs(expected)));

const bins = (maxLength: number): fc.Arbitrary<ThicknessBins> =>
  fc
    .array(fc.tuple(fc.integer({ min: 300, max: 1000 }), fc.integer({ min: 1, max: 6 })), {
      maxLength
    })
    .map(binsFromPairs);
const moved = (spread: ThicknessBins, by: number): ThicknessBins => ({
  hundredths: spread.hundredths.map((value) => value + by),
  counts: spread.counts
});
const delivery = fc
  .array(fc.tuple(bins(8), fc.integer({ min: 1, max: 300 })), { minLength: 1, maxLength: 7 })
  .map((pallets) =>
    pallets.map(([spread, more], index): PalletSample =>
      Object.freeze({
        palletId: String(index),
        slates: totalCount(spread) + more,
        bins: spread
      })
    )
  );
const hand = fc.record({
  thresholdsMm: fc
    .uniqueArray(fc.integer({ min: 350, max: 950 }), { minLength: 1, maxLength: 4 })
    .map((cuts) => cuts.sort((one, other) => other - one).map((cut) => cut / 100)),
  sdMm: fc.double({ min: 0.001, max: 3, noNaN: true })
});

describe('estimates over a delivery', () => {
  const band = { fromMm: 5, toMm: 7 };

  it('do not depend on the order of the pallets', () => {
    let estimated = 0;
    check(
      fc.property(delivery, fc.integer(), (pallets, seed) => {
        const others = shuffled(pallets, createRandom(seed));
        const [one, other] = [estimateMean(pallets), estimateMean(others)];
        expect(other.ok).toBe(one.ok);
        if (!one.ok || !other.ok) return;
        estimated++;
        near(other.meanMm, one.meanMm);
        near(other.standardErrorMm, one.standardErrorMm);
        const [grade, same] = [estimateGrade(pallets, band), estimateGrade(others, band)];
        if (!grade.ok || !same.ok) throw new Error('estimable');
        expect(Math.abs(grade.countLow - same.countLow)).toBeLessThanOrEqual(1);
        expect(Math.abs(grade.countHigh - same.countHigh)).toBeLessThanOrEqual(1);
      })
    );
    expect(estimated).toBeGreaterThan(100);
  });

  it('shift with the thickness and keep their error', () =>
    check(
      fc.property(delivery, fc.integer({ min: 1, max: 900 }), (pallets, by) => {
        const [one, other] = [
          estimateMean(pallets),
          estimateMean(pallets.map((pallet) => ({ ...pallet, bins: moved(pallet.bins, by) })))
        ];
        if (!one.ok || !other.ok) return;
        near(other.meanMm, one.meanMm + by / 100);
        near(other.standardErrorMm, one.standardErrorMm);
      })
    ));

  it('keep a count between what was seen and what may be, around the estimate', () =>
    check(
      fc.property(delivery, (pallets) => {
        const grade = estimateGrade(pallets, band);
        if (!grade.ok) return;
        const all = pallets.reduce((sum, { slates }) => sum + slates, 0);
        expect(Number.isInteger(grade.countLow) && Number.isInteger(grade.countHigh)).toBe(true);
        expect(grade.countLow).toBeGreaterThanOrEqual(0);
        expect(grade.countHigh).toBeLessThanOrEqual(all);
        expect(grade.countLow).toBeLessThanOrEqual(grade.count + 1e-6);
        expect(grade.countHigh).toBeGreaterThanOrEqual(grade.count - 1e-6);
        for (const figure of Object.values(grade)) expect(figure).not.toBeNaN();
      })
    ));

  it('leave to the other grades what a grade does not take, also where all or none were seen', () => {
    let bare = 0;
    check(
      fc.property(delivery, fc.integer({ min: 2, max: 11 }), (pallets, cutMm) => {
        const thick = estimateGrade(pallets, { fromMm: cutMm, toMm: Infinity });
        const thin = estimateGrade(pallets, { fromMm: 0, toMm: cutMm });
        if (!thick.ok || !thin.ok) return;
        if (thick.share === 0 || thin.share === 0) bare++;
        near(thick.share + thin.share, 1, 1e-12);
        near(thick.shareLow + thin.shareHigh, 1, 1e-9);
        near(thin.shareLow + thick.shareHigh, 1, 1e-9);
      })
    );
    expect(bare).toBeGreaterThan(30);
  });

  it('compare pallets the same after shift and in any order', () =>
    check(
      fc.property(delivery, fc.integer({ min: 1, max: 900 }), (pallets, by) => {
        const one = comparePallets(pallets);
        const other = comparePallets(
          [...pallets].reverse().map((pallet) => ({ ...pallet, bins: moved(pallet.bins, by) }))
        );
        expect(other.ok).toBe(one.ok);
        if (!one.ok || !other.ok) return;
        near(other.f, one.f, 1e-6);
        near(other.intraclassCorrelation, one.intraclassCorrelation, 1e-6);
        expect(one.intraclassCorrelation).toBeGreaterThanOrEqual(0);
        expect(one.intraclassCorrelation).toBeLessThanOrEqual(1);
      })
    ));

  it('name odd pallets the same after shift and scale, each by one SD within pallets or more', () => {
    const names = ['a', 'b', 'c', 'd', 'e', 'f'];
    const uneven = fc
      .array(fc.tuple(bins(8), fc.integer({ min: 0, max: 600 })), { minLength: 3, maxLength: 6 })
      .map((pallets) =>
        pallets.map(([spread, by], place): PalletSample => ({
          palletId: names[place],
          slates: 1000,
          bins: moved(spread, by)
        }))
      );
    let named = 0;
    check(
      fc.property(uneven, fc.integer({ min: 1, max: 900 }), (pallets, by) => {
        const [one, compared] = [outlierPallets(pallets), comparePallets(pallets)];
        const other = outlierPallets(
          pallets.map((pallet) => ({
            ...pallet,
            bins: { ...pallet.bins, hundredths: pallet.bins.hundredths.map((v) => 3 * v + by) }
          }))
        );
        expect(other.ok).toBe(one.ok);
        if (!one.ok || !other.ok || !compared.ok) return;
        expect(other.odd.map(({ palletId }) => palletId)).toEqual(
          one.odd.map(({ palletId }) => palletId)
        );
        expect(one.odd.length).toBeLessThanOrEqual(Math.max(0, pallets.length - 2));
        for (const [place, { differenceMm }] of one.odd.entries()) {
          named++;
          expect(Math.abs(differenceMm)).toBeGreaterThanOrEqual(Math.sqrt(compared.varianceWithin));
          near(other.odd[place].differenceMm, 3 * differenceMm);
        }
      })
    );
    expect(named).toBeGreaterThan(20);
  });
});

describe('taps', () => {
  it('a posterior adds up to one over the bins of the stock', () =>
    check(
      fc.property(
        bins(20).filter((stock) => stock.counts.length > 0),
        hand,
        (stock, known) => {
          for (let pile = 1; pile <= known.thresholdsMm.length + 1; pile++) {
            const posterior = tapPosterior(stock, known, pile);
            if (!posterior.ok) throw new Error(posterior.reason);
            near(totalCount(posterior.bins), 1, 1e-13);
            for (const value of posterior.bins.hundredths)
              expect(stock.hundredths).toContain(value);
          }
        }
      )
    ));

  it('posteriors weighted by the chance of each pile give the stock back', () =>
    check(
      fc.property(
        bins(20).filter((stock) => stock.counts.length > 0),
        hand,
        (stock, known) => {
          const back = new Map<number, number>();
          const chances = Array.from(stock.hundredths, (value) =>
            logPileChances(known, value / 100).map(Math.exp)
          );
          for (let pile = 1; pile <= known.thresholdsMm.length + 1; pile++) {
            const reach = chances.reduce((sum, c, bin) => sum + stock.counts[bin] * c[pile - 1], 0);
            const posterior = tapPosterior(stock, known, pile);
            if (!posterior.ok) throw new Error(posterior.reason);
            posterior.bins.hundredths.forEach((value, bin) =>
              back.set(value, (back.get(value) ?? 0) + reach * posterior.bins.counts[bin])
            );
          }
          stock.hundredths.forEach((value, bin) => near(back.get(value) ?? 0, stock.counts[bin]));
        }
      )
    ));

  it('a hand does not depend on the order of the checks and moves with shift and scale', () => {
    const checks = fc.array(
      fc.record({
        pile: fc.integer({ min: 1, max: 3 }),
        thicknessMm: fc.integer({ min: -60, max: 60 })
      }),
      { minLength: 30, maxLength: 90 }
    );
    let learnt = 0;
    check(
      fc.property(checks, fc.integer(), (raw, seed) => {
        // thicker piles get thicker slates, with much overlap
        const list: SpotCheck[] = raw.map(({ pile, thicknessMm }) =>
          Object.freeze({ pile, thicknessMm: 8 - pile + thicknessMm / 60 })
        );
        const own = learnHand(Object.freeze(list), 3);
        const other = learnHand(
          shuffled(list, createRandom(seed)).map(({ pile, thicknessMm }) => ({
            pile,
            thicknessMm: 2 * thicknessMm + 3
          })),
          3
        );
        expect(other.ok).toBe(own.ok);
        if (!own.ok || !other.ok) return;
        learnt++;
        near(other.sdMm, 2 * own.sdMm, 1e-6);
        own.thresholdsMm.forEach((threshold, k) => {
          near(other.thresholdsMm[k], 2 * threshold + 3, 1e-6);
          if (k > 0) expect(threshold).toBeLessThan(own.thresholdsMm[k - 1]);
        });
      }),
      60
    );
    expect(learnt).toBeGreaterThan(30);
  });
});

describe('gauge study', () => {
  it('splits the sum of squares without remainder and is the same after a shift', () =>
    check(
      fc.property(
        fc.array(fc.integer({ min: 300, max: 900 }), { minLength: 24, maxLength: 24 }),
        (flat) => {
          const study = (by: number) =>
            anovaStudy(
              [0, 1, 2, 3].map((part) =>
                [0, 1, 2].map((sorter) =>
                  [0, 1].map((trial) => (flat[6 * part + 2 * sorter + trial] + by) / 100)
                )
              )
            );
          const [own, shifted] = [study(0), study(250)];
          if (!own.ok || !shifted.ok) return;
          const mean = flat.reduce((sum, value) => sum + value / 100, 0) / 24;
          const total = flat.reduce((sum, value) => sum + (value / 100 - mean) ** 2, 0);
          near(
            own.part.squares + own.sorter.squares + own.interaction.squares + own.error.squares,
            total,
            1e-9
          );
          near(shifted.gaugeVariance, own.gaugeVariance, 1e-9);
          near(shifted.partVariance, own.partVariance, 1e-9);
        }
      )
    ));
});
