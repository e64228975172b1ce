import { EngineError } from '../errors.ts';
import { toHundredths } from '../units.ts';
import type { ThicknessBins } from './bins.ts';

/**
 * A band of thickness: from its lower bound, which belongs to it, up to its upper bound, which does
 * not. So a slate exactly on a threshold belongs to the thicker of two grades.
 */
export interface ThicknessInterval {
  /** Lower bound, mm; 0 for no bound. */
  readonly fromMm: number;
  /** Upper bound, mm; Infinity for no bound. */
  readonly toMm: number;
}

/**
 * The bands of the grades that thresholds make, thickest first: one more than there are thresholds.
 *
 * @param thresholdsMm mm, strictly falling; not modified
 * @throws EngineError `wrong-order` where they do not fall, `not-finite`
 * @example gradeIntervals([6, 5]); // 6 mm and up; 5 to 6 mm; below 5 mm
 */
export function gradeIntervals(thresholdsMm: readonly number[]): ThicknessInterval[] {
  for (const [index, thresholdMm] of thresholdsMm.entries()) {
    if (!Number.isFinite(thresholdMm))
      throw new EngineError('not-finite', `threshold ${index + 1} is ${thresholdMm}`);
    if (index > 0 && thresholdMm >= thresholdsMm[index - 1])
      throw new EngineError(
        'wrong-order',
        `threshold ${index + 1} (${thresholdMm} mm) must be below the one before`
      );
  }
  return [...thresholdsMm, 0].map((fromMm, grade) => ({
    fromMm,
    toMm: grade === 0 ? Infinity : thresholdsMm[grade - 1]
  }));
}

/**
 * Slates of a spread whose thickness lies in a band: its lower bound belongs to it, its upper one
 * does not. Compared in whole hundredths. Linear in the bins; 0 for empty bins.
 *
 * @throws EngineError `wrong-order` for a band that is empty or runs backwards, `not-finite` for NaN
 * @example countBetween(binsFromPairs([[500, 2], [600, 1]]), { fromMm: 5, toMm: 6 }); // 2
 */
export function countBetween(bins: ThicknessBins, interval: ThicknessInterval): number {
  const from = boundInHundredths(interval.fromMm);
  const to = boundInHundredths(interval.toMm);
  if (from >= to)
    throw new EngineError(
      'wrong-order',
      `band runs from ${interval.fromMm} to ${interval.toMm} mm; its end must lie above its start`
    );
  let count = 0;
  for (let bin = 0; bin < bins.hundredths.length; bin++)
    if (bins.hundredths[bin] >= from && bins.hundredths[bin] < to) count += bins.counts[bin];
  return count;
}

function boundInHundredths(boundMm: number): number {
  return Math.abs(boundMm) === Infinity ? boundMm : toHundredths(boundMm);
}
