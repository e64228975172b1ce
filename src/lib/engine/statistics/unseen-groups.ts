import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { momentsOfList } from '../thickness/index.ts';
import { requireConfidence } from './confidence.ts';

/** Mean of groups that nobody looked at, with the range it lies in. */
export interface UnseenMean {
  readonly ok: true;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** One group, or none, tells nothing of how groups differ. */
export interface NoUnseenMean {
  readonly ok: false;
  readonly reason: 'too-few-groups';
}

/**
 * The mean of further groups, from the means of some: slates of one pallet are alike, so pallets that
 * nobody opened differ from those measured by as much as these differ.
 *
 * @param means of the groups seen, in any order and unit; not modified
 * @param unseen further groups taken together, whole, at least 1
 * @param confidence of the range, between 0 and 1
 * @returns mean of the means, and mean ± t·s·√(1/n + 1/unseen); `too-few-groups` below two
 *
 * Definition: prediction interval of a normal mean, s with n − 1 and t with n − 1 degrees of freedom.
 * Exact for groups of equal size, wide apart or measured whole; to the safe side otherwise, since s
 * holds what sampling within the groups adds. Cost: linear.
 *
 * @throws EngineError `out-of-range` for the confidence, `not-whole`, `not-finite`
 * @source textbook prediction interval; held to simulation in the tests
 * @example
 * meanOfUnseen([5.8, 6.0, 6.2], 1, 0.95); // 6.0, and 4.303 · 0.2 · √(4/3) = 0.99 to either side
 */
export function meanOfUnseen(
  means: readonly number[],
  unseen: number,
  confidence: number
): UnseenMean | NoUnseenMean {
  requireConfidence(confidence);
  requireWhole(unseen, 1, 'further groups');
  for (const mean of means) requireFinite(mean, 'mean');
  if (means.length < 2) return { ok: false, reason: 'too-few-groups' };
  const moments = momentsOfList(means);
  if (!moments.ok) throw new EngineError('inconsistent', 'means without a mean');
  const t = tQuantile((1 + confidence) / 2, means.length - 1);
  const reach = t * (moments.sd ?? 0) * Math.sqrt(1 / means.length + 1 / unseen);
  return { ok: true, mean: moments.mean, low: moments.mean - reach, high: moments.mean + reach };
}
