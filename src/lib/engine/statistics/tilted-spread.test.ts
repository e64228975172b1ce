import { describe, expect, it } from 'vitest';
import { type ThicknessBins, binsFromPairs } from '../thickness/index.ts';
import { relativeChances } from './fuse-taps.ts';
import { tiltedSpread } from './tilted-spread.ts';

const NONE = binsFromPairs([]);
const hand = { thresholdsMm: [6], sdMm: 0.3 };

/** The normal density on bins of 0.05 mm from 3 to 9 mm. */
function normal(meanMm: number, sdMm: number): ThicknessBins {
  return binsFromPairs(
    Array.from({ length: 121 }, (_, bin) => {
      const thicknessMm = 3 + bin / 20;
      return [300 + 5 * bin, Math.exp(-0.5 * ((thicknessMm - meanMm) / sdMm) ** 2)];
    })
  );
}

describe('tiltedSpread', () => {
  it('is the stock with nothing known of the pallet, and with a single thickness', () => {
    const stock = binsFromPairs([
      [500, 1],
      [600, 2],
      [700, 1]
    ]);
    const alone = tiltedSpread(stock, { gauged: NONE, piles: [], stockReadings: 3 });
    [0.25, 0.5, 0.25].forEach((chance, bin) => expect(alone[bin]).toBeCloseTo(chance, 14));
    const one = binsFromPairs([[600, 7]]);
    expect([...tiltedSpread(one, { gauged: one, piles: [], stockReadings: 1 })]).toEqual([1]);
  });

  it('weighs two thicknesses by readings, the stock standing for so many', () => {
    const stock = binsFromPairs([
      [500, 1],
      [700, 1]
    ]);
    const gauged = binsFromPairs([[700, 6]]);
    const spread = tiltedSpread(stock, { gauged, piles: [], stockReadings: 2 });
    // 1 + 0 readings of 5 mm, 1 + 6 of 7 mm
    expect(spread[0]).toBeCloseTo(0.125, 9);
    expect(spread[1]).toBeCloseTo(0.875, 9);
  });

  it('has mean and mean square of the readings and the stock together', () => {
    const stock = normal(6, 0.8);
    const gauged = binsFromPairs([
      [520, 2],
      [560, 3],
      [610, 1]
    ]);
    const spread = tiltedSpread(stock, { gauged, piles: [], stockReadings: 4 });
    for (const power of [1, 2]) {
      const momentOf = (bins: ThicknessBins, counts: Float64Array): number =>
        counts.reduce((sum, n, bin) => sum + n * (bins.hundredths[bin] / 100) ** power, 0);
      const total = stock.counts.reduce((sum, n) => sum + n, 0);
      const wanted = momentOf(gauged, gauged.counts) + (4 * momentOf(stock, stock.counts)) / total;
      expect(momentOf(stock, spread)).toBeCloseTo(wanted / 10, 8);
    }
  });

  it('moves a normal stock to the normal pallet whose taps and readings are given', () => {
    const stock = normal(6, 0.8);
    const pallet = normal(5.6, 0.5);
    const total = pallet.counts.reduce((sum, n) => sum + n, 0);
    const share = (n: number): number => n / total;
    const chances = relativeChances(stock, hand);
    const exact = [0, 1].map((pile) => ({
      taps: 1e6 * chanceOf(pallet.counts.map(share), pile),
      chances: chances[pile]
    }));
    const gauged = { ...pallet, counts: pallet.counts.map((n) => 1e6 * share(n)) };
    const spread = tiltedSpread(stock, { gauged, piles: exact, stockReadings: 1e-3 });
    spread.forEach((chance, bin) => expect(chance).toBeCloseTo(share(pallet.counts[bin]), 8));
  });

  it('climbs to the top from taps alone: no small step is more likely', () => {
    const stock = normal(6, 0.8);
    const chances = relativeChances(stock, { thresholdsMm: [6.4, 5.6], sdMm: 0.3 });
    const taps = [5, 40, 90];
    const piles = taps.map((count, pile) => ({ taps: count, chances: chances[pile] }));
    const spread = tiltedSpread(stock, { gauged: NONE, piles, stockReadings: 2 });
    const total = stock.counts.reduce((sum, n) => sum + n, 0);
    const logLikelihood = (shares: Float64Array): number =>
      stock.counts.reduce((sum, n, bin) => sum + ((2 * n) / total) * Math.log(shares[bin]), 0) +
      piles.reduce(
        (sum, { taps: count, chances: own }) =>
          sum + count * Math.log(shares.reduce((reach, share, bin) => reach + share * own[bin], 0)),
        0
      );
    const top = logLikelihood(spread);
    for (const [a, b] of [
      [0.01, 0],
      [-0.01, 0],
      [0, 0.01],
      [0, -0.01],
      [0.01, -0.01]
    ]) {
      const moved = spread.map((share, bin) => {
        const z = (stock.hundredths[bin] / 100 - 6) / 0.8;
        return share * Math.exp(a * z + b * z * z);
      });
      const all = moved.reduce((sum, share) => sum + share, 0);
      expect(logLikelihood(moved.map((share) => share / all))).toBeLessThan(top);
    }
  });
});

/** Chance that a slate of the pallet reaches the pile, to the factor that its bins' chances have. */
function chanceOf(shares: Float64Array, pile: number): number {
  const exact = relativeChances(normal(6, 0.8), hand);
  // the likeliest bins, at 3 and at 9 mm, reach their pile with a chance of 1 to 15 digits
  return shares.reduce((sum, share, bin) => sum + share * exact[pile][bin], 0);
}
