import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { EngineError, requireWhole } from '../errors.ts';
import type { Interval } from './basis.ts';
import { requireProbability } from './requirements.ts';

function requireCounts(found: number, sampled: number, level: number): void {
  requireWhole(sampled, 1, 'slates sampled');
  requireWhole(found, 0, 'slates found');
  requireProbability(level, 'level');
  if (found > sampled)
    throw new EngineError('out-of-range', `${found} found among ${sampled} sampled`);
}

/**
 * Exact (Clopper–Pearson) interval for a share, from a sample of a lot large beside it. Covers at
 * least at its level, whatever the true share; use `countInLot` where the lot is finite and known.
 *
 * @param found slates with the mark, 0 to `sampled`
 * @param sampled slates looked at, at least 1
 * @param level confidence, above 0 and below 1
 * @returns two-sided, the same risk on either side; 0 or 1 itself at the ends
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * Definition: quantiles of the beta distribution. Accuracy about 1e-14.
 * @example clopperPearson(2, 10, 0.95) // 0.0252107 to 0.5560955
 */
export function clopperPearson(found: number, sampled: number, level: number): Interval {
  requireCounts(found, sampled, level);
  const tail = (1 - level) / 2;
  return {
    low: found === 0 ? 0 : betaQuantile(tail, found, sampled - found + 1),
    high: found === sampled ? 1 : betaQuantile(1 - tail, found + 1, sampled - found),
    level
  };
}
