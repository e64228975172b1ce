import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { type KickSoftness, largestRemainder, splitIntoPiles } from '../grading/index.ts';
import type { CourseDemand } from '../roof/index.ts';
import { type ThicknessBins, totalCount } from '../thickness/index.ts';
import { kickChances } from './kick-chances.ts';
import type { PileStock, PlanRequest, PlanResult } from './plan-types.ts';
import { planCourses } from './planner.ts';

/** A stock that is not sorted yet. */
export interface UnsortedStock {
  /** Spread of the stock, measured in full or on a sample; any scale. */
  readonly spread: ThicknessBins;
  /** Full slates in the stock. */
  readonly slates: number;
  /** Slate-and-a-halves in the stock, as thick as its slates. */
  readonly slateAndAHalves: number;
  /** Share of every pile kept back for breakage and repairs, 0 to 1; rounded up to whole slates. */
  readonly reservedShare: number;
  /** How far steps scatter about the difference of two slates; not at all if left out. */
  readonly softness?: KickSoftness;
}

/** The piles that sorting at given thresholds is expected to make. */
export interface ExpectedPiles {
  readonly stocks: readonly PileStock[];
  readonly bins: readonly ThicknessBins[];
}

/**
 * The piles that sorting is expected to make: whole counts in proportion to the spread, summing to
 * the stock exactly (largest remainder). For planning before sorting.
 *
 * @param thresholdsMm bounds between piles, mm, strictly falling
 * @throws EngineError `wrong-order` for thresholds, `not-whole`, `out-of-range`, and `empty` for a
 * stock without a spread
 * @example
 * // 75 of 100 measured slates lie at or above 6 mm: of 1,000, 750 are expected on pile 1
 */
export function expectedPiles(
  stock: UnsortedStock,
  thresholdsMm: readonly number[]
): ExpectedPiles {
  requireWhole(stock.slates, 0, 'slates');
  requireWhole(stock.slateAndAHalves, 0, 'slate-and-a-halves');
  requireFinite(stock.reservedShare, 'reserved share');
  if (stock.reservedShare < 0 || stock.reservedShare > 1)
    throw new EngineError('out-of-range', `reserved share is ${stock.reservedShare}; give 0 to 1`);
  const bins = splitIntoPiles(stock.spread, thresholdsMm);
  const shares = bins.map(totalCount);
  const slates = largestRemainder(shares, stock.slates);
  const wide = largestRemainder(shares, stock.slateAndAHalves);
  return {
    bins,
    stocks: slates.map((count, pile) => ({
      slates: count,
      slateAndAHalves: wide[pile],
      reservedSlates: reserved(count, stock.reservedShare),
      reservedSlateAndAHalves: reserved(wide[pile], stock.reservedShare)
    }))
  };
}

/** The plan for a stock that would be sorted at given thresholds. */
export interface PlanForThresholds {
  readonly thresholdsMm: readonly number[];
  readonly request: PlanRequest;
  readonly result: PlanResult;
}

/**
 * Plans the roof before sorting, for each of several ways to cut the piles, while the boundaries
 * are still free.
 *
 * @param candidates thresholds of each way, mm: natural breaks, equal shares, cut to suit the roof,
 * by hand, or with other numbers of piles
 * @returns one plan per candidate in the order given, and the `best`: optimal with fewest expected
 * kickers, then fewest piles, then the first given; undefined if every one is short
 *
 * Cost: that of a plan, for each candidate.
 */
export function planBeforeSorting(
  courses: readonly CourseDemand[],
  stock: UnsortedStock,
  kickAllowanceMm: number,
  candidates: readonly (readonly number[])[]
): { readonly plans: readonly PlanForThresholds[]; readonly best?: PlanForThresholds } {
  const plans = candidates.map((thresholdsMm): PlanForThresholds => {
    const piles = expectedPiles(stock, thresholdsMm);
    const request = {
      courses,
      piles: piles.stocks,
      kicks: kickChances(piles.bins, kickAllowanceMm, undefined, stock.softness)
    };
    return { thresholdsMm, request, result: planCourses(request) };
  });
  let best: PlanForThresholds | undefined;
  for (const plan of plans) if (!best || isBetter(plan, best)) best = plan;
  return { plans, ...(best?.result.status === 'optimal' && { best }) };
}

function isBetter(one: PlanForThresholds, other: PlanForThresholds): boolean {
  if (one.result.status === 'short') return false;
  if (other.result.status === 'short') return true;
  const difference = one.result.objective - other.result.objective;
  return (
    difference < 0 || (difference === 0 && one.thresholdsMm.length < other.thresholdsMm.length)
  );
}

/** A share of a count in whole slates, rounded up; free of the binary error of decimals. */
function reserved(count: number, share: number): number {
  return Math.ceil(Number((count * share).toFixed(6)));
}
