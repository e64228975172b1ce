import { EngineError, requireFinite } from '../errors.ts';

/**
 * Whether a reading lies so near a threshold that the gauge alone could have put the slate on the
 * other pile: worth a second reading, and not worth an argument.
 *
 * @param thicknessMm the slate's thickness, mm
 * @param thresholdsMm bounds between piles, mm, in any order; not modified
 * @param gaugeSdMm repeatability SD of the gauge in the sorter's hand, mm, 0 or more
 * @returns true where some threshold is within two SDs, the ends included. With an SD of 0 only a
 * reading exactly on a threshold is borderline.
 *
 * Definition: two SDs, so that of readings further off than that about one in forty would change
 * pile when read again by a gauge without bias. Distances are compared to a billionth of a
 * millimetre, so that decimals such as 5.8 − 5.6 do what they say.
 *
 * @throws EngineError `out-of-range` for a negative SD, `not-finite`
 * @example isBorderline(5.9, [6, 5], 0.05); // true
 */
export function isBorderline(
  thicknessMm: number,
  thresholdsMm: readonly number[],
  gaugeSdMm: number
): boolean {
  requireFinite(thicknessMm, 'thickness');
  requireFinite(gaugeSdMm, 'gauge SD');
  if (gaugeSdMm < 0)
    throw new EngineError('out-of-range', `gauge SD is ${gaugeSdMm} mm; give 0 or more`);
  return thresholdsMm.some((thresholdMm) => {
    requireFinite(thresholdMm, 'threshold');
    return Math.abs(thicknessMm - thresholdMm) <= 2 * gaugeSdMm + 1e-9;
  });
}
