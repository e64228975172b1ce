import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { EngineError, requireFinite } from '../../errors.ts';
import type { PileStock, Plan, PlanRequest, PlanResult } from '../plan-types.ts';
import { planCourses } from '../planner.ts';

/** How well a pile's full slates are known: counted piles have an SD of 0. */
export interface PileEstimate {
  readonly meanSlates: number;
  /** Standard error of the estimate, slates. */
  readonly sdSlates: number;
}

/** The chance that a pile is empty before its last course is laid. */
export interface RunOutChance {
  readonly pile: number;
  readonly chance: number;
}

/**
 * The chance that each pile runs out before its last course, from the interval of its estimate.
 *
 * Definition: the pile's true count is taken as normal with the estimate's mean and SD, cut off
 * below zero and rounded to whole slates; the pile runs out if it holds fewer slates than the plan
 * lays from it plus those expected to break. Slate-and-a-halves are taken as counted. Piles of one
 * stock are estimated together, so where one holds fewer another holds more; that is ignored here,
 * pile by pile it makes no difference.
 *
 * @param estimates one per pile
 * @param breakages full slates of each pile expected to break before they are laid; none if left out
 * @returns chances by pile, and `anyAtMost`: the sum of them, at most 1, which the chance that any
 * pile runs out cannot exceed however the piles depend on each other
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range` for a negative SD
 * @example
 * // 500 expected, SD 20, 460 laid: chance Φ((459.5 − 500) / 20) = Φ(−2.025) = 0.0214
 */
export function runOutChances(
  plan: Plan,
  estimates: readonly PileEstimate[],
  breakages: readonly number[] = plan.piles.map(() => 0)
): { readonly piles: readonly RunOutChance[]; readonly anyAtMost: number } {
  requireEstimates(estimates, plan.piles.length);
  if (breakages.length !== plan.piles.length)
    throw new EngineError('wrong-length', `${breakages.length} breakages`);
  const piles = plan.piles.map(({ pile, slates }, index) => ({
    pile,
    chance: slates === 0 ? 0 : chanceBelow(slates + breakages[index], estimates[index])
  }));
  return {
    piles,
    anyAtMost: Math.min(
      1,
      piles.reduce((sum, { chance }) => sum + chance, 0)
    )
  };
}

/** A plan that holds the risk, and how far the reserves had to rise for it. */
export interface PlanWithinRisk {
  readonly result: PlanResult;
  /** The request that was planned, with its raised reserves. */
  readonly request: PlanRequest;
  /** Full slates by which each pile's reserve was raised. */
  readonly raisedBy: readonly number[];
}

/**
 * The most even plan in which no pile runs out with a chance above a limit.
 *
 * A pile may lay at most the greatest number of slates whose chance of not being there, with those
 * expected to break on top, stays within the limit; what is above that joins its reserve, and the
 * planner does the rest, exactly. The reserve that was asked for is never lowered. A `short` result
 * says what it would take.
 *
 * @param mostChance largest accepted chance for each pile, above 0 and below 1; divide it by the
 * number of piles to hold the chance of any of them running out under it
 * @param breakages full slates of each pile expected to break before they are laid; none if left out
 * @returns a plan whose {@link runOutChances}, with the same breakages, all stay within the limit
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range` for a chance that is none
 */
export function planWithinRisk(
  request: PlanRequest,
  estimates: readonly PileEstimate[],
  mostChance: number,
  breakages: readonly number[] = request.piles.map(() => 0)
): PlanWithinRisk {
  const raisedBy = reservesWithinRisk(request.piles, estimates, mostChance, breakages);
  const piles = request.piles.map((pile, index) => ({
    ...pile,
    reservedSlates: pile.reservedSlates + raisedBy[index]
  }));
  const raised = { ...request, piles };
  return { result: planCourses(raised), request: raised, raisedBy };
}

/**
 * Full slates by which the reserve of each pile must rise so that no pile runs out with a chance above
 * a limit: what {@link planWithinRisk} keeps back for it.
 *
 * @param mostChance largest accepted chance for each pile, above 0 and below 1
 * @param breakages full slates of each pile expected to break before they are laid; none if left out
 * @returns one number for each pile, 0 where its own reserve is enough
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range` for a chance that is none
 * @example
 * // 500 expected, SD 20, reserve 10, chance 0.1: 474 may be laid, since Φ((473.5 − 500) / 20) = 0.093
 * // and Φ((474.5 − 500) / 20) = 0.101, so 26 are kept back: 16 more
 */
export function reservesWithinRisk(
  piles: readonly PileStock[],
  estimates: readonly PileEstimate[],
  mostChance: number,
  breakages: readonly number[] = piles.map(() => 0)
): number[] {
  requireEstimates(estimates, piles.length);
  if (breakages.length !== piles.length)
    throw new EngineError('wrong-length', `${breakages.length} breakages`);
  requireFinite(mostChance, 'chance');
  if (mostChance <= 0 || mostChance >= 1)
    throw new EngineError('out-of-range', `chance is ${mostChance}; give above 0 and below 1`);
  return piles.map(({ slates, reservedSlates }, index) => {
    const most = mostWithin(slates, estimates[index], mostChance) - breakages[index];
    return Math.max(0, slates - Math.max(0, most) - reservedSlates);
  });
}

/** The greatest count, up to the stock, that is missing with a chance within the limit. */
function mostWithin(stock: number, estimate: PileEstimate, mostChance: number): number {
  let safe = 0;
  let unsafe = stock + 1;
  while (unsafe - safe > 1) {
    const middle = Math.floor((safe + unsafe) / 2);
    if (chanceBelow(middle, estimate) <= mostChance) safe = middle;
    else unsafe = middle;
  }
  return safe;
}

/** The chance that a pile holds fewer slates than needed. */
function chanceBelow(needed: number, { meanSlates, sdSlates }: PileEstimate): number {
  if (needed <= 0) return 0;
  if (sdSlates === 0) return meanSlates < needed ? 1 : 0;
  const belowZero = normalCdf(-0.5, meanSlates, sdSlates);
  if (belowZero >= 1) return 1;
  const chance = (normalCdf(needed - 0.5, meanSlates, sdSlates) - belowZero) / (1 - belowZero);
  return Math.min(1, Math.max(0, chance));
}

function requireEstimates(estimates: readonly PileEstimate[], piles: number): void {
  if (estimates.length !== piles)
    throw new EngineError('wrong-length', `${estimates.length} estimates for ${piles} piles`);
  for (const [index, { meanSlates, sdSlates }] of estimates.entries()) {
    requireFinite(meanSlates, `estimate of pile ${index + 1}`);
    requireFinite(sdSlates, `SD of pile ${index + 1}`);
    if (sdSlates < 0) throw new EngineError('out-of-range', `SD of pile ${index + 1} is below 0`);
  }
}
