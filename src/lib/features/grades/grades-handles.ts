import { fromHundredths, toHundredths } from '$lib/engine';

/** Steps of a handle on the keyboard, mm. */
export const ARROW_STEP_MM = 0.05;
export const PAGE_STEP_MM = 0.5;

/** Least distance between two thresholds, and from the ends of the spread, in hundredths of a mm. */
const LEAST_GAP = 5;

/** How far a threshold can be moved. */
export interface HandleReach {
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * How far one threshold can move between its neighbours and the ends of the spread.
 *
 * @param thresholdsMm falling
 * @param endsMm thinnest and thickest slate, mm
 */
export function reachOf(
  thresholdsMm: readonly number[],
  index: number,
  endsMm: HandleReach
): HandleReach {
  const gapMm = LEAST_GAP / 100;
  const highMm = index > 0 ? thresholdsMm[index - 1] - gapMm : endsMm.highMm;
  const lowMm =
    index < thresholdsMm.length - 1 ? thresholdsMm[index + 1] + gapMm : endsMm.lowMm + 0.01;
  return { lowMm: rounded(Math.min(lowMm, highMm)), highMm: rounded(Math.max(lowMm, highMm)) };
}

/** Thresholds with one moved, as far as its reach lets it; rounded to 0.01 mm. */
export function moveThreshold(
  thresholdsMm: readonly number[],
  index: number,
  toMm: number,
  endsMm: HandleReach
): number[] {
  const { lowMm, highMm } = reachOf(thresholdsMm, index, endsMm);
  const movedMm = rounded(Math.min(highMm, Math.max(lowMm, toMm)));
  return thresholdsMm.map((thresholdMm, place) => (place === index ? movedMm : thresholdMm));
}

function rounded(lengthMm: number): number {
  return fromHundredths(toHundredths(lengthMm));
}
