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
  /**
   * Sum of the squared weights of the readings in each bin, where a reading stands for more or less
   * than one slate. Same length as `counts`; left out where every reading stands for one slate.
   */
  readonly squares?: Float64Array;
}

/** The squared weights of each bin's readings: the counts where every reading is one slate. */
export function squaresOf({ counts, squares }: ThicknessBins): Float64Array {
  return squares ?? counts;
}

/**
 * Builds bins from (hundredths, count) pairs in any order; equal thicknesses are added up and
 * zero counts dropped. Empty input gives empty bins. A third figure is the sum of the squared weights
 * of the readings that the count stands for; left out, it is the count.
 *
 * @throws EngineError `not-whole` for a thickness that is not whole hundredths, `out-of-range` for
 * a negative count, `not-finite`
 * @example binsFromPairs([[640, 2], [500, 1], [640, 1]]) // 5.00 mm × 1, 6.40 mm × 3
 */
export function binsFromPairs(pairs: Iterable<readonly [number, number, number?]>): ThicknessBins {
  const totals = new Map<number, number>();
  const squares = new Map<number, number>();
  let isWeighted = false;
  for (const [hundredths, count, square = count] of pairs) {
    requireFinite(count, 'count');
    if (!Number.isInteger(hundredths))
      throw new EngineError(
        'not-whole',
        `thickness is ${hundredths} hundredths; give a whole number`
      );
    if (count < 0) throw new EngineError('out-of-range', `count is ${count}; give 0 or more`);
    if (count === 0) continue;
    totals.set(hundredths, (totals.get(hundredths) ?? 0) + count);
    squares.set(hundredths, (squares.get(hundredths) ?? 0) + square);
    isWeighted ||= square !== count;
  }
  const sorted = [...totals].sort((one, other) => one[0] - other[0]);
  return {
    hundredths: Int32Array.from(sorted, ([hundredths]) => hundredths),
    counts: Float64Array.from(sorted, ([, count]) => count),
    ...(isWeighted && {
      squares: Float64Array.from(sorted, ([hundredths]) => squares.get(hundredths) ?? 0)
    })
  };
}

/**
 * Adds several spreads up, bin by bin; each may be weighted (a pallet sampled in part).
 *
 * @throws EngineError `wrong-length` unless there is a weight for each spread
 */
export function mergeBins(
  parts: readonly ThicknessBins[],
  weights: readonly number[] = parts.map(() => 1)
): ThicknessBins {
  if (weights.length !== parts.length)
    throw new EngineError('wrong-length', `${weights.length} weights for ${parts.length} spreads`);
  const filled = parts.filter(({ counts }) => counts.length > 0);
  if (filled.length === 1) return weighed(filled[0], weights[parts.indexOf(filled[0])]);
  let [lowest, highest] = [Infinity, -Infinity];
  for (const { hundredths } of parts)
    if (hundredths.length > 0) {
      lowest = Math.min(lowest, hundredths[0]);
      highest = Math.max(highest, hundredths[hundredths.length - 1]);
    }
  if (highest - lowest > WIDEST) return binsFromPairs(pairsOf(parts, weights));
  const size = Math.max(0, highest - lowest + 1);
  if (size > totals.length) [totals, squares] = [new Float64Array(size), new Float64Array(size)];
  totals.fill(0, 0, size);
  squares.fill(0, 0, size);
  let isWeighted = false;
  for (const [index, part] of parts.entries()) {
    const { hundredths, counts } = part;
    const ownSquares = squaresOf(part);
    const weight = weights[index];
    for (let bin = 0; bin < hundredths.length; bin++) {
      const count = counts[bin] * weight;
      if (!(count >= 0 && count < Infinity)) return binsFromPairs(pairsOf(parts, weights)); // throws
      if (count === 0) continue;
      const square = ownSquares[bin] * weight ** 2;
      totals[hundredths[bin] - lowest] += count;
      squares[hundredths[bin] - lowest] += square;
      isWeighted ||= square !== count;
    }
  }
  let used = 0;
  for (let at = 0; at < size; at++) if (totals[at] > 0) used++;
  const merged = {
    hundredths: new Int32Array(used),
    counts: new Float64Array(used),
    ...(isWeighted && { squares: new Float64Array(used) })
  };
  for (let at = 0, bin = 0; at < size; at++)
    if (totals[at] > 0) {
      merged.hundredths[bin] = lowest + at;
      merged.counts[bin] = totals[at];
      if (merged.squares) merged.squares[bin] = squares[at];
      bin++;
    }
  return merged;
}

