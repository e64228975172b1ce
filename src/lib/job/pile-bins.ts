import { splitIntoPiles } from '$lib/engine/grading';
import {
  type ThicknessBins,
  type ThicknessInterval,
  binsFromPairs,
  gradeIntervals,
  mergeBins,
  momentsOfBins,
  totalCount
} from '$lib/engine/thickness';
import { type JobView, partOf } from '$lib/journal';
import { numbersOf } from './queries.ts';

/** A pile with the thickness of its slates. */
interface PileWithBins {
  readonly number: number;
  readonly slates: number;
  readonly bins: ThicknessBins;
}

/** The part of a spread that lies in a band; its lower bound belongs to it. */
export function windowOf(
  spread: ThicknessBins,
  { fromMm, toMm }: ThicknessInterval
): ThicknessBins {
  const upper = Number.isFinite(toMm) ? [toMm] : [];
  const lower = fromMm > 0 ? [fromMm] : [];
  return splitIntoPiles(spread, [...upper, ...lower])[upper.length];
}

/** Bins scaled to so many slates; empty ones stay empty. */
export function scaledBins(bins: ThicknessBins, slates: number): ThicknessBins {
  const total = totalCount(bins);
  return total > 0 ? mergeBins([bins], [slates / total]) : bins;
}

/** Moves of whole piles: put on others, or sorted again. */
function wholeMoves(view: JobView) {
  return partOf(view, 'laying').moved.filter(({ value }) => value.why !== undefined);
}

/** Slates that a pile would have without the moves of whole piles, by those that it has. */
export function withoutMoves(view: JobView, number: number, slates: number): number {
  const gained = wholeMoves(view).reduce(
    (sum, { value: { fromPile, toPile, slates: n } }) =>
      sum + (toPile === number ? n : 0) - (fromPile === number ? n : 0),
    0
  );
  return Math.max(0, slates - gained);
}

/**
 * The thickness of piles after whole piles were put on others or sorted again, each scaled to its
 * slates. A pile put on another brings its own thickness; slates sorted again bring what of it lies in
 * the grade they went to, as far as that is known. Single slates change no thickness that is told.
 *
 * @param piles with the slates that they have after all moves, and the thickness that they would have
 * without, scaled to {@link withoutMoves}; not modified
 */
export function binsAfterMoves(
  view: JobView,
  piles: readonly PileWithBins[]
): ReadonlyMap<number, ThicknessBins> {
  const moves = wholeMoves(view);
  const bins = new Map(piles.map((pile) => [pile.number, pile.bins]));
  if (moves.length === 0) return bins;
  for (const { value } of moves) {
    const from = bins.get(value.fromPile);
    const to = bins.get(value.toPile);
    if (!from || !to) continue;
    const band =
      value.why === 'sortedAgain' ? bandOf(view, value.gradesId, value.toPile) : undefined;
    const within = band ? windowOf(from, band) : from;
    const taken = scaledBins(totalCount(within) > 0 ? within : from, value.slates);
    bins.set(value.fromPile, without(from, taken));
    bins.set(value.toPile, mergeBins([to, taken]));
  }
  return new Map(
    piles.map(({ number, slates, bins: own }) => [
      number,
      scaledBins(bins.get(number) ?? own, slates)
    ])
  );
}

function bandOf(view: JobView, gradesId: string | null, number: number) {
  const grades = partOf(view, 'job').grades.find(({ id }) => id === gradesId)?.value;
  return grades && gradeIntervals(grades.thresholdsMm)[numbersOf(grades).indexOf(number)];
}

/** What is left of bins once others are taken away; no bin falls below 0. */
function without(bins: ThicknessBins, taken: ThicknessBins): ThicknessBins {
  const gone = new Map([...taken.hundredths].map((at, bin) => [at, taken.counts[bin]]));
  return binsFromPairs(
    [...bins.hundredths].map((at, bin): [number, number] => [
      at,
      Math.max(0, bins.counts[bin] - (gone.get(at) ?? 0))
    ])
  );
}

/**
 * Piles that stand beside the grades put between those of the grades in the order of their mean, the
 * thickest first. Of two of one mean the one of the grades comes first; a pile of no known thickness
 * comes last.
 *
 * @param graded in the order of the grades
 */
export function inOrderOfMean<P extends PileWithBins>(
  graded: readonly P[],
  beside: readonly P[]
): P[] {
  const meanOf = ({ bins }: P): number => {
    const moments = momentsOfBins(bins);
    return moments.ok ? moments.meanMm : -Infinity;
  };
  const order = [...graded];
  const sorted = beside
    .map((pile) => ({ pile, meanMm: meanOf(pile) }))
    .sort((one, other) => other.meanMm - one.meanMm || one.pile.number - other.pile.number);
  for (const { pile, meanMm } of sorted) {
    const at = order.findIndex((other) => {
      const otherMm = meanOf(other);
      return otherMm > -Infinity && otherMm < meanMm;
    });
    order.splice(at < 0 ? order.length : at, 0, pile);
  }
  return order;
}
