import { describe, expect, it } from 'vitest';
import {
  type PalletSample,
  doubleSample,
  estimateGrade,
  gradeByDoubleSample,
  meanByDoubleSample
} from '$lib/engine/statistics';
import { gradeIntervals, mergeBins } from '$lib/engine/thickness';
import { leastShare, report, rounds } from '../support/rounds.ts';
import {
  CUTS_MM,
  ONE_IN_TWENTY,
  type TappedDesign,
  type TriedPallet,
  tappedDelivery
} from '../support/tapped-deliveries.ts';

/** Root mean square errors of the shares of thick, medium and thin, in points, to be reached. */
interface Design extends TappedDesign {
  readonly name: string;
  readonly reach: readonly number[];
}

const designs: Design[] = [
  { ...ONE_IN_TWENTY, name: '1 check in 20', reach: [2.8, 3.5, 2.6] },
  { ...ONE_IN_TWENTY, name: '1 check in 50', every: 50, reach: [4.1, 5.1, 3.6] },
  { ...ONE_IN_TWENTY, name: 'two sorters', biasMm: [0.3, -0.4], reach: [2.9, 3.8, 2.9] },
  { ...ONE_IN_TWENTY, name: 'a drift', biasMm: [0], driftMm: 0.6, reach: [2.9, 3.8, 2.8] },
  { ...ONE_IN_TWENTY, name: 'slips', slips: 0.1, reach: [3.0, 3.8, 2.7] }
];
/** Designs that only their intervals are asked of. */
const others: [string, TappedDesign][] = [
  ['a third tapped so far', { ...ONE_IN_TWENTY, every: 5, tapped: 100 }],
  ['nothing gauged', { ...ONE_IN_TWENTY, gauged: 0 }],
  ['pallets far apart', { ...ONE_IN_TWENTY, palletSdMm: 0.9, slateSdMm: 0.5 }],
  [
    'some pallets by gauge, some by hand',
    {
      ...ONE_IN_TWENTY,
      every: 5,
      gauged: [85, 6, 35, 6, 80, 80],
      tapped: [0, 110, 50, 90, 0, 0]
    }
  ],
  [
    'half of the pallets untouched',
    { ...ONE_IN_TWENTY, gauged: [10, 10, 10, 0, 0, 0], tapped: [290, 290, 290, 0, 0, 0] }
  ],
  ['one pallet, mostly gauged', { ...ONE_IN_TWENTY, pallets: 1, gauged: 150, every: 10 }],
  ['20 pallets of which every slate is tapped', { ...ONE_IN_TWENTY, pallets: 20, every: 40 }]
];
const FULL = 400;
const ROUNDS = rounds(80, FULL);
const bands = gradeIntervals(CUTS_MM);

/** The simplest rival: every slate gauged, whatever for, is one random sample of its pallet. */
function gaugeAndChecks(pallets: readonly TriedPallet[]): PalletSample[] {
  return pallets.map(({ palletId, slates, bins, checks }) => ({
    palletId,
    slates,
    bins: mergeBins([bins, ...checks.flat()])
  }));
}

function known<T extends { readonly ok: boolean }>(told: T): Extract<T, { ok: true }> {
  if (!told.ok) throw new Error(JSON.stringify(told));
  return told as Extract<T, { ok: true }>;
}

interface Told {
  readonly share: number;
  readonly countLow: number;
  readonly countHigh: number;
}

/** What one way of estimating comes to over the rounds: errors in points, coverage, widths. */
class Score {
  readonly squares = bands.map(() => 0);
  readonly widths = bands.map(() => 0);
  held = 0;
  asked = 0;

  add(told: readonly Told[], inGrade: readonly number[], all: number): void {
    for (const [band, { share, countLow, countHigh }] of told.entries()) {
      this.squares[band] += (100 * (share - inGrade[band] / all)) ** 2;
      this.widths[band] += (100 * (countHigh - countLow)) / all;
      this.held += countLow <= inGrade[band] && inGrade[band] <= countHigh ? 1 : 0;
      this.asked++;
    }
  }
  errors(): number[] {
    return this.squares.map((square) => Math.sqrt(square / ROUNDS));
  }
  width(band: number): number {
    return this.widths[band] / ROUNDS;
  }
  say(): string {
    const errors = this.errors().map((points) => points.toFixed(2));
    return `${errors.join('/')}, ${((100 * this.held) / this.asked).toFixed(1)} % held, medium ${this.width(1).toFixed(1)} wide`;
  }
}

