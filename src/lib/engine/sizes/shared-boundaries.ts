import { EngineError, requireWhole } from '../errors.ts';
import { kickProbabilityWithinPiles, naturalBreaks, splitIntoPiles } from '../grading/index.ts';
import { type ThicknessBins, mergeBins, totalCount } from '../thickness/index.ts';

/** Boundaries of each size for itself, or the same for all, by the kickers that they leave. */
export interface BoundariesCompared {
  readonly ok: true;
  /** Kickers per 100 joints within a pile, over all sizes by their slates. */
  readonly ownPer100: number;
  readonly sharedPer100: number;
  readonly sharedThresholdsMm: readonly number[];
  /** `shared` where it leaves no more kickers: one gauge setting serves all lengths. */
  readonly better: 'own' | 'shared';
}

/** Too little is known of a size to set boundaries for it. */
export interface BoundariesUnknown {
  readonly ok: false;
  readonly reason: 'too-few';
}

/** Differences below half a tenth of a kicker in 100 joints are none. */
const SAME_PER_100 = 0.05;

/**
 * Whether sizes are better cut at boundaries of their own or all at the same ones.
 *
 * @param spreads thickness of each size, scaled to its slates; not modified
 * @param piles piles of each size, 2 or more
 * @param kickAllowanceMm step that does not kick yet, mm, 0 or more
 * @returns expected kickers per 100 joints both ways, natural breaks in each; a joint within a pile
 * only, each size weighing by its slates. `too-few` where a size has fewer thicknesses than piles
 * @throws EngineError `empty`, `not-whole`, `out-of-range`
 * Cost: that of natural breaks, once for each size and once for all.
 * Source: natural breaks and chances to kick as in `naturalBreaks` and `kickProbabilityWithin`.
 */
export function compareBoundaries(
  spreads: readonly ThicknessBins[],
  piles: number,
  kickAllowanceMm: number
): BoundariesCompared | BoundariesUnknown {
  requireWhole(piles, 2, 'piles');
  if (spreads.length === 0) throw new EngineError('empty', 'no sizes; give at least one');
  const shared = naturalBreaks(mergeBins(spreads), piles);
  const own = spreads.map((bins) => naturalBreaks(bins, piles));
  if (!shared.ok) return { ok: false, reason: 'too-few' };
  const all = spreads.reduce((sum, bins) => sum + totalCount(bins), 0);
  let [ownKicks, sharedKicks] = [0, 0];
  for (const [index, bins] of spreads.entries()) {
    const breaks = own[index];
    if (!breaks.ok) return { ok: false, reason: 'too-few' };
    ownKicks += kicksOf(bins, breaks.thresholdsMm, kickAllowanceMm);
    sharedKicks += kicksOf(bins, shared.thresholdsMm, kickAllowanceMm);
  }
  const [ownPer100, sharedPer100] = [(100 * ownKicks) / all, (100 * sharedKicks) / all];
  return {
    ok: true,
    ownPer100,
    sharedPer100,
    sharedThresholdsMm: shared.thresholdsMm,
    better: sharedPer100 <= ownPer100 + SAME_PER_100 ? 'shared' : 'own'
  };
}

/** Slates by their chance to kick against the next one of their pile. */
function kicksOf(
  bins: ThicknessBins,
  thresholdsMm: readonly number[],
  kickAllowanceMm: number
): number {
  const parts = splitIntoPiles(bins, thresholdsMm);
  const chances = kickProbabilityWithinPiles(parts, kickAllowanceMm);
  return parts.reduce((sum, part, pile) => sum + totalCount(part) * chances[pile], 0);
}
