import { requireFinite } from '../errors.ts';
import type { Basis, Interval } from './basis.ts';
import { requirePositive } from './requirements.ts';
import type { JudgedSlate } from './sample-evidence.ts';
import { meanAndSd } from './variables-judgement.ts';

/** Predicted evenness of the roof, from the planner. */
export interface PredictedEvenness {
  /** Expected kickers per 100 joints if the slates were laid as they come. */
  readonly unsortedKickersPer100: number;
  /** The same after sorting into `piles`. */
  readonly sortedKickersPer100: number;
  readonly piles: number;
}

/** What sorting costs, as the user knows it. Anything may be left out. */
export interface SortingTerms {
  /** Slates one person sorts in an hour, above 0: measured, or the user's guess. */
  readonly slatesPerHour?: number;
  /** Cost of that hour, 0 or more, in the user's money. */
  readonly costPerHour?: number;
  /** Kickers per 100 joints that the slater will accept unsorted, 0 or more. */
  readonly acceptableKickersPer100?: number;
}

/** A figure that the second finding waits for. */
export type SortingFigure = 'thicknesses' | 'accepted-kickers' | 'pace' | 'rate';

/** Second finding: inside the order, but not fit to lay without sorting. */
export interface SortingFinding {
  /** `unknown` where no evenness was predicted or no acceptable figure was set. */
  readonly isNeeded: 'yes' | 'no' | 'unknown';
  /** Slates of the delivery inside the order. */
  readonly insideInterval: Interval;
  /** Thickness of the sampled slates that are inside the order; absent below two. */
  readonly spread?: {
    readonly slates: number;
    readonly meanMm: number;
    readonly sdMm: number;
    readonly thinnestMm: number;
    readonly thickestMm: number;
  };
  /** Hours to sort the slates inside the order; absent without a pace. */
  readonly hours?: Interval;
  /** Cost of those hours; absent without a pace or a rate. */
  readonly cost?: Interval;
  /**
   * What was not entered or measured, first what would decide the need: too few unlike
   * `thicknesses` to foretell evenness, the kickers accepted, the pace, the rate.
   */
  readonly missing: readonly SortingFigure[];
  readonly basis: Basis;
}

/**
 * States what it takes to sort the slates that are inside the order.
 *
 * @param outsideInterval slates of the delivery outside the order
 * @returns hours and cost with the interval of the count; the pace is taken as given
 * @throws EngineError `not-finite`, `out-of-range`
 */
export function findSorting(
  judged: readonly JudgedSlate[],
  lotSize: number,
  outsideInterval: Interval,
  terms: SortingTerms,
  evenness?: PredictedEvenness
): SortingFinding {
  const insideInterval = {
    low: lotSize - outsideInterval.high,
    high: lotSize - outsideInterval.low,
    level: outsideInterval.level
  };
  const { slatesPerHour, costPerHour, acceptableKickersPer100 } = terms;
  if (slatesPerHour !== undefined) requirePositive(slatesPerHour, 'slates per hour');
  if (costPerHour !== undefined) requireFinite(costPerHour, 'cost per hour');
  const hours = slatesPerHour === undefined ? undefined : scaled(insideInterval, 1 / slatesPerHour);
  const cost = hours && costPerHour !== undefined ? scaled(hours, costPerHour) : undefined;
  const isNeeded =
    evenness === undefined || acceptableKickersPer100 === undefined
      ? 'unknown'
      : evenness.unsortedKickersPer100 > acceptableKickersPer100
        ? 'yes'
        : 'no';
  const spread = spreadInside(judged);
  const missing: SortingFigure[] = [];
  if (evenness === undefined) missing.push('thicknesses');
  if (acceptableKickersPer100 === undefined) missing.push('accepted-kickers');
  if (slatesPerHour === undefined) missing.push('pace');
  if (costPerHour === undefined) missing.push('rate');
  return {
    isNeeded,
    insideInterval,
    ...(spread && { spread }),
    ...(hours && { hours }),
    ...(cost && { cost }),
    missing,
    basis: { standing: 'computed', source: 'pace and rate as given' }
  };
}

function scaled(interval: Interval, factor: number): Interval {
  return {
    low: interval.low * factor,
    high: interval.high * factor,
    level: interval.level
  };
}

function spreadInside(judged: readonly JudgedSlate[]): SortingFinding['spread'] {
  const inside = judged
    .filter(({ isOutside }) => !isOutside)
    .flatMap(({ thicknessMm }) => thicknessMm ?? [])
    .sort((one, other) => one - other);
  if (inside.length < 2) return undefined;
  const { mean, sd } = meanAndSd(inside);
  return {
    slates: inside.length,
    meanMm: mean,
    sdMm: sd,
    thinnestMm: inside[0],
    thickestMm: inside[inside.length - 1]
  };
}
