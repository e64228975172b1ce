import { EngineError } from '../errors.ts';
import { type ThicknessBins, squaresOf } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';
import { kickProbabilityWithin, pairsOfWeights, softPairs } from './kick-probability.ts';
import { type KickSoftness, kickBySteps, stepSdMm } from './soft-kick.ts';

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
export function pileEvenness(
  bins: ThicknessBins,
  kickAllowanceMm: number,
  softness?: KickSoftness
): PileEvenness {
  const plain = kickWindows(bins, kickAllowanceMm)(0, bins.hundredths.length);
  if (!softness) return plain;
  return {
    ...plain,
    kickProbability: kickProbabilityWithin(bins, kickAllowanceMm, softness)
  };
}

/**
 * The same for every window between given edges where steps scatter: each window's pairs are counted by
 * their step as it grows bin by bin, and weighted by their chance to kick.
 *
 * @param binAtEdge falling bin numbers: window (thick, thin) holds bins `binAtEdge[thin]` up to,
 * without, `binAtEdge[thick]`
 * @returns for each window its chance, at `thick × edges + thin`
 *
 * Cost: edges × bins² to count, edges² × the widest step to weigh, by chances
 * that windows of one scatter share.
 */
export function softWindowChances(
  bins: ThicknessBins,
  binAtEdge: readonly number[],
  kickAllowanceMm: number,
  softness: KickSoftness
): Float64Array {
  const { hundredths, counts } = bins;
  const squares = squaresOf(bins);
  const windows = kickWindows(bins, kickAllowanceMm);
  const edges = binAtEdge.length;
  const chances = new Float64Array(edges * edges);
  const length = hundredths.length;
  const widest = length > 0 ? hundredths[length - 1] - hundredths[0] : 0;
  const steps = new Float64Array(widest + 1);
  const chancesAt = new Map<number, Float64Array>();
  for (let thin = edges - 1; thin > 0; thin--) {
    const first = binAtEdge[thin];
    steps.fill(0);
    let slates = 0;
    let weightSquares = 0;
    let end = first;
    for (let thick = thin - 1; thick >= 0; thick--) {
      for (; end < binAtEdge[thick]; end++) {
        const count = counts[end];
        const at = hundredths[end];
        steps[0] += (count * count - squares[end]) / 2;
        for (let low = first; low < end; low++) steps[at - hundredths[low]] += count * counts[low];
        slates += count;
        weightSquares += squares[end];
      }
      const pairs = pairsOfWeights(slates, weightSquares);
      if (pairs === 0) continue;
      const sdMm = stepSdMm(softness, windows(first, end).meanSquaredStepMm2 / 2);
      const bySteps = chancesAt.get(sdMm) ?? kickBySteps(kickAllowanceMm, sdMm, widest);
      chancesAt.set(sdMm, bySteps);
      const held = hundredths[end - 1] - hundredths[first] + 1;
      const kicking = softPairs(steps.subarray(0, held), bySteps);
      chances[thick * edges + thin] = Math.min(1, (2 * kicking) / pairs);
    }
  }
  return chances;
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
