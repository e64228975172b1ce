import { describe, expect, it } from 'vitest';
import { type Random, createRandom, randomNormal, shuffled } from '$lib/engine';
import {
  type PalletSample,
  estimateGrade,
  estimateMean,
  outlierPallets
} from '$lib/engine/statistics';
import { binsFromPairs } from '$lib/engine/thickness';
import { leastShare, mostShare, rounds } from '../support/rounds.ts';

/**
 * Intervals tried on invented deliveries whose truth is known: of intervals at 95 % about 95 in a
 * hundred must hold it. With 600 deliveries the standard error of that figure is 0.9 in a hundred.
 */
const FULL = 600;
const DELIVERIES = rounds(150, FULL);
const least = (bound: number): number => leastShare(bound, DELIVERIES, FULL);
const most = (bound: number): number => mostShare(bound, DELIVERIES, FULL);
const LEAST = least(0.92);

interface Delivery {
  readonly pallets: readonly (readonly number[])[];
  readonly sample: readonly PalletSample[];
}

/** Pallets of unequal size that differ by `palletSdMm`, of which some are opened. */
function deliver(
  random: Random,
  plan: { pallets: number; opened: number; gauged: number; palletSdMm: number }
): Delivery {
  const pallets = Array.from({ length: plan.pallets }, () => {
    const mean = 6 + plan.palletSdMm * randomNormal(random);
    const slates = 80 + Math.floor(160 * random());
    return Array.from({ length: slates }, () =>
      Math.round(100 * (mean + 0.8 * randomNormal(random)))
    );
  });
  const sample = pallets.map((slates, index) => ({
    palletId: String(index),
    slates: slates.length,
    bins: binsFromPairs(
      index < plan.opened
        ? shuffled(slates, random)
            .slice(0, plan.gauged)
            .map((value) => [value, 1])
        : []
    )
  }));
  return { pallets, sample };
}

function coverage(covers: (random: Random) => boolean, seed: number): number {
  let held = 0;
  for (let delivery = 0; delivery < DELIVERIES; delivery++)
    if (covers(createRandom(seed * 10_000 + delivery))) held++;
  return held / DELIVERIES;
}

const PLANS = [
  { name: 'five of twelve pallets', pallets: 12, opened: 5, gauged: 12, palletSdMm: 0.3 },
  { name: 'every pallet', pallets: 6, opened: 6, gauged: 10, palletSdMm: 0.5 },
  { name: 'pallets all alike', pallets: 10, opened: 4, gauged: 15, palletSdMm: 0 }
];

describe.each(PLANS)('a delivery with $name sampled', (plan) => {
  it('mean thickness', () => {
    const held = coverage((random) => {
      const { pallets, sample } = deliver(random, plan);
      const slates = pallets.flat();
      const truth = slates.reduce((sum, value) => sum + value / 100, 0) / slates.length;
      const result = estimateMean(sample);
      return result.ok && result.lowMm <= truth && truth <= result.highMm;
    }, 1);
    expect(held).toBeGreaterThan(LEAST);
    expect(held).toBeLessThan(most(0.999));
  });

  it.each([
    ['about a third', 5.6, 6.2],
    ['about one in twenty', 7.4, Infinity],
    ['about one in two hundred', 8.2, Infinity]
  ])('count of a grade that holds %s', (_, fromMm, toMm) => {
    const held = coverage((random) => {
      const { pallets, sample } = deliver(random, plan);
      const truth = pallets.flat().filter((v) => v >= 100 * fromMm && v < 100 * toMm).length;
      const result = estimateGrade(sample, { fromMm, toMm });
      return result.ok && result.countLow <= truth && truth <= result.countHigh;
    }, 2);
    expect(held).toBeGreaterThan(LEAST);
  });
});

/** For each of the patterns below; the standard error of 95 in a hundred is then 1.1. */
const UNEQUAL_FULL = 400;
const UNEQUAL_DELIVERIES = rounds(100, UNEQUAL_FULL);
/** Slates gauged on each pallet, as unequally as a delivery is while it is sorted pallet by pallet. */
const UNEQUAL = [
  { gauged: [228, 16, 94, 16, 218, 222], palletSdMm: 0.4 },
  { gauged: [228, 16, 94, 16, 218, 222], palletSdMm: 0.2 },
  { gauged: [200, 10, 10, 10, 10, 10], palletSdMm: 0.4 },
  { gauged: [300, 5, 5, 5, 5, 5], palletSdMm: 0.4 },
  { gauged: [200, 200, 200, 5, 5, 5], palletSdMm: 0.4 },
  { gauged: [300, 8], palletSdMm: 0.4 },
  { gauged: [200, 5, 5, 5, 5, 0, 0, 0, 0], palletSdMm: 0.3 },
  { gauged: [16, 16, 16, 16, 16, 16], palletSdMm: 0.4 }
];
/** Thickest pile to thinnest, one that hardly a slate is of, and one that nearly all are of; 0.01 mm. */
const BANDS = [
  [680, Infinity],
  [620, 680],
  [540, 620],
  [0, 540],
  [760, Infinity],
  [0, 760]
];

it.each(UNEQUAL)(
  'counts of grades from pallets gauged $gauged, means $palletSdMm mm apart',
  ({ gauged, palletSdMm }) => {
    const held = BANDS.map(() => 0);
    for (let delivery = 0; delivery < UNEQUAL_DELIVERIES; delivery++) {
      const random = createRandom(60_000 + delivery);
      const really = BANDS.map(() => 0);
      const sample = gauged.map((own, index): PalletSample => {
        const mean = 600 + 100 * palletSdMm * randomNormal(random);
        const slates = 500 + Math.floor(500 * random());
        const readings: [number, number][] = [];
        for (let slate = 0; slate < slates; slate++) {
          const at = Math.round(mean + 55 * randomNormal(random));
          if (slate < own) readings.push([at, 1]);
          for (let band = 0; band < BANDS.length; band++)
            if (at >= BANDS[band][0] && at < BANDS[band][1]) really[band]++;
        }
        return { palletId: String(index), slates, bins: binsFromPairs(readings) };
      });
      for (const [band, [from, to]] of BANDS.entries()) {
        const result = estimateGrade(sample, { fromMm: from / 100, toMm: to / 100 });
        if (!result.ok) throw new Error(result.reason);
        if (result.countLow <= really[band] && really[band] <= result.countHigh) held[band]++;
      }
    }
    const shares = held.map((deliveries) => deliveries / UNEQUAL_DELIVERIES);
    for (const share of shares)
      expect(share).toBeGreaterThan(leastShare(0.93, UNEQUAL_DELIVERIES, UNEQUAL_FULL));
    // the middle piles, of which enough are seen, are given no more than they need
    expect((shares[1] + shares[2]) / 2).toBeLessThan(
      mostShare(0.99, UNEQUAL_DELIVERIES, UNEQUAL_FULL)
    );
  }
);

it('pallets that are alike are called odd in about one delivery in twenty at most', () => {
  const calm = coverage((random) => {
    const { sample } = deliver(random, { pallets: 8, opened: 8, gauged: 10, palletSdMm: 0 });
    const result = outlierPallets(sample);
    return result.ok && result.odd.length === 0;
  }, 5);
  expect(calm).toBeGreaterThan(LEAST);
});
