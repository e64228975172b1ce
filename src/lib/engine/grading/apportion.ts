import { EngineError, requireFinite, requireWhole } from '../errors.ts';

/**
 * Shares a whole number out in proportion to weights, in whole parts that sum to it exactly: the
 * slates of a course over the pallets that feed its pile.
 *
 * @param weights the proportion of each part, 0 or more, not all 0 unless `total` is 0; not modified
 * @param total what is shared out, a whole number, 0 or more
 * @param caps optional most of each part (a pallet's stock): whole numbers or Infinity; a part that
 * would pass its cap is held at it and the rest is shared over the others by their weights
 * @returns whole parts in the order of the weights, summing to `total`; a weight of 0 gets nothing
 *
 * Definition: largest remainder (Hamilton). Each part gets the whole of its quota
 * `total × weight / sum of weights`; the units left go one each to the largest remainders, ties to
 * the lowest index. Each part lies within one unit of its quota. Exact for whole weights while
 * weight × total stays below 2^53; beyond that, and for fractional weights, remainders that agree
 * to rounding may change places, the sum never.
 *
 * Cost: n log n, times the number of parts held at their caps.
 * @throws EngineError `empty`, `out-of-range`, `not-whole`, `not-finite`, `wrong-length`;
 * `inconsistent` where the weighted parts cannot hold the total
 * @example largestRemainder([53000, 24000, 23000], 7) // [4, 2, 1]
 */
export function largestRemainder(
  weights: readonly number[],
  total: number,
  caps?: readonly number[]
): number[] {
  requireShares(weights, total, caps);
  const parts = weights.map(() => 0);
  let open = weights.flatMap((weight, index) => (weight > 0 ? [index] : []));
  let left = total;
  while (caps && left > 0) {
    const sum = sumOf(open.map((index) => weights[index]));
    const full = open.filter((index) => left * weights[index] >= caps[index] * sum);
    if (full.length === 0) break;
    for (const index of full) parts[index] = caps[index];
    left = total - sumOf(parts);
    open = open.filter((index) => !full.includes(index));
  }
  if (left > 0) shareByRemainder(parts, open, weights, left);
  return parts;
}

/** Adds the quotas of the open parts to `parts`, in whole units that sum to `left`. */
function shareByRemainder(
  parts: number[],
  open: readonly number[],
  weights: readonly number[],
  left: number
): void {
  const sum = sumOf(open.map((index) => weights[index]));
  let units = left;
  const remainders = open.map((index) => {
    const whole = Math.floor((left * weights[index]) / sum);
    parts[index] = whole;
    units -= whole;
    return { index, remainder: left * weights[index] - whole * sum };
  });
  remainders.sort((one, other) => other.remainder - one.remainder || one.index - other.index);
  for (const { index } of remainders.slice(0, units)) parts[index]++;
}

function requireShares(
  weights: readonly number[],
  total: number,
  caps: readonly number[] | undefined
): void {
  requireWhole(total, 0, 'total');
  for (const [index, weight] of weights.entries()) {
    if (weight >= 0 && weight < Infinity) continue;
    requireFinite(weight, `weight ${index + 1}`);
    if (weight < 0)
      throw new EngineError('out-of-range', `weight ${index + 1} is ${weight}; give 0 or more`);
  }
  if (caps && caps.length !== weights.length)
    throw new EngineError('wrong-length', `${caps.length} caps for ${weights.length} weights`);
  for (const [index, cap] of (caps ?? []).entries())
    if (cap !== Infinity) requireWhole(cap, 0, `cap ${index + 1}`);
  if (total === 0) return;
  if (!weights.some((weight) => weight > 0))
    throw new EngineError('empty', `no part to give ${total} to: every weight is 0`);
  const room = caps ? sumOf(caps.filter((_cap, index) => weights[index] > 0)) : Infinity;
  if (room < total)
    throw new EngineError('inconsistent', `parts hold ${room} at most; ${total} to share out`);
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}
