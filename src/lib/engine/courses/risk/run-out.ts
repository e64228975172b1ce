import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { EngineError, requireFinite, requireWhole } from '../../errors.ts';
import type { PileStock, Plan, PlanRequest, PlanResult } from '../plan-types.ts';
import { planCourses, planIfAny } from '../planner.ts';
import { planByRule, ruleIfAny } from '../rule-plan.ts';

/** How well a pile's full slates are known: counted piles have an SD of 0. */
export interface PileEstimate {
  readonly meanSlates: number;
  /** Standard error of the estimate, slates. */
  readonly sdSlates: number;
  /** Of these, full slates that the plan does not count and that are laid first: undereave slates. */
  readonly takenFirst?: number;
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
 * lays from it plus those taken first and those expected to break. Slate-and-a-halves are taken as
 * counted. Piles of one stock are estimated together, so where one holds fewer another holds more; that is ignored here,
 * pile by pile it makes no difference.
 *
 * @param estimates one per pile
 * @param breakages full slates of each pile expected to break before they are laid; none if left out
 * @returns chances by pile
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range` for a negative SD or fewer than none
 * taken first, `not-whole` for those
 * @example
 * // 500 expected, SD 20, 460 laid: chance Φ((459.5 − 500) / 20) = Φ(−2.025) = 0.0214
 */
export function runOutChances(
  plan: Plan,
  estimates: readonly PileEstimate[],
  breakages: readonly number[] = plan.piles.map(() => 0)
): RunOutChance[] {
  requireEstimates(estimates, plan.piles.length);
  if (breakages.length !== plan.piles.length)
    throw new EngineError('wrong-length', `${breakages.length} breakages`);
  return plan.piles.map(({ pile, slates }, index) => {
    const takes = slates + (estimates[index].takenFirst ?? 0);
    const chance = takes === 0 ? 0 : chanceBelow(takes + breakages[index], estimates[index]);
    return { pile, chance };
  });
}

/** A chance of running out that no pile may exceed, with what it takes to reckon it. */
export interface HeldRisk {
  readonly estimates: readonly PileEstimate[];
  /** Largest accepted chance for each pile, above 0 and below 1. */
  readonly mostChance: number;
  /** Full slates of each pile expected to break before they are laid. */
  readonly breakages: readonly number[];
}

/** The plans that stand side by side for one roof and one stock. */
export interface RoofPlans {
  /** Thickest at the eaves and all piles in proportion, held to the chance where that is possible. */
  readonly byRule: PlanResult;
  /** The fewest expected kickers. */
  readonly mostEven: PlanResult;
  /** The chance that the plan by the rule holds each pile to; left out where it holds none. */
  readonly heldUnder?: number;
  /** Full slates by which each pile's reserve was raised for that. */
  readonly raisedBy: readonly number[];
}

/**
 * The plan by the rule, in which no pile runs out with a chance above a limit, and the most even plan,
 * which has no such limit.
 *
 * The most that a pile may give, with those expected to break on top, stays within the limit; what is
 * above that joins its reserve, and the plan by the rule does the rest, exactly. The reserve that was
 * asked for is never lowered. Where no plan holds every pile to the limit, the plan by the rule is made
 * without it, and `heldUnder` is left out; where even that is short, both are.
 *
 * @param risk left out where nothing is known of how surely the piles are counted
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range` for a chance that is none or fewer than
 * none taken first, `not-whole` for those
 */
export function roofPlans(request: PlanRequest, risk?: HeldRisk): RoofPlans {
  const mostEven = planCourses(request);
  const none = request.piles.map(() => 0);
  if (risk) {
    const { estimates, mostChance, breakages } = risk;
    const raisedBy = reservesWithinRisk(request.piles, estimates, mostChance, breakages);
    const piles = request.piles.map((pile, index) => ({
      ...pile,
      reservedSlates: pile.reservedSlates + raisedBy[index]
    }));
    const raised = { ...request, piles };
    const held = ruleIfAny(raised) ?? planIfAny(raised);
    if (held) return { byRule: spared(held, raisedBy), mostEven, heldUnder: mostChance, raisedBy };
  }
  if (mostEven.status === 'short') return { byRule: mostEven, mostEven, raisedBy: none };
  return { byRule: planByRule(request), mostEven, raisedBy: none };
}

/** What a plan leaves of each pile, told by the reserve that was asked for. */
function spared(plan: Plan, raisedBy: readonly number[]): Plan {
  const piles = plan.piles.map((pile, index) => ({
    ...pile,
    spareSlates: pile.spareSlates + raisedBy[index]
  }));
  return { ...plan, piles };
}

/**
 * Full slates by which the reserve of each pile must rise so that no pile runs out with a chance above
 * a limit: what {@link roofPlans} keeps back for it.
 *
 * @param piles without the slates that are taken first
 * @param mostChance largest accepted chance for each pile, above 0 and below 1
 * @param breakages full slates of each pile expected to break before they are laid; none if left out
 * @returns one number for each pile, 0 where its own reserve is enough
 * @throws EngineError `wrong-length`, `not-finite`, `out-of-range` for a chance that is none or fewer than
 * none taken first, `not-whole` for those
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
    const { takenFirst = 0 } = estimates[index];
    const within = mostWithin(slates + takenFirst, estimates[index], mostChance);
    const most = within - takenFirst - breakages[index];
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
  for (const [index, { meanSlates, sdSlates, takenFirst = 0 }] of estimates.entries()) {
    requireFinite(meanSlates, `estimate of pile ${index + 1}`);
    requireFinite(sdSlates, `SD of pile ${index + 1}`);
    requireWhole(takenFirst, 0, `undereave slates of pile ${index + 1}`);
    if (sdSlates < 0) throw new EngineError('out-of-range', `SD of pile ${index + 1} is below 0`);
  }
}
