import betaCdf from '@stdlib/stats-base-dists-beta-cdf';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { requireFinite, requireWhole } from '../errors.ts';
import { noncentralTAbove, noncentralTQuantile } from './noncentral-t.ts';
import { requireRiskPoints, type RiskPoint } from './plan-finder.ts';
import { requireProbability } from './requirements.ts';
import { leastWhole } from './root.ts';

/** A variables plan for one limit: accept when the limit is at least k SDs from the mean. */
export interface OneLimitPlan {
  readonly sampleSize: number;
  /** The constant k. */
  readonly acceptability: number;
}

/** Whether the plan uses the sample's SD, or one known beforehand. */
export type SdKnowledge = 'sd from the sample' | 'sd known';

/**
 * Chance that a variables plan with one limit accepts a normal lot.
 *
 * @param plan sample size at least 2
 * @param share share of the lot beyond the limit, above 0 and below 1
 * @returns 0 to 1; falls as `share` rises
 * @throws EngineError `not-whole`, `out-of-range`, `not-finite`
 *
 * Definition: P(T ≥ k√n), T noncentral t with n − 1 degrees of freedom and noncentrality
 * z(1 − share)·√n; with the SD known, Φ((z(1 − share) − k)·√n). A plan with two limits accepts at
 * most this often. Accuracy about 1e-9, that of the normal quantile.
 * @example variablesAcceptance({ sampleSize: 49, acceptability: 1.326538 }, 0.05) // 0.949998
 */
export function variablesAcceptance(
  plan: OneLimitPlan,
  share: number,
  knowledge: SdKnowledge = 'sd from the sample'
): number {
  requireWhole(plan.sampleSize, 2, 'sample size');
  requireFinite(plan.acceptability, 'acceptability');
  requireProbability(share, 'share outside');
  const root = Math.sqrt(plan.sampleSize);
  const distance = -normalQuantile(share, 0, 1);
  return knowledge === 'sd known'
    ? normalCdf((distance - plan.acceptability) * root, 0, 1)
    : noncentralTAbove(plan.acceptability * root, plan.sampleSize - 1, distance * root);
}

/**
 * The smallest variables plan for one limit that keeps both sides' risks.
 *
 * @param good accept such a delivery exactly this often
 * @param poor accept such a delivery at most this often
 * @returns the plan: for each sample size k is set by the good point; the least size that then
 *   satisfies the poor point is taken. `sample-too-large` beyond 20,000.
 * @throws EngineError `out-of-range`, `wrong-order`
 * @example
 * findVariablesPlan({ share: 0.05, acceptance: 0.95 }, { share: 0.15, acceptance: 0.075 })
 * // 49 slates, k = 1.32654
 */
export function findVariablesPlan(
  good: RiskPoint,
  poor: RiskPoint,
  knowledge: SdKnowledge = 'sd from the sample'
):
  | { readonly ok: true; readonly plan: OneLimitPlan }
  | { readonly ok: false; readonly reason: 'sample-too-large' } {
  requireRiskPoints(good, poor);
  const largest = 20_000;
  const distance = -normalQuantile(good.share, 0, 1);
  const planOf = (sampleSize: number): OneLimitPlan => {
    const root = Math.sqrt(sampleSize);
    const acceptability =
      knowledge === 'sd known'
        ? distance - normalQuantile(good.acceptance, 0, 1) / root
        : noncentralTQuantile(1 - good.acceptance, sampleSize - 1, distance * root) / root;
    return { sampleSize, acceptability };
  };
  const sampleSize = leastWhole(
    2,
    (size) =>
      size > largest || variablesAcceptance(planOf(size), poor.share, knowledge) <= poor.acceptance
  );
  return sampleSize > largest
    ? { ok: false, reason: 'sample-too-large' }
    : { ok: true, plan: planOf(sampleSize) };
}

/**
 * The allowed share M that says for two limits what the constant k says for one.
 *
 * @returns 0 to 1
 * @throws EngineError `not-whole`, `out-of-range`, `not-finite` for an impossible plan
 * @example allowedShareFrom({ sampleSize: 42, acceptability: 1.905285 }) // 0.0263045512
 */
export function allowedShareFrom({ sampleSize, acceptability }: OneLimitPlan): number {
  requireWhole(sampleSize, 3, 'sample size');
  requireFinite(acceptability, 'acceptability');
  const z = 0.5 - (0.5 * acceptability * Math.sqrt(sampleSize)) / (sampleSize - 1);
  if (z <= 0) return 0;
  if (z >= 1) return 1;
  return betaCdf(z, sampleSize / 2 - 1, sampleSize / 2 - 1);
}
