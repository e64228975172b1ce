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

describe('taps as strata, spot checks as the second phase', () => {
  it.each(designs)(
    '$name: as near as they can be, and never worse than gauge and checks',
    (design) => {
      const [own, rival] = [new Score(), new Score()];
      let heldMeans = 0;
      for (let seed = 1; seed <= ROUNDS; seed++) {
        const pallets = tappedDelivery(design, seed);
        const packed = pallets.flatMap((pallet) => pallet.packed);
        const inGrade = bands.map(
          ({ fromMm, toMm }) =>
            packed.filter((at) => at >= Math.round(100 * fromMm) && at < 100 * toMm).length
        );
        const sample = known(doubleSample(pallets));
        own.add(
          bands.map((band) => known(gradeByDoubleSample(sample, band))),
          inGrade,
          packed.length
        );
        const alone = gaugeAndChecks(pallets);
        rival.add(
          bands.map((band) => known(estimateGrade(alone, band))),
          inGrade,
          packed.length
        );
        const mean = known(meanByDoubleSample(sample));
        const really = packed.reduce((sum, at) => sum + at, 0) / packed.length / 100;
        heldMeans += mean.lowMm <= really && really <= mean.highMm ? 1 : 0;
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
});
