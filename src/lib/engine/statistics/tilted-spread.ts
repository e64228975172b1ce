import { type ThicknessBins, binsFromPairs } from '../thickness/index.ts';
import { type LikelihoodAt, maximiseConcave } from './maximise-concave.ts';
import { invertPositiveDefinite } from './symmetric.ts';

/** So many taps on one pile by one hand. */
export interface PileOfTaps {
  readonly taps: number;
  /** Chance that each bin of the stock reaches the pile, up to one factor for all of them. */
  readonly chances: Float64Array;
}

/** What is known of one pallet. */
export interface PalletEvidence {
  readonly gauged: ThicknessBins;
  readonly piles: readonly PileOfTaps[];
  /** Readings that the stock's spread counts for, above 0. */
  readonly stockReadings: number;
}

/**
 * The spread of one pallet as the stock's spread moved and stretched to what is known of the pallet.
 *
 * @param stock the stock's spread in any number of slates; not modified
 * @param evidence what is known of the pallet; not modified
 * @returns chances of the stock's bins, adding up to 1; the stock's own where the stock has a single
 * thickness
 *
 * Definition: chances ∝ stock · exp(a z + b z²), z the standardised thickness, with a and b of the
 * greatest likelihood of the readings, the taps (each a slate of unknown thickness that reached its
 * pile) and `stockReadings` readings spread exactly as the stock. For normal spreads that is any
 * other normal spread. Accuracy: the top that is climbed to from the stock's own spread, to about
 * 1e-9 of a standard error. Cost: bins × piles for each of some six steps.
 *
 * @source density ratio model (exponential tilting), Qin and Zhang 1997, from memory; the readings
 * that stand for the stock are ours
 */
export function tiltedSpread(
  stock: ThicknessBins,
  { gauged, piles, stockReadings }: PalletEvidence
): Float64Array {
  const z = standardised(stock);
  const degree = Math.min(2, z.at.length - 1);
  const sums = [0, 0];
  let readings = 0;
  for (const [bin, hundredths] of gauged.hundredths.entries()) {
    const at = (hundredths - z.centre) / z.scale;
    readings += gauged.counts[bin];
    sums[0] += gauged.counts[bin] * at;
    sums[1] += gauged.counts[bin] * at * at;
  }
  readings += stockReadings;
  sums[1] += stockReadings; // the stock's own z has mean 0 and mean square 1

  const likelihood = (tilt: readonly number[]): LikelihoodAt => {
    const { weights, top } = tiltedWeights(stock.counts, z.at, tilt);
    const whole = momentsUnder(weights, z.at);
    const logWhole = Math.log(whole.total);
    let value = -readings * (logWhole + top);
    for (let j = 0; j < degree; j++) value += tilt[j] * sums[j];
    const gradient = sums.slice(0, degree).map((sum, j) => sum - readings * whole.mean[j]);
    const complete = scaled(whole.covariance, readings, degree);
    const observed = scaled(whole.covariance, readings, degree);
    for (const { taps, chances } of piles) {
      if (taps === 0) continue;
      const told = momentsUnder(weights, z.at, chances);
      value += taps * (Math.log(told.total) - logWhole);
      for (let i = 0; i < degree; i++) {
        gradient[i] += taps * (told.mean[i] - whole.mean[i]);
        for (let j = 0; j < degree; j++) {
          complete[i][j] += taps * whole.covariance[i][j];
          observed[i][j] += taps * (whole.covariance[i][j] - told.covariance[i][j]);
        }
      }
    }
    // Far from the top the likelihood may bend upwards; there the step of expectation and
    // maximisation, which always climbs, takes the place of Newton's.
    const information = invertPositiveDefinite(observed) ? observed : complete;
    return { value, gradient, information };
  };

  const flat = new Array<number>(degree).fill(0);
  const found = degree > 0 ? maximiseConcave(flat, likelihood) : { ok: false as const };
  const { weights } = tiltedWeights(stock.counts, z.at, found.ok ? found.at : flat);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** The bins of a spread with other counts; bins that come to nothing are left out. */
export function withCounts({ hundredths }: ThicknessBins, counts: Float64Array): ThicknessBins {
  return binsFromPairs(Array.from(counts, (count, bin) => [hundredths[bin], count] as const));
}

/** Thickness of each bin less the stock's mean, in standard deviations of the stock. */
function standardised({ hundredths, counts }: ThicknessBins): {
  at: Float64Array;
  centre: number;
  scale: number;
} {
  let [total, sum, squares] = [0, 0, 0];
  for (let bin = 0; bin < counts.length; bin++) {
    total += counts[bin];
    sum += counts[bin] * hundredths[bin];
  }
  const centre = sum / total;
  for (let bin = 0; bin < counts.length; bin++)
    squares += counts[bin] * (hundredths[bin] - centre) ** 2;
  const scale = Math.sqrt(squares / total) || 1;
  return { at: Float64Array.from(hundredths, (value) => (value - centre) / scale), centre, scale };
}

/** Counts · exp(a z + b z² − top), and the greatest exponent. */
function tiltedWeights(
  counts: Float64Array,
  z: Float64Array,
  [a = 0, b = 0]: readonly number[]
): { weights: Float64Array; top: number } {
  let top = -Infinity;
  for (const at of z) top = Math.max(top, (a + b * at) * at);
  return {
    weights: counts.map((count, bin) => count * Math.exp((a + b * z[bin]) * z[bin] - top)),
    top
  };
}

/** Total, and mean and covariance of (z, z²), under weights and perhaps chances. */
function momentsUnder(
  weights: Float64Array,
  z: Float64Array,
  chances?: Float64Array
): { total: number; mean: number[]; covariance: number[][] } {
  let [total, one, two, three, four] = [0, 0, 0, 0, 0];
  for (let bin = 0; bin < z.length; bin++) {
    const at = z[bin];
    const weight = chances ? weights[bin] * chances[bin] : weights[bin];
    const first = weight * at;
    const second = first * at;
    total += weight;
    one += first;
    two += second;
    three += second * at;
    four += second * at * at;
  }
  const mean = [one / total, two / total];
  const across = three / total - mean[0] * mean[1];
  return {
    total,
    mean,
    covariance: [
      [two / total - mean[0] ** 2, across],
      [across, four / total - mean[1] ** 2]
    ]
  };
}

function scaled(matrix: number[][], by: number, size: number): number[][] {
  return matrix.slice(0, size).map((row) => row.slice(0, size).map((entry) => entry * by));
}
