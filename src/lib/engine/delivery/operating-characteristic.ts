import { EngineError, requireWhole } from '../errors.ts';
import type { AttributesPlan } from './attributes-plan.ts';
import { atMost, binomial, hypergeometric } from './count-distribution.ts';
import { requireShare } from './requirements.ts';

/** One point of a plan's operating characteristic. */
export interface OperatingPoint {
  /** Share of the lot outside, 0 to 1. */
  readonly share: number;
  /** Chance that the plan accepts such a lot, 0 to 1. */
  readonly acceptance: number;
}

function requirePlan({ sampleSize, acceptAtMost }: AttributesPlan): void {
  requireWhole(sampleSize, 1, 'sample size');
  requireWhole(acceptAtMost, 0, 'acceptance number');
}

/**
 * Chance that a plan accepts a lot, when the lot is large beside the sample (binomial).
 *
 * @param plan sample size at least 1, acceptance number 0 or more
 * @param share share of slates outside, 0 to 1
 * @returns 0 to 1; never rises as `share` rises
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * Accuracy about 1e-15. Cost: the sample size. Source: definition.
 * @example acceptance({ sampleSize: 52, acceptAtMost: 3 }, 0.05) // 0.738317
 */
export function acceptance(plan: AttributesPlan, share: number): number {
  requirePlan(plan);
  return atMost(binomial(plan.sampleSize, share), plan.acceptAtMost);
}

/**
 * Chance that a plan accepts one particular lot (hypergeometric): the exact figure for a delivery.
 *
 * @param lotSize slates in the lot, at least the sample
 * @param bad slates outside in the lot, 0 to `lotSize`
 * @throws EngineError `not-whole`, `out-of-range` for an impossible plan
 * @example acceptanceInLot({ sampleSize: 5, acceptAtMost: 1 }, 50, 5) // 0.928248
 */
export function acceptanceInLot(plan: AttributesPlan, lotSize: number, bad: number): number {
  requirePlan(plan);
  return atMost(hypergeometric(lotSize, bad, plan.sampleSize), plan.acceptAtMost);
}

/**
 * The operating characteristic as points to draw: exact for the lot.
 *
 * @param lotSize slates in the lot, at least the sample
 * @param points how many points, at least 2, evenly spread from 0 to `worstShare`
 * @param worstShare right end of the drawing, above 0 and at most 1
 * @returns points with `share` rising; each share is a whole number of slates, so that near
 *   equal shares of a small lot fall together and are given once
 * @throws EngineError `not-whole`, `out-of-range` for an impossible plan, number of points or
 *   worst share
 */
export function operatingCurve(
  plan: AttributesPlan,
  lotSize: number,
  points: number,
  worstShare: number
): OperatingPoint[] {
  requireWhole(points, 2, 'points');
  requireShare(worstShare, 'worst share');
  const counts = new Set<number>();
  for (let index = 0; index < points; index++)
    counts.add(Math.round((lotSize * worstShare * index) / (points - 1)));
  return [...counts].map((bad) => ({
    share: bad / lotSize,
    acceptance: acceptanceInLot(plan, lotSize, bad)
  }));
}

/** What a plan risks, put from either side of the bargain. */
export interface PlanRisks {
  /** Chance that a good delivery (at the acceptable level) is refused. */
  readonly sellersRisk: number;
  /** Chance that a poor delivery (at the limiting level) is accepted. */
  readonly buyersRisk: number;
}

/**
 * Seller's and buyer's risk of a plan on one lot.
 *
 * Shares are turned to whole slates in the direction that makes the risk no smaller than stated:
 * the acceptable level up, the limiting level down.
 *
 * @param acceptableShare share outside that should be accepted, 0 to 1
 * @param limitingShare share outside that should be refused, above `acceptableShare`
 * @throws EngineError `wrong-order` when the limiting share is not above the acceptable one
 */
export function planRisks(
  plan: AttributesPlan,
  lotSize: number,
  acceptableShare: number,
  limitingShare: number
): PlanRisks {
  requireShare(acceptableShare, 'acceptable share');
  requireShare(limitingShare, 'limiting share');
  if (limitingShare <= acceptableShare)
    throw new EngineError(
      'wrong-order',
      `limiting share ${limitingShare} is not above the acceptable share ${acceptableShare}`
    );
  const slack = 1e-9; // 0.07 of 100 slates is 7, though the product is a little more in binary
  return {
    sellersRisk: 1 - acceptanceInLot(plan, lotSize, Math.ceil(lotSize * acceptableShare - slack)),
    buyersRisk: acceptanceInLot(plan, lotSize, Math.floor(lotSize * limitingShare + slack))
  };
}