/** One delivery by both ways, with how many slates of each grade it really has. */
function triedOn(design: TappedDesign, seed: number, bands = gradeIntervals(CUTS_MM)) {
  const pallets = tappedDelivery(design, seed);
  const packed = pallets.flatMap((pallet) => pallet.packed);
  const inGrade = bands.map(
    ({ fromMm, toMm }) =>
      packed.filter((at) => at >= Math.round(100 * fromMm) && at < 100 * toMm).length
  );
  const sample = known(doubleSample(pallets));
  const mean = known(meanByDoubleSample(sample));
  const reallyMm = packed.reduce((sum, at) => sum + at, 0) / packed.length / 100;
  return {
    inGrade,
    slates: packed.length,
    own: bands.map((band) => known(gradeByDoubleSample(sample, band))),
    rival: bands.map((band) => known(estimateGrade(gaugeAndChecks(pallets), band))),
    isMeanHeld: mean.lowMm <= reallyMm && reallyMm <= mean.highMm
  };
}

describe('taps as strata, spot checks as the second phase', () => {
  it.each(designs)(
    '$name: as near as they can be, and never worse than gauge and checks',
    (design) => {
      const [own, rival] = [new Score(), new Score()];
      let heldMeans = 0;
      for (let seed = 1; seed <= ROUNDS; seed++) {
        const tried = triedOn(design, seed);
        own.add(tried.own, tried.inGrade, tried.slates);
        rival.add(tried.rival, tried.inGrade, tried.slates);
        heldMeans += tried.isMeanHeld ? 1 : 0;
      }
      report(design.name, { own: own.say(), rival: rival.say(), means: heldMeans / ROUNDS });
      // an error told from so many rounds strays by 1/√(2 × rounds) of itself; two of that
      const strays = 1 + 2 / Math.sqrt(2 * ROUNDS);
      for (const [band, points] of own.errors().entries()) {
        expect(points).toBeLessThan(design.reach[band] * strays);
        expect(points).toBeLessThan(rival.errors()[band] * (1 + 0.5 / Math.sqrt(ROUNDS)));
      }
      expect(own.held / own.asked).toBeGreaterThan(leastShare(0.93, 3 * ROUNDS, 3 * FULL));
      expect(heldMeans / ROUNDS).toBeGreaterThan(leastShare(0.92, ROUNDS, FULL));
      expect(own.held / own.asked).toBeLessThan(0.985);
      expect(own.width(1)).toBeLessThan(rival.width(1));
    }
  );

  it.each(others)('%s: intervals that hold', (name, design) => {
    const [own, rival] = [new Score(), new Score()];
    let heldMeans = 0;
    for (let seed = 1; seed <= ROUNDS; seed++) {
      const tried = triedOn(design, seed);
      own.add(tried.own, tried.inGrade, tried.slates);
      rival.add(tried.rival, tried.inGrade, tried.slates);
      heldMeans += tried.isMeanHeld ? 1 : 0;
    }
    report(name, { own: own.say(), rival: rival.say(), means: heldMeans / ROUNDS });
    expect(own.held / own.asked).toBeGreaterThan(leastShare(0.93, 3 * ROUNDS, 3 * FULL));
    expect(heldMeans / ROUNDS).toBeGreaterThan(leastShare(0.92, ROUNDS, FULL));
  });

  it.each([20, 50])('1 check in %i: a pile split far beyond the hand’s own boundary', (every) => {
    const far = gradeIntervals([7.5, 4.2]);
    const [own, rival] = [new Score(), new Score()];
    for (let seed = 1; seed <= ROUNDS; seed++) {
      const tried = triedOn({ ...ONE_IN_TWENTY, every }, seed, far);
      own.add(tried.own, tried.inGrade, tried.slates);
      rival.add(tried.rival, tried.inGrade, tried.slates);
    }
    report(`1 in ${every}, split at 7.5 and 4.2 mm`, { own: own.say(), rival: rival.say() });
    expect(own.held / own.asked).toBeGreaterThan(leastShare(0.93, 3 * ROUNDS, 3 * FULL));
  });
});
