import { EngineError, requireWhole } from '../errors.ts';
import { requireShare } from './requirements.ts';

/** How probable each number of bad slates in a sample is. */
export interface CountDistribution {
  /** The count that the first probability belongs to. */
  readonly first: number;
  /** Probability of `first`, `first + 1`, …; they add up to 1. */
  readonly probabilities: Float64Array;
}

/** Terms this far below the greatest one are left out; they cannot be told from 0. */
const NEGLIGIBLE = 1e-290;

/**
 * Builds a distribution outwards from its most probable count by the ratio of neighbours, then
 * divides by its own sum. No factorials, so nothing overflows or cancels.
 */
function outwardsFromMode(
  mode: number,
  least: number,
  most: number,
  ratioToNext: (count: number) => number
): CountDistribution {
  const above: number[] = [];
  let term = 1;
  for (let count = mode; count < most && term > NEGLIGIBLE; count++)
    above.push((term *= ratioToNext(count)));
  const below: number[] = [];
  term = 1;
  for (let count = mode; count > least && term > NEGLIGIBLE; count--)
    below.push((term /= ratioToNext(count - 1)));
  const terms = Float64Array.from([...below.reverse(), 1, ...above]);
  const total = sumOf(terms, 0, terms.length);
  return { first: mode - below.length, probabilities: terms.map((each) => each / total) };
}

/** Compensated sum, so that a long tail costs no digits. */
function sumOf(terms: Float64Array, from: number, to: number): number {
  let sum = 0;
  let lost = 0;
  for (let index = from; index < to; index++) {
    const next = sum + terms[index];
    lost += Math.abs(sum) >= terms[index] ? sum - next + terms[index] : terms[index] - next + sum;
    sum = next;
  }
  return sum + lost;
}

const clamp = (value: number, least: number, most: number): number =>
  Math.min(Math.max(value, least), most);

/**
 * Bad slates in a sample drawn without putting any back: the exact model of a delivery.
 *
 * @param lotSize slates in the lot, whole, at least 1
 * @param bad bad slates in the lot, 0 to `lotSize`
 * @param sampleSize slates drawn, 0 to `lotSize`
 * @returns the hypergeometric distribution, each value within about 1e-15 of the exact rational
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * Cost: the width of the distribution. Source: definition.
 * @example hypergeometric(50, 5, 5) // atMost(…, 1) = 0.928248
 */
export function hypergeometric(
  lotSize: number,
  bad: number,
  sampleSize: number
): CountDistribution {
  requireWhole(lotSize, 1, 'lot size');
  requireWhole(bad, 0, 'bad slates');
  requireWhole(sampleSize, 0, 'sample size');
  if (bad > lotSize || sampleSize > lotSize)
    throw new EngineError(
      'out-of-range',
      `${bad} bad and ${sampleSize} drawn; give at most the lot of ${lotSize}`
    );
  const least = Math.max(0, sampleSize + bad - lotSize);
  const most = Math.min(bad, sampleSize);
  const mode = clamp(Math.floor(((sampleSize + 1) * (bad + 1)) / (lotSize + 2)), least, most);
  return outwardsFromMode(
    mode,
    least,
    most,
    (count) =>
      ((bad - count) * (sampleSize - count)) /
      ((count + 1) * (lotSize - bad - sampleSize + count + 1))
  );
}

/**
 * Bad slates in a sample from an endless stream with the given share bad (binomial distribution).
 *
 * @param sampleSize slates drawn, whole, 0 or more
 * @param share share bad, 0 to 1
 * @throws EngineError `not-whole`, `out-of-range`
 * @example binomial(52, 0.01) // atMost(…, 3) = 0.998153
 */
export function binomial(sampleSize: number, share: number): CountDistribution {
  requireWhole(sampleSize, 0, 'sample size');
  requireShare(share, 'share bad');
  if (share === 0) return certain(0);
  if (share === 1) return certain(sampleSize);
  const odds = share / (1 - share);
  return outwardsFromMode(
    Math.min(Math.floor((sampleSize + 1) * share), sampleSize),
    0,
    sampleSize,
    (count) => ((sampleSize - count) / (count + 1)) * odds
  );
}

function certain(count: number): CountDistribution {
  return { first: count, probabilities: Float64Array.of(1) };
}

/** Probability of `count` or fewer. Any whole number may be asked; below the range it is 0. */
export function atMost(distribution: CountDistribution, count: number): number {
  const { first, probabilities } = distribution;
  if (count < first) return 0;
  if (count >= first + probabilities.length - 1) return 1;
  return Math.min(1, sumOf(probabilities, 0, count - first + 1));
}

/** Probability of `count` or more. Kept apart from `1 − atMost` so that a small tail keeps its digits. */
export function atLeast(distribution: CountDistribution, count: number): number {
  const { first, probabilities } = distribution;
  if (count <= first) return 1;
  if (count > first + probabilities.length - 1) return 0;
  return Math.min(1, sumOf(probabilities, count - first, probabilities.length));
}
