import { EngineError } from '../errors.ts';
import { type ThicknessBins, squaresOf } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';
import { pairsOfWeights } from './kick-probability.ts';

/** What a pile means for the roof, whoever worked it out. */
export interface PileEvenness {
  /** Slates on the pile, in the counts of the spread it was made from. */
  readonly slates: number;
  /** Chance that two different slates of the pile kick, 0 to 1. */
  readonly kickProbability: number;
  /** Mean of the squared step between two different slates, mm²; 0 for one reading or none. */
  readonly meanSquaredStepMm2: number;
}

/** Evenness of the window of bins from `first` up to, but not with, `end`. */
export type KickWindows = (first: number, end: number) => PileEvenness;

/**
 * Prepares a spread so that the evenness of any window of neighbouring bins is read off in constant
 * time, however many slates it holds. A pile cut by thresholds is such a window.
 *
 * @param bins the spread; not modified
 * @param kickAllowanceMm the step between neighbours that is still accepted, mm, 0 or more
 * @returns a function of a window, 0 ≤ first ≤ end ≤ number of bins; an empty window has no slates
 * and chance 0
 *
 * Definition: as `kickProbabilityWithin`. With W the slates up to a bin, s the first bin that steps
 * above the window's first bin by more than the allowance and p(x) the last bin that bin x steps
 * above, the kicking pairs are Σ w(x)·W(p(x)) over x from s to the window's end, less the pairs with
 * slates below the window, W(first)·(W(end) − W(s)). Both parts are differences of running sums.
 * Accuracy: exact pairs while counts are whole and pairs below 2^53.
 * Cost: linear in the bins to prepare; constant per window.
 *
 * @throws EngineError `out-of-range` for a negative allowance, `not-finite`
 * @example
 * const windows = kickWindows(binsFromPairs([[500, 2], [700, 2], [900, 5]]), 1.5);
 * windows(0, 2).kickProbability; // 0.6666…
 */
export function kickWindows(bins: ThicknessBins, kickAllowanceMm: number): KickWindows {
  const allowance = toHundredths(kickAllowanceMm);
  if (allowance < 0)
    throw new EngineError(
      'out-of-range',
      `kick allowance is ${kickAllowanceMm} mm; give 0 or more`
    );
  const { hundredths, counts } = bins;
  const squares = squaresOf(bins);
  const length = hundredths.length;
  const middle = length > 0 ? hundredths[length >> 1] : 0;
  const slatesUpTo = new Float64Array(length + 1);
  const sumUpTo = new Float64Array(length + 1);
  const squareUpTo = new Float64Array(length + 1);
  const weightSquaresUpTo = new Float64Array(length + 1);
  const pairsUpTo = new Float64Array(length + 1);
  /** For each bin, how many bins lie below it by more than the allowance. */
  const binsBelow = new Int32Array(length);
  let below = 0;
  for (let bin = 0; bin < length; bin++) {
    const shifted = hundredths[bin] - middle;
    while (hundredths[below] < hundredths[bin] - allowance) below++;
    binsBelow[bin] = below;
    slatesUpTo[bin + 1] = slatesUpTo[bin] + counts[bin];
    sumUpTo[bin + 1] = sumUpTo[bin] + counts[bin] * shifted;
    squareUpTo[bin + 1] = squareUpTo[bin] + counts[bin] * shifted * shifted;
    weightSquaresUpTo[bin + 1] = weightSquaresUpTo[bin] + squares[bin];
    pairsUpTo[bin + 1] = pairsUpTo[bin] + counts[bin] * slatesUpTo[below];
  }
  /** For each bin, the first bin that lies above it by more than the allowance. */
  const firstAbove = new Int32Array(length);
  let above = 0;
  for (let bin = 0; bin < length; bin++) {
    while (above < length && binsBelow[above] <= bin) above++;
    firstAbove[bin] = above;
  }

  return (first, end) => {
    const slates = first < end ? slatesUpTo[end] - slatesUpTo[first] : 0;
    const above = first < end ? firstAbove[first] : end;
    const pairs =
      above < end
        ? pairsUpTo[end] -
          pairsUpTo[above] -
          slatesUpTo[first] * (slatesUpTo[end] - slatesUpTo[above])
        : 0;
    const sum = sumUpTo[end] - sumUpTo[first];
    const weightSquares = weightSquaresUpTo[end] - weightSquaresUpTo[first];
    return evenness(slates, pairs, sum, squareUpTo[end] - squareUpTo[first], weightSquares);
  };
}

/** Evenness of one pile counted directly; the same figures as a window's, for any spread. */
export function pileEvenness(bins: ThicknessBins, kickAllowanceMm: number): PileEvenness {
  return kickWindows(bins, kickAllowanceMm)(0, bins.hundredths.length);
}

function evenness(
  slates: number,
  kickingPairs: number,
  sum: number,
  sumOfSquares: number,
  weightSquares: number
): PileEvenness {
  const pairs = pairsOfWeights(slates, weightSquares);
  if (pairs === 0) return { slates, kickProbability: 0, meanSquaredStepMm2: 0 };
  const squaredDeviations = Math.max(0, sumOfSquares - (sum * sum) / slates);
  return {
    slates,
    kickProbability: Math.min(1, Math.max(0, (2 * kickingPairs) / pairs)),
    meanSquaredStepMm2: (2 * squaredDeviations * slates) / pairs / 10_000
  };
}