/** One spread, weighted: there is nothing to add up. */
function weighed(bins: ThicknessBins, weight: number): ThicknessBins {
  const counts = bins.counts.map((count) => count * weight);
  if (!counts.every((count) => count > 0 && count < Infinity))
    return binsFromPairs(pairsOf([bins], [weight])); // drops what came to nothing, or throws
  const squares = squaresOf(bins).map((square) => square * weight ** 2);
  return {
    hundredths: bins.hundredths.slice(),
    counts,
    ...(squares.some((square, bin) => square !== counts[bin]) && { squares })
  };
}

/** A range of hundredths that is added up in one table; all readings span a tenth of it. */
const WIDEST = 40_000;
/** That table, for whichever spreads are added up: to make one anew takes longer than to fill it. */
let totals = new Float64Array(HIGHEST_HUNDREDTHS);
let squares = new Float64Array(HIGHEST_HUNDREDTHS);

function* pairsOf(
  parts: readonly ThicknessBins[],
  weights: readonly number[]
): Generator<readonly [number, number, number]> {
  for (const [index, part] of parts.entries())
    for (const [bin, hundredths] of part.hundredths.entries())
      yield [
        hundredths,
        part.counts[bin] * weights[index],
        squaresOf(part)[bin] * weights[index] ** 2
      ];
}

/**
 * Adds up spreads that rest on the same readings, each weighted: what a reading weighs in one and in
 * another is added before it is squared. Exact where the weights of a bin's readings are alike.
 */
export function mergeOfSameReadings(
  parts: readonly ThicknessBins[],
  weights: readonly number[] = parts.map(() => 1)
): ThicknessBins {
  const filled = parts.filter(({ counts }, index) => counts.length > 0 && weights[index] > 0);
  if (filled.length < 2) return mergeBins(parts, weights);
  const merged = mergeBins(parts, weights);
  const roots = new Float64Array(merged.hundredths.length);
  for (const [index, part] of parts.entries()) {
    const own = squaresOf(part);
    // Both run upwards: each bin of a part is found from the one before it.
    for (let bin = 0, at = 0; bin < own.length; bin++) {
      while (merged.hundredths[at] < part.hundredths[bin]) at++;
      if (merged.hundredths[at] === part.hundredths[bin])
        roots[at] += Math.sqrt(own[bin]) * weights[index];
    }
  }
  for (let at = 0; at < roots.length; at++) roots[at] **= 2;
  return { ...merged, squares: roots };
}

/**
 * The part of a spread that falls somewhere with a chance: each reading then weighs that much of
 * itself. Bins without a chance are dropped.
 *
 * @param bins the spread; not modified
 * @param chances of each bin, 0 to 1, one per bin; not modified
 */
export function partOfBins(bins: ThicknessBins, chances: Float64Array): ThicknessBins {
  const { hundredths, counts } = bins;
  const isHere = (_entry: number, bin: number): boolean => counts[bin] * chances[bin] > 0;
  const isWeighted = bins.squares ?? chances.some((chance) => chance > 0 && chance < 1);
  return {
    hundredths: hundredths.filter(isHere),
    counts: counts.map((count, bin) => count * chances[bin]).filter((count) => count > 0),
    ...(isWeighted && {
      squares: squaresOf(bins)
        .map((square, bin) => square * chances[bin] ** 2)
        .filter(isHere)
    })
  };
}

/** The bins from one place to another, the second not included, as a spread of their own. */
export function sliceOfBins(bins: ThicknessBins, from: number, to: number): ThicknessBins {
  const counts = bins.counts.slice(from, to);
  const squares = bins.squares?.slice(from, to);
  return {
    hundredths: bins.hundredths.slice(from, to),
    counts,
    ...(squares?.some((square, bin) => square !== counts[bin]) && { squares })
  };
}

/** Slates in all bins together. */
export function totalCount(bins: ThicknessBins): number {
  let total = 0;
  for (const count of bins.counts) total += count;
  return total;
}
