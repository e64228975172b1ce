import { EngineError } from '../errors.ts';
import { type ThicknessBins, squaresOf, totalCount } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';
import { type KickSoftness, kickBySteps, stepSdMm } from './soft-kick.ts';

/**
 * The chance that two different slates drawn at random from one pile kick: that their thicknesses
 * differ by more than the kick allowance. Multiplied by the joints of a course it gives the
 * course's expected kickers.
 *
 * @param bins thickness of the pile's slates; not modified
 * @param kickAllowanceMm the step between neighbours that is still accepted, mm, 0 or more; a step
 * of exactly the allowance does not kick
 * @param softness how far steps scatter about it; left out, not at all
 * @returns a chance from 0 to 1; 0 for one reading or none, which tells of no joint
 *
 * Definition: kicking pairs ÷ {@link readingPairs}, both by weight: from readings that stand for many
 * slates it is the unbiased estimate for the pile. With softness a pair counts by its chance to kick.
 * Accuracy: a few units in the last place; 1e-10 with softness.
 * Cost: linear in the bins, by two pointers; their square with softness.
 *
 * @throws EngineError `out-of-range` for a negative allowance, `not-finite`
 * @example
 * // 5.00 mm × 2 and 7.00 mm × 2: of 12 ordered pairs, 8 step by 2 mm
 * kickProbabilityWithin(binsFromPairs([[500, 2], [700, 2]]), 1.5); // 0.6666…
 */
export function kickProbabilityWithin(
  bins: ThicknessBins,
  kickAllowanceMm: number,
  softness?: KickSoftness
): number {
  const pairs = readingPairs(bins);
  const kicking = softness
    ? kickingBySteps(pairsByStep(bins), kickAllowanceMm, softness, pileVarianceMm2(bins))
    : kickingPairs(bins, bins, kickAllowanceMm);
  return pairs > 0 ? Math.min(1, (2 * kicking) / pairs) : 0;
}

/**
 * Ordered pairs of different readings, by weight: N² − Σw², with N the slates and w what one reading
 * stands for. N(N − 1) where every reading is one slate. A reading paired with itself tells nothing of
 * two slates, so a sample is told by these. 0 where there are not two readings: the chance of kicking
 * is then not known.
 */
export function readingPairs(bins: ThicknessBins): number {
  return pairsOfWeights(
    totalCount(bins),
    squaresOf(bins).reduce((sum, square) => sum + square, 0)
  );
}

/** The same from the sums: 0 where what is left is rounding. */
export function pairsOfWeights(slates: number, squares: number): number {
  const pairs = slates * slates - squares;
  return pairs > 1e-9 * slates * slates ? pairs : 0;
}

/**
 * The chance within each of several piles. A pile of which no two readings are known takes the mean of
 * the others, each by its slates: taken for 0, such piles would make few readings look too good.
 *
 * @param piles thickness of each pile, in one scale; not modified
 * @returns one chance a pile; 0 for an empty pile, and for all where no pile has two readings
 */
export function kickProbabilityWithinPiles(
  piles: readonly ThicknessBins[],
  kickAllowanceMm: number,
  softness?: KickSoftness
): number[] {
  const chances = piles.map((pile) => kickProbabilityWithin(pile, kickAllowanceMm, softness));
  const slates = piles.map(totalCount);
  const isKnown = piles.map((pile) => readingPairs(pile) > 0);
  return withUnknownAsOthers(chances, slates, isKnown);
}

/** Chances of which some are not known: those take the mean of the others, each by its slates. */
export function withUnknownAsOthers(
  chances: readonly number[],
  slates: readonly number[],
  isKnown: readonly boolean[]
): number[] {
  let [kicking, known] = [0, 0];
  for (const [pile, chance] of chances.entries()) {
    if (!isKnown[pile]) continue;
    kicking += slates[pile] * chance;
    known += slates[pile];
  }
  const mean = known > 0 ? kicking / known : 0;
  return chances.map((chance, pile) => (isKnown[pile] || slates[pile] === 0 ? chance : mean));
}

/**
 * The chance that two neighbours kick where one comes from one pile and the other from another: the
 * single joint between unlike slates of a changeover course.
 *
 * Same arguments, closed allowance, accuracy, errors and cost as {@link kickProbabilityWithin}. An
 * empty pile makes no joint and gives 0. The order of the piles does not matter. With softness the
 * piles' own variance is the mean of the two.
 *
 * @example
 * kickProbabilityBetween(binsFromPairs([[500, 1]]), binsFromPairs([[700, 1]]), 1.5); // 1
 */
