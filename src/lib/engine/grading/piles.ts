import { EngineError } from '../errors.ts';
import { type ThicknessBins, sliceOfBins } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';

/** Fewest and most piles that the app offers. */
export const FEWEST_PILES = 2;
export const MOST_PILES = 8;

/**
 * Throws unless the thresholds between piles are finite and strictly falling (pile 1 is the
 * thickest, so its lower bound comes first).
 *
 * @throws EngineError `not-finite`, `wrong-order`
 */
export function requireThresholds(thresholdsMm: readonly number[]): void {
  for (const [index, thresholdMm] of thresholdsMm.entries()) {
    if (!Number.isFinite(thresholdMm))
      throw new EngineError('not-finite', `threshold ${index + 1} is ${thresholdMm}`);
    if (index > 0 && thresholdMm >= thresholdsMm[index - 1])
      throw new EngineError(
        'wrong-order',
        `threshold ${index + 1} (${thresholdMm} mm) must be below the one before (${thresholdsMm[index - 1]} mm)`
      );
  }
}

/**
 * The pile a slate goes on: 1 for the thickest, up to the number of thresholds plus one.
 *
 * @param thicknessMm mean thickness of the slate, mm
 * @param thresholdsMm bounds between piles, mm, strictly falling; not modified
 * @returns the pile's number; a slate exactly on a threshold goes to the thicker pile. Compared in
 * whole hundredths of a millimetre, so binary rounding cannot move a slate.
 * @example pileOf(6, [6, 5]) // 1
 */
export function pileOf(thicknessMm: number, thresholdsMm: readonly number[]): number {
  const hundredths = toHundredths(thicknessMm);
  let pile = 1;
  for (const thresholdMm of thresholdsMm) if (hundredths < toHundredths(thresholdMm)) pile++;
  return pile;
}

/**
 * Splits a spread at the thresholds: one spread per pile, thickest pile first, some perhaps empty.
 * Same tie rule as {@link pileOf}; every slate lands in exactly one pile. Linear in the bins.
 *
 * @throws EngineError `not-finite`, `wrong-order` for such thresholds
 */
export function splitIntoPiles(
  bins: ThicknessBins,
  thresholdsMm: readonly number[]
): ThicknessBins[] {
  requireThresholds(thresholdsMm);
  const { hundredths } = bins;
  const split: ThicknessBins[] = [];
  // Bins rise and piles fall: the last pile has the first bins.
  let from = 0;
  for (let pile = thresholdsMm.length + 1; pile > 0; pile--) {
    let to = from;
    while (to < hundredths.length && pileOf(hundredths[to] / 100, thresholdsMm) === pile) to++;
    split.push(sliceOfBins(bins, from, to));
    from = to;
  }
  return split.reverse();
}
