import { EngineError } from '../errors.ts';
import type { AttributesPlan } from './attributes-plan.ts';
import { acceptance } from './operating-characteristic.ts';
import { requireProbability } from './requirements.ts';
import { leastWhole } from './root.ts';

/** A quality, and how often a delivery of that quality should be accepted. */
export interface RiskPoint {
  /** Share of slates outside, above 0 and below 1. */
  readonly share: number;
  /** Chance of acceptance, above 0 and below 1. */
  readonly acceptance: number;
}

/**
 * Throws unless the two points slope the way an operating characteristic does.
 *
 * @throws EngineError `out-of-range`, `wrong-order`
 */
export function requireRiskPoints(good: RiskPoint, poor: RiskPoint): void {
  for (const [name, point] of [
    ['good', good],
    ['poor', poor]
  ] as const) {
    requireProbability(point.share, `${name} share`);
    requireProbability(point.acceptance, `${name} acceptance`);
  }
  if (good.share >= poor.share || good.acceptance <= poor.acceptance)
    throw new EngineError(
      'wrong-order',
      'the poor point must have the larger share and the smaller chance of acceptance'
    );
}

/** Largest sample that is searched; beyond it every slate may as well be looked at. */
const LARGEST_SAMPLE = 200_000;

/**
 * The smallest single-sampling plan by attributes that keeps both sides' risks.
 *
 * @param good accept such a delivery at least this often
 * @param poor accept such a delivery at most this often
 * @returns the plan with the smallest sample (binomial model); `sample-too-large` beyond 200,000
 * @throws EngineError `out-of-range`, `wrong-order`
 *
 * For each acceptance number the least sample that satisfies the buyer is found by halving; the
 * first number that satisfies the seller too gives the smallest sample, since that least sample
 * rises with the number. Cost: (acceptance number) × log₂(sample) acceptance chances.
 * @example
 * findAttributesPlan({ share: 0.05, acceptance: 0.95 }, { share: 0.15, acceptance: 0.075 })
 * // 80 slates, accept with at most 7
 */
export function findAttributesPlan(
  good: RiskPoint,
  poor: RiskPoint
):
  | { readonly ok: true; readonly plan: AttributesPlan }
  | { readonly ok: false; readonly reason: 'sample-too-large' } {
  requireRiskPoints(good, poor);
  let sampleSize = 1;
  for (let acceptAtMost = 0; ; acceptAtMost++) {
    sampleSize = leastWhole(
      Math.max(sampleSize, acceptAtMost + 1),
      (size) =>
        size > LARGEST_SAMPLE ||
        acceptance({ sampleSize: size, acceptAtMost }, poor.share) <= poor.acceptance
    );
    if (sampleSize > LARGEST_SAMPLE) return { ok: false, reason: 'sample-too-large' };
    const plan = { sampleSize, acceptAtMost };
    if (acceptance(plan, good.share) >= good.acceptance) return { ok: true, plan };
  }
}
