import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { EngineError, requireFinite } from '../../errors.ts';
import { toHundredths } from '../../units.ts';
import type { ChanceAbove } from '../misgraded-piles.ts';

/**
 * Spread with which a slate's thickness is judged when independent errors add up: the spread of the
 * hand and that of the gauge, each a standard deviation in mm, 0 or more.
 *
 * @throws EngineError `not-finite`, `out-of-range` for an SD below 0
 * @example combinedSdMm(0.3, 0.4) // 0.5
 */
export function combinedSdMm(...sdsMm: readonly number[]): number {
  for (const sdMm of sdsMm) requireSd(sdMm);
  return Math.hypot(...sdsMm);
}

/**
 * How slates fall either side of a threshold when thickness is judged with a normal error of mean 0.
 *
 * @param sdMm standard deviation of the judged thickness of one slate about the true one, mm, 0 or
 * more; see {@link combinedSdMm}
 *
 * Definition: the judged thickness is read to 0.01 mm and a slate on the threshold goes to the
 * thicker pile, so the chance is Φ((thickness − threshold + 0.005) ÷ sd). With sd 0, and in the
 * limit of small sd, it is the sharp rule of `pileOf`. Accuracy: that of the normal distribution
 * function, a few units in the last place. Constant cost.
 *
 * @throws EngineError `out-of-range` for a negative spread, `not-finite`
 * @example normalMisgrading(0.3)(6, 6.005) // 0.5
 */
export function normalMisgrading(sdMm: number): ChanceAbove {
  requireSd(sdMm);
  if (sdMm === 0)
    return (thicknessMm, thresholdMm) =>
      toHundredths(thicknessMm) >= toHundredths(thresholdMm) ? 1 : 0;
  return (thicknessMm, thresholdMm) => normalCdf(thicknessMm - thresholdMm + 0.005, 0, sdMm);
}

function requireSd(sdMm: number): void {
  requireFinite(sdMm, 'standard deviation');
  if (sdMm < 0)
    throw new EngineError('out-of-range', `standard deviation is ${sdMm} mm; give 0 or more`);
}
