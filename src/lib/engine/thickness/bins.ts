import { EngineError, requireFinite } from '../errors.ts';

/** The thinnest reading the app accepts, in hundredths of a millimetre (1.5 mm). */
export const LOWEST_HUNDREDTHS = 150;
/** The thickest reading the app accepts, in hundredths of a millimetre (40 mm). */
export const HIGHEST_HUNDREDTHS = 4000;

/**
 * How many slates have each thickness: bins of 0.01 mm, thinnest first, thickness strictly rising,
 * no empty bins. All statistics run on this, so that their cost does not grow with readings.
 *
 * Counts may be fractional where taps are spread over bins.
 */
export interface ThicknessBins {
  /** Thickness of each bin in whole hundredths of a millimetre, strictly rising. */
  readonly hundredths: Int32Array;
  /** Slates in each bin, each above 0. Same length as `hundredths`. */
  readonly counts: Float64Array;
}

/**
 * Builds bins from (hundredths, count) pairs in any order; equal thicknesses are added up and
 * zero counts dropped. Empty input gives empty bins.
 *
 * @throws EngineError `not-whole` for a thickness that is not whole hundredths, `out-of-range` for
 * a negative count, `not-finite`
 * @example binsFromPairs([[640, 2], [500, 1], [640, 1]]) // 5.00 mm × 1, 6.40 mm × 3
 */
export function binsFromPairs(pairs: Iterable<readonly [number, number]>): ThicknessBins {
  const totals = new Map<number, number>();
  for (const [hundredths, count] of pairs) {
    requireFinite(count, 'count');
    if (!Number.isInteger(hundredths))
      throw new EngineError(
        'not-whole',
        `thickness is ${hundredths} hundredths; give a whole number`
      );
    if (count < 0) throw new EngineError('out-of-range', `count is ${count}; give 0 or more`);
    if (count > 0) totals.set(hundredths, (totals.get(hundredths) ?? 0) + count);
  }
  const sorted = [...totals].sort((one, other) => one[0] - other[0]);
  return {
    hundredths: Int32Array.from(sorted, ([hundredths]) => hundredths),
    counts: Float64Array.from(sorted, ([, count]) => count)
  };
}

/** Adds several spreads up, bin by bin; each may be weighted (a pallet sampled in part). */
export function mergeBins(
  parts: readonly ThicknessBins[],
  weights: readonly number[] = parts.map(() => 1)
): ThicknessBins {
  if (weights.length !== parts.length)
    throw new EngineError('wrong-length', `${weights.length} weights for ${parts.length} spreads`);
  function* pairs(): Generator<readonly [number, number]> {
    for (const [index, part] of parts.entries())
      for (const [bin, hundredths] of part.hundredths.entries())
        yield [hundredths, part.counts[bin] * weights[index]];
  }
  return binsFromPairs(pairs());
}

/** Slates in all bins together. */
export function totalCount(bins: ThicknessBins): number {
  let total = 0;
  for (const count of bins.counts) total += count;
  return total;
}
