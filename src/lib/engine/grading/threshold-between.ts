import { EngineError, requireWhole } from '../errors.ts';
import type { ThicknessBins } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';

/** Steps of a round threshold in hundredths of a millimetre, the roundest first. */
const ROUND_STEPS = [10, 5];

/**
 * Where to put the threshold between two neighbouring thicknesses, so that the thicker goes to the
 * thicker pile and the thinner does not.
 *
 * @param thinnerHundredths the thickest slate that stays below the threshold, hundredths of a mm
 * @param thickerHundredths the thinnest slate at or above it, hundredths of a mm, the larger
 * @returns the threshold in mm, above the thinner and at most the thicker. A multiple of 0.1 mm if
 * the gap holds one, else of 0.05 mm; of several the nearest to the middle of the gap, and of two
 * equally near the thicker. A gap that holds neither gives the thicker slate's own thickness, which
 * belongs to the thicker pile because a slate on a threshold does
 *
 * @throws EngineError `not-whole`, `wrong-order`
 * @example thresholdBetween(531, 589) // 5.6
 */
export function thresholdBetween(thinnerHundredths: number, thickerHundredths: number): number {
  requireWhole(thinnerHundredths, -Infinity, 'thinner slate in hundredths');
  requireWhole(thickerHundredths, -Infinity, 'thicker slate in hundredths');
  if (thinnerHundredths >= thickerHundredths)
    throw new EngineError(
      'wrong-order',
      `${thinnerHundredths} hundredths is not thinner than ${thickerHundredths}`
    );
  const middle = (thinnerHundredths + thickerHundredths) / 2;
  for (const step of ROUND_STEPS) {
    let nearest = Math.round(middle / step) * step;
    if (nearest > thickerHundredths) nearest -= step;
    if (nearest <= thinnerHundredths) nearest += step;
    if (nearest <= thickerHundredths) return nearest / 100;
  }
  return thickerHundredths / 100;
}

/**
 * Thresholds in mm, falling, from cuts between bins.
 *
 * @param cuts rising bin numbers; each is the first bin of the thicker side of a threshold
 */
export function thresholdsAtCuts(bins: ThicknessBins, cuts: readonly number[]): number[] {
  return cuts
    .map((cut) => thresholdBetween(bins.hundredths[cut - 1], bins.hundredths[cut]))
    .reverse();
}

/**
 * The opposite of {@link thresholdsAtCuts}: for each threshold, falling, the first bin that lies at
 * or above it, found by halving; the number of bins where none does.
 */
export function cutsAtThresholds(bins: ThicknessBins, thresholdsMm: readonly number[]): number[] {
  return thresholdsMm.map((thresholdMm) => {
    const threshold = toHundredths(thresholdMm);
    let low = 0;
    let high = bins.hundredths.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (bins.hundredths[middle] < threshold) low = middle + 1;
      else high = middle;
    }
    return low;
  });
}