export function kickProbabilityBetween(
  one: ThicknessBins,
  other: ThicknessBins,
  kickAllowanceMm: number,
  softness?: KickSoftness
): number {
  const pairs = totalCount(one) * totalCount(other);
  if (pairs === 0) return 0;
  if (softness) {
    const variance = (pileVarianceMm2(one) + pileVarianceMm2(other)) / 2;
    const steps = stepsBetween(one, other);
    const kicking = kickingBySteps(steps, kickAllowanceMm, softness, variance);
    return Math.min(1, kicking / pairs);
  }
  const kicking =
    kickingPairs(one, other, kickAllowanceMm) + kickingPairs(other, one, kickAllowanceMm);
  return Math.min(1, kicking / pairs);
}

/** Pairs in which the slate of `thick` is thicker than that of `thin` by more than the allowance. */
function kickingPairs(thick: ThicknessBins, thin: ThicknessBins, kickAllowanceMm: number): number {
  const allowance = toHundredths(kickAllowanceMm);
  if (allowance < 0)
    throw new EngineError(
      'out-of-range',
      `kick allowance is ${kickAllowanceMm} mm; give 0 or more`
    );
  let pairs = 0;
  let thinner = 0;
  let next = 0;
  for (let bin = 0; bin < thick.hundredths.length; bin++) {
    while (
      next < thin.hundredths.length &&
      thin.hundredths[next] < thick.hundredths[bin] - allowance
    ) {
      thinner += thin.counts[next];
      next++;
    }
    pairs += thick.counts[bin] * thinner;
  }
  return pairs;
}

/** Variance of thickness between different slates of a pile, mm²; 0 where it is not known. */
export function pileVarianceMm2(bins: ThicknessBins): number {
  const pairs = readingPairs(bins);
  if (pairs === 0) return 0;
  const { hundredths, counts } = bins;
  const slates = totalCount(bins);
  const mean = hundredths.reduce((sum, value, bin) => sum + counts[bin] * value, 0) / slates;
  let deviations = 0;
  for (let bin = 0; bin < counts.length; bin++)
    deviations += counts[bin] * (hundredths[bin] - mean) ** 2;
  return (deviations * slates) / pairs / 10_000;
}

/**
 * Pairs of different readings of one pile by their step: entry d holds those that differ by d
 * hundredths, by weight, each pair once. In one bin that is half of n² − Σw².
 */
export function pairsByStep(bins: ThicknessBins): Float64Array {
  const { hundredths, counts } = bins;
  const squares = squaresOf(bins);
  const length = hundredths.length;
  const steps = new Float64Array(length > 0 ? hundredths[length - 1] - hundredths[0] + 1 : 1);
  for (let high = 0; high < length; high++) {
    steps[0] += (counts[high] * counts[high] - squares[high]) / 2;
    if (counts[high] === 0) continue;
    for (let low = 0; low < high; low++)
      steps[hundredths[high] - hundredths[low]] += counts[high] * counts[low];
  }
  return steps;
}

/** Pairs of a slate of one pile and one of another by their step, hundredths. */
function stepsBetween(one: ThicknessBins, other: ThicknessBins): Float64Array {
  const last = (bins: ThicknessBins) => bins.hundredths[bins.hundredths.length - 1];
  const most = Math.max(last(one) - other.hundredths[0], last(other) - one.hundredths[0], 0);
  const steps = new Float64Array(most + 1);
  for (let own = 0; own < one.counts.length; own++) {
    if (one.counts[own] === 0) continue;
    for (let their = 0; their < other.counts.length; their++)
      steps[Math.abs(one.hundredths[own] - other.hundredths[their])] +=
        one.counts[own] * other.counts[their];
  }
  return steps;
}

function kickingBySteps(
  steps: Float64Array,
  kickAllowanceMm: number,
  softness: KickSoftness,
  varianceMm2: number
): number {
  const sdMm = stepSdMm(softness, varianceMm2);
  return softPairs(steps, kickBySteps(kickAllowanceMm, sdMm, steps.length - 1));
}

/** Pairs that kick, of pairs by step, each by its chance; steps beyond the chances hold no pair. */
export function softPairs(steps: Float64Array, chances: Float64Array): number {
  const length = Math.min(steps.length, chances.length);
  let kicking = 0;
  for (let step = 0; step < length; step++) kicking += steps[step] * chances[step];
  return Math.max(0, kicking);
}
