import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal, shuffled } from '$lib/engine';
import { type PalletSample, estimateGrade, estimateMean } from '$lib/engine/statistics';
import { leastShare, report, rounds } from '../support/rounds.ts';
import { binsOf } from '../support/tapped-deliveries.ts';

/** How a delivery is made and opened. Slates lie about the mean of their pallet by an SD of 0.7 mm. */
interface Design {
  readonly sizes: readonly number[];
  readonly opened: number;
  /** Slates gauged on each opened pallet. */
  readonly each: number;
  /** SD of the pallets' means, mm. */
  readonly palletSdMm: number;
  /** One pallet of the delivery is this much thicker. */
  readonly oddMm?: number;
  /** Thickness runs out to the thick side. */
  readonly skewed?: boolean;
}

const equal = (pallets: number) => Array.from({ length: pallets }, () => 300);
const unequal = [50, 120, 200, 300, 450, 600];
const near = { palletSdMm: 0.5 };
const far = { palletSdMm: 1 };
const designs: [string, Design][] = [
  ['2 of 12 × 20', { sizes: equal(12), opened: 2, each: 20, ...near }],
  ['2 of 12 × 20, pallets far apart', { sizes: equal(12), opened: 2, each: 20, ...far }],
  ['2 of 12 × 20, pallets all alike', { sizes: equal(12), opened: 2, each: 20, palletSdMm: 0 }],
  ['3 of 12 × 8', { sizes: equal(12), opened: 3, each: 8, ...near }],
  ['3 of 12 × 8, pallets far apart', { sizes: equal(12), opened: 3, each: 8, ...far }],
  ['3 of 6 × 10, sizes 50 to 600', { sizes: unequal, opened: 3, each: 10, ...near }],
  ['the same, pallets far apart', { sizes: unequal, opened: 3, each: 10, ...far }],
  ['2 of 6 × 60, sizes 50 to 600', { sizes: unequal, opened: 2, each: 60, ...near }],
  ['the same, pallets far apart, many gauged', { sizes: unequal, opened: 2, each: 60, ...far }],
  ['2 of 30 × 5', { sizes: equal(30), opened: 2, each: 5, palletSdMm: 0.7 }],
  ['4 of 8 × 15, one odd', { sizes: equal(8), opened: 4, each: 15, oddMm: 1.5, ...near }],
  ['4 of 8 × 15, one odd, far apart', { sizes: equal(8), opened: 4, each: 15, oddMm: 1.5, ...far }],
  ['4 of 8 × 15, skewed', { sizes: equal(8), opened: 4, each: 15, skewed: true, ...near }],
  ['6 of 6 × 10', { sizes: equal(6), opened: 6, each: 10, ...near }],
  [
    '6 of 6 × 10, far apart and skewed',
    { sizes: equal(6), opened: 6, each: 10, skewed: true, ...far }
  ]
];
/** Thick, medium, thin, and a grade that few slates are of; mm. */
const BANDS = [
  { fromMm: 6.6, toMm: Infinity },
  { fromMm: 5.6, toMm: 6.6 },
  { fromMm: 0, toMm: 5.6 },
  { fromMm: 7.5, toMm: Infinity }
];
const FULL = 1200;
const ROUNDS = rounds(300, FULL);
const SLATE_SD_MM = 0.7;

/** A delivery made anew, pallets and slates drawn without putting back. */
function deliver(design: Design, seed: number) {
  const random = createRandom(seed);
  const { sizes, opened, each, palletSdMm, oddMm = 0, skewed = false } = design;
  const odd = Math.floor(random() * sizes.length);
  const packed = sizes.map((slates, place) => {
    const mean = 6 + palletSdMm * randomNormal(random) + (place === odd ? oddMm : 0);
    return Array.from({ length: slates }, () => {
      const normal = randomNormal(random);
      const step = skewed ? (Math.exp(0.6 * normal) - 1.2) / 0.8 : normal;
      return Math.round(100 * Math.max(1.5, mean + SLATE_SD_MM * step));
    });
  });
  const order = shuffled(
    sizes.map((_, place) => place),
    random
  );
  const open = new Set(order.slice(0, opened));
  // slates of a pallet were made in no order, so that the first are as good as any
  const pallets = packed.map((slates, place): PalletSample => ({
    palletId: `p${place}`,
    slates: slates.length,
    bins: binsOf(open.has(place) ? slates.slice(0, each) : [])
  }));
  return { pallets, packed };
}

/** The simplest rival: all slates gauged are taken as one random sample, 1.96 standard errors. */
function rivalHolds(pallets: readonly PalletSample[], band: (typeof BANDS)[number], truth: number) {
  let [seen, gauged, all] = [0, 0, 0];
  for (const { bins, slates } of pallets) {
    all += slates;
    for (const [bin, hundredths] of bins.hundredths.entries()) {
      gauged += bins.counts[bin];
      if (hundredths >= 100 * band.fromMm && hundredths < 100 * band.toMm) seen += bins.counts[bin];
    }
  }
  const share = seen / gauged;
  const reach = 1.96 * Math.sqrt((share * (1 - share) * (1 - gauged / all)) / gauged);
  return Math.abs(share - truth / all) <= reach;
}

describe('intervals at 95 % where pallets stay closed', () => {
  it.each(designs)('%s: at least 93 in 100 hold the truth', (name, design) => {
    const all = design.sizes.reduce((sum, n) => sum + n, 0);
    const held = BANDS.map(() => 0);
    const rival = BANDS.map(() => 0);
    const width = BANDS.map(() => 0);
    let [heldMeans, widthMm] = [0, 0];
    for (let seed = 1; seed <= ROUNDS; seed++) {
      const { pallets, packed } = deliver(design, seed);
      const slates = packed.flat();
      for (const [band, { fromMm, toMm }] of BANDS.entries()) {
        const truth = slates.filter((at) => at >= 100 * fromMm && at < 100 * toMm).length;
        const told = estimateGrade(pallets, { fromMm, toMm });
        if (!told.ok) throw new Error(told.reason);
        held[band] += told.countLow <= truth && truth <= told.countHigh ? 1 : 0;
        rival[band] += rivalHolds(pallets, BANDS[band], truth) ? 1 : 0;
        width[band] += (100 * (told.countHigh - told.countLow)) / all;
      }
      const mean = estimateMean(pallets);
      if (!mean.ok) throw new Error(mean.reason);
      const reallyMm = slates.reduce((sum, at) => sum + at, 0) / all / 100;
      heldMeans += mean.lowMm <= reallyMm && reallyMm <= mean.highMm ? 1 : 0;
      widthMm += mean.highMm - mean.lowMm;
    }
    const say = (list: readonly number[], digits: number): string =>
      list.map((value) => (value / ROUNDS).toFixed(digits)).join('/');
    report(name, {
      held: say(held, 3),
      'one random sample': say(rival, 3),
      'wide, points': say(width, 0),
      'means held': say([heldMeans], 3),
      'wide, mm': say([widthMm], 2)
    });
    for (const [band, times] of [...held, heldMeans].entries())
      expect(times / ROUNDS, `band ${band}`).toBeGreaterThan(leastShare(0.93, ROUNDS, FULL));
    const worst = (times: readonly number[]): number => Math.min(...times.slice(0, 3)) / ROUNDS;
    if (design.opened < design.sizes.length && design.palletSdMm > 0)
      expect(worst(held)).toBeGreaterThan(worst(rival));
  });
});
