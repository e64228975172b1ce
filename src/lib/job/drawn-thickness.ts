/** Half the width drawn for a pile that is open on both sides, mm. */
const USUAL_HALF_MM = 0.5;

/**
 * A thickness to draw each pile by: the middle between its thresholds; the outermost piles, open on
 * one side, are taken to be as wide as their neighbour.
 *
 * @param thresholdsMm falling; not modified
 * @example [6, 5] → [6.5, 5.5, 4.5]
 */
export function drawnThicknessMm(thresholdsMm: readonly number[]): number[] {
  const last = thresholdsMm.length - 1;
  if (last < 0) return [];
  const half = (upper: number, lower: number) =>
    last === 0 ? USUAL_HALF_MM : Math.max(0.1, (upper - lower) / 2);
  const first = thresholdsMm[0] + half(thresholdsMm[0], thresholdsMm[1]);
  const middles = thresholdsMm.slice(1).map((lower, index) => (thresholdsMm[index] + lower) / 2);
  const end = Math.max(0.5, thresholdsMm[last] - half(thresholdsMm[last - 1], thresholdsMm[last]));
  return [first, ...middles, end];
}
