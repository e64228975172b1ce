import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import type { ThicknessBins } from '../thickness/index.ts';
import { bestPartition } from './best-partition.ts';
import { thresholdsAtCuts } from './threshold-between.ts';

/** Fewer different thicknesses than piles: no such boundaries exist. */
export interface TooFewThicknesses {
  readonly ok: false;
  readonly reason: 'too-few-thicknesses';
  /** Different thicknesses there are. */
  readonly distinct: number;
}

/** One class of naturally broken values. */
export interface NaturalClass {
  /** Index of its first value. */
  readonly first: number;
  /** Index of its last value, included. */
  readonly last: number;
  /** Sum of its weights. */
  readonly weight: number;
  /** Weighted mean of its values. */
  readonly mean: number;
  /** Weighted sum of squared deviations from its mean. */
  readonly sumOfSquares: number;
}

export interface NaturalClasses {
  readonly ok: true;
  /** Classes with rising values. */
  readonly classes: readonly NaturalClass[];
  /** Sum over the classes of their sums of squares: the least possible. */
  readonly withinSumOfSquares: number;
  /** Goodness of variance fit: 1 − within ÷ total sum of squares; 1 where all values are equal. */
  readonly goodnessOfFit: number;
}

export interface NaturalBreaks {
  readonly ok: true;
  /** Bounds between piles, mm, strictly falling; see {@link thresholdBetween} for the rule. */
  readonly thresholdsMm: readonly number[];
  /** Least within-pile sum of squares, mm². */
  readonly withinSumOfSquares: number;
  /** 1 − within ÷ total sum of squares, 0 to 1. */
  readonly goodnessOfFit: number;
}

/**
 * Splits sorted values into classes at the least within-class sum of squares (natural breaks,
 * one-dimensional k-means solved exactly).
 *
 * @param values strictly rising; not modified
 * @param weights how often each value occurs, each above 0, may be fractional; not modified
 * @param count how many classes, 1 or more
 * @returns the classes; or `too-few-thicknesses` where there are fewer values than classes. Of
 * several optima the one whose last class begins earliest, then the class before it, and so on
 *
 * Accuracy: sums run on values shifted by the middle value, so a large common offset costs no
 * digits, and whole values of up to four digits with whole weights are summed without any rounding.
 * The reported sums of squares are worked out again, each about its own class mean.
 * Cost: count × n log n.
 *
 * @throws EngineError `not-finite`, `wrong-order`, `wrong-length`, `out-of-range`, `not-whole`
 * @example
 * naturalClasses([-1, 2, 4, 5, 6], [4, 3, 1, 1, 1], 3); // {−1}, {2}, {4, 5, 6}: within 2
 */
export function naturalClasses(
  values: ArrayLike<number>,
  weights: ArrayLike<number>,
  count: number
): NaturalClasses | TooFewThicknesses {
  requireSortedAndWeighted(values, weights);
  requireWhole(count, 1, 'number of classes');
  const length = values.length;
  if (length < count) return { ok: false, reason: 'too-few-thicknesses', distinct: length };

  const firsts = bestPartition(length, count, sumOfSquaresOfRuns(values, weights));
  const classes = firsts.map((first, index) =>
    describeClass(values, weights, first, (firsts[index + 1] ?? length) - 1)
  );
  const within = classes.reduce((sum, { sumOfSquares }) => sum + sumOfSquares, 0);
  const total = describeClass(values, weights, 0, length - 1).sumOfSquares;
  return {
    ok: true,
    classes,
    withinSumOfSquares: within,
    goodnessOfFit: total > 0 ? 1 - within / total : 1
  };
}

/**
 * Boundaries by natural breaks: the thresholds that make the piles as even within themselves as
 * can be, for the whole stock alike. They know nothing of the roof.
 *
 * @param bins the spread; not modified
 * @param piles how many piles, 1 or more
 * @returns thresholds in mm, falling; see {@link naturalClasses} for the definition and the tie
 * rule and {@link thresholdBetween} for the place of a threshold in its gap
 *
 * Cost: piles × bins × log bins, whatever the number of readings.
 * @example
 * naturalBreaks(binsFromPairs([[500, 3], [510, 2], [700, 4]]), 2); // threshold 6.1 mm
 */
export function naturalBreaks(
  bins: ThicknessBins,
  piles: number
): NaturalBreaks | TooFewThicknesses {
  const result = naturalClasses(bins.hundredths, bins.counts, piles);
  if (!result.ok) return result;
  return {
    ok: true,
    thresholdsMm: thresholdsAtCuts(
      bins,
      result.classes.slice(1).map(({ first }) => first)
    ),
    withinSumOfSquares: result.withinSumOfSquares / 10_000,
    goodnessOfFit: result.goodnessOfFit
  };
}

/** Sum of squares of any run of values in constant time, from running sums about the middle value. */
function sumOfSquaresOfRuns(
  values: ArrayLike<number>,
  weights: ArrayLike<number>
): (first: number, last: number) => number {
  const length = values.length;
  const middle = values[length >> 1];
  const weight = new Float64Array(length + 1);
  const sum = new Float64Array(length + 1);
  const square = new Float64Array(length + 1);
  for (let index = 0; index < length; index++) {
    const shifted = values[index] - middle;
    weight[index + 1] = weight[index] + weights[index];
    sum[index + 1] = sum[index] + weights[index] * shifted;
    square[index + 1] = square[index] + weights[index] * shifted * shifted;
  }
  return (first, last) => {
    if (first === last) return 0;
    const runSum = sum[last + 1] - sum[first];
    const squares = square[last + 1] - square[first];
    return Math.max(0, squares - (runSum * runSum) / (weight[last + 1] - weight[first]));
  };
}

function describeClass(
  values: ArrayLike<number>,
  weights: ArrayLike<number>,
  first: number,
  last: number
): NaturalClass {
  const origin = values[first];
  let weight = 0;
  let sum = 0;
  for (let index = first; index <= last; index++) {
    weight += weights[index];
    sum += weights[index] * (values[index] - origin);
  }
  const mean = sum / weight;
  let sumOfSquares = 0;
  for (let index = first; index <= last; index++)
    sumOfSquares += weights[index] * (values[index] - origin - mean) ** 2;
  return { first, last, weight, mean: origin + mean, sumOfSquares };
}

function requireSortedAndWeighted(values: ArrayLike<number>, weights: ArrayLike<number>): void {
  if (values.length !== weights.length)
    throw new EngineError('wrong-length', `${weights.length} weights for ${values.length} values`);
  for (let index = 0; index < values.length; index++) {
    requireFinite(values[index], `value ${index + 1}`);
    requireFinite(weights[index], `weight ${index + 1}`);
    if (weights[index] <= 0)
      throw new EngineError(
        'out-of-range',
        `weight ${index + 1} is ${weights[index]}; give more than 0`
      );
    if (index > 0 && values[index] <= values[index - 1])
      throw new EngineError('wrong-order', `value ${index + 1} does not rise above the one before`);
  }
}
