import { EngineError } from '../errors.ts';
import { type ThicknessBins, totalCount } from './bins.ts';

/** Count, mean, spread and range of a list of numbers, in the unit of the numbers. */
export interface ListMoments {
  readonly ok: true;
  readonly count: number;
  readonly mean: number;
  /** Sample standard deviation, n − 1; null for one number, which has none. */
  readonly sd: number | null;
  readonly least: number;
  readonly greatest: number;
}

/** Count, mean, spread and range of a spread of slates. */
export interface ThicknessMoments {
  readonly ok: true;
  /** Slates; may be fractional where taps are spread over bins. */
  readonly count: number;
  readonly meanMm: number;
  /** Sample standard deviation, n − 1; null for one slate or fewer, which has none. */
  readonly sdMm: number | null;
  readonly thinnestMm: number;
  readonly thickestMm: number;
}

/** Nothing to describe. */
export interface NothingRead {
  readonly ok: false;
  readonly reason: 'empty';
}

/**
 * Mean, SD, thinnest and thickest of a spread of slates: the figures under every histogram.
 *
 * @param bins slates by thickness; not modified
 * @returns the moments, or `empty`
 *
 * Definition: SD with n − 1, where n is the sum of the counts, whole or fractional. Accuracy: a few
 * units in the last place; deviations are taken from the mean in a second pass. Cost: linear in the
 * bins, however many slates they hold.
 *
 * @example
 * momentsOfBins(binsFromPairs([[500, 1], [600, 2]])); // mean 5.6667 mm, SD 0.57735 mm
 */
export function momentsOfBins(bins: ThicknessBins): ThicknessMoments | NothingRead {
  const { hundredths, counts } = bins;
  const count = totalCount(bins);
  if (count === 0) return { ok: false, reason: 'empty' };
  const origin = hundredths[0];
  let sum = 0;
  for (let bin = 0; bin < counts.length; bin++) sum += counts[bin] * (hundredths[bin] - origin);
  const mean = sum / count;
  let squares = 0;
  for (let bin = 0; bin < counts.length; bin++)
    squares += counts[bin] * (hundredths[bin] - origin - mean) ** 2;
  return {
    ok: true,
    count,
    meanMm: (origin + mean) / 100,
    sdMm: count > 1 ? Math.sqrt(squares / (count - 1)) / 100 : null,
    thinnestMm: origin / 100,
    thickestMm: hundredths[hundredths.length - 1] / 100
  };
}

/**
 * The same figures for a plain list of numbers that are not slates on bins: a gauge study, pallet
 * means, the published data sets the numerics are checked against.
 *
 * @param values finite numbers in any unit and order; not modified
 * @returns the moments in that unit, or `empty`
 *
 * Definition: SD with n − 1. Accuracy: 15 digits of the mean, and an SD that keeps its digits where
 * the values are ten million times their spread (compensated sum, then a corrected second pass).
 * Cost: two passes.
 *
 * @throws EngineError `not-finite`
 * @example momentsOfList([10000001, 10000003, 10000002]); // mean 10000002, sd 1 (NIST NumAcc1)
 */
export function momentsOfList(values: ArrayLike<number>): ListMoments | NothingRead {
  const count = values.length;
  if (count === 0) return { ok: false, reason: 'empty' };
  const mean = compensatedMean(values);
  let squares = 0;
  let drift = 0;
  let least = Infinity;
  let greatest = -Infinity;
  for (let index = 0; index < count; index++) {
    const deviation = values[index] - mean;
    squares += deviation * deviation;
    drift += deviation;
    least = Math.min(least, values[index]);
    greatest = Math.max(greatest, values[index]);
  }
  const corrected = Math.max(0, squares - (drift * drift) / count);
  return {
    ok: true,
    count,
    mean,
    sd: count > 1 ? Math.sqrt(corrected / (count - 1)) : null,
    least,
    greatest
  };
}

/**
 * How much each reading resembles the one before it: the lag-1 autocorrelation. Readings taken
 * slate after slate from one stack give a figure above 0, and then count for fewer than they are.
 *
 * @param values finite numbers in the order they were read; not modified
 * @returns a figure from −1 to 1; or `too-few` below two values, `no-spread` where all are equal
 *
 * Definition: Σ (xᵢ − x̄)(xᵢ₊₁ − x̄) / Σ (xᵢ − x̄)². Accuracy and cost as {@link momentsOfList}.
 *
 * @throws EngineError `not-finite`
 * @example lag1Autocorrelation([10000001, 10000003, 10000002]); // −0.5 (NIST NumAcc1)
 */
export function lag1Autocorrelation(
  values: ArrayLike<number>
):
  | { readonly ok: true; readonly correlation: number }
  | { readonly ok: false; readonly reason: 'too-few' | 'no-spread' } {
  if (values.length < 2) return { ok: false, reason: 'too-few' };
  const mean = compensatedMean(values);
  let products = 0;
  let squares = 0;
  for (let index = 0; index < values.length; index++) {
    const deviation = values[index] - mean;
    squares += deviation * deviation;
    if (index > 0) products += deviation * (values[index - 1] - mean);
  }
  if (squares === 0) return { ok: false, reason: 'no-spread' };
  return { ok: true, correlation: products / squares };
}

/** Mean by Neumaier's compensated sum. */
function compensatedMean(values: ArrayLike<number>): number {
  let sum = 0;
  let lost = 0;
  for (let index = 0; index < values.length; index++) {
    const value = values[index];
    if (!Number.isFinite(value))
      throw new EngineError('not-finite', `value ${index} is ${value}; give a finite number`);
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return (sum + lost) / values.length;
}
