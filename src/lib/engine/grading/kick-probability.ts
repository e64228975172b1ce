import { EngineError } from '../errors.ts';
import { type ThicknessBins, totalCount } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';

/**
 * The chance that two different slates drawn at random from one pile kick: that their thicknesses
 * differ by more than the kick allowance. Multiplied by the joints of a course it gives the
 * course's expected kickers.
 *
 * @param bins thickness of the pile's slates; not modified
 * @param kickAllowanceMm the step between neighbours that is still accepted, mm, 0 or more; a step
 * of exactly the allowance does not kick
 * @returns a chance from 0 to 1; 0 for a pile of one slate or none, which has no joint
 *
 * Definition: pairs of distinct slates, N(N − 1) in all, counted exactly from the bins. Fractional
 * counts (taps spread over bins) are treated as they stand. Accuracy: a few units in the last place.
 * Cost: linear in the bins, by two pointers.
 *
 * @throws EngineError `out-of-range` for a negative allowance, `not-finite`
 * @example
 * // 5.00 mm × 2 and 7.00 mm × 2: of 12 ordered pairs, 8 step by 2 mm
 * kickProbabilityWithin(binsFromPairs([[500, 2], [700, 2]]), 1.5); // 0.6666…
 */
export function kickProbabilityWithin(bins: ThicknessBins, kickAllowanceMm: number): number {
  const total = totalCount(bins);
  if (total <= 1) return 0;
  return Math.min(1, (2 * kickingPairs(bins, bins, kickAllowanceMm)) / (total * (total - 1)));
}

/**
 * The chance that two neighbours kick where one comes from one pile and the other from another: the
 * single joint between unlike slates of a changeover course.
 *
 * Same arguments, closed allowance, accuracy, errors and cost as {@link kickProbabilityWithin}. An
 * empty pile makes no joint and gives 0. The order of the piles does not matter.
 *
 * @example
 * kickProbabilityBetween(binsFromPairs([[500, 1]]), binsFromPairs([[700, 1]]), 1.5); // 1
 */
export function kickProbabilityBetween(
  one: ThicknessBins,
  other: ThicknessBins,
  kickAllowanceMm: number
): number {
  const pairs = totalCount(one) * totalCount(other);
  if (pairs === 0) return 0;
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
