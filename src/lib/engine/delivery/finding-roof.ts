import { requireWhole } from '../errors.ts';
import type { Basis, Interval } from './basis.ts';
import { countOf } from './finding-outside-order.ts';
import type { PredictedEvenness } from './finding-sorting.ts';
import type { JudgedSlate } from './sample-evidence.ts';

/** What the roof asks for. */
export interface RoofNeed {
  /** Slates that the courses use up, whole, 0 or more. */
  readonly slates: number;
  /** Slates kept for breakage and repairs beyond that, whole, 0 or more. */
  readonly reserve: number;
}

/**
 * `enough`: need and reserve are met over the whole interval. `reserve short`: the need is met, the
 * reserve is not. `reserve uncertain`: the need is met, the interval does not tell whether the reserve
 * is. `short`: the need is not met. `uncertain`: the interval does not tell whether the need is.
 */
export type RoofAnswer = 'enough' | 'reserve short' | 'reserve uncertain' | 'short' | 'uncertain';

/** Third finding: whether the delivery makes this roof. */
export interface RoofFinding {
  readonly state: RoofAnswer;
  readonly judged: number;
  /** Sampled slates that cannot go on the roof as full slates. */
  readonly unusable: number;
  /** Usable slates in the delivery. */
  readonly usableInterval: Interval;
  readonly need: RoofNeed;
  /** Slates missing for need and reserve together; 0 to 0 when none is. */
  readonly missingInterval: Interval;
  readonly evenness?: PredictedEvenness;
  readonly basis: Basis;
}

/**
 * Compares the usable slates of a delivery with what the roof needs.
 *
 * @param judged slates of the unsorted sample, at least 1
 * @param lotSize slates delivered, at least the number judged
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * A slate is usable whatever its thickness; any other failed check makes it unusable. The interval
 * is exact (hypergeometric).
 */
export function findRoofFit(
  judged: readonly JudgedSlate[],
  lotSize: number,
  need: RoofNeed,
  level: number,
  evenness?: PredictedEvenness
): RoofFinding {
  requireWhole(need.slates, 0, 'slates needed');
  requireWhole(need.reserve, 0, 'reserve');
  const unusable = judged.filter((slate) => !slate.isUsable).length;
  const usableInterval = usableIn(lotSize, judged.length, unusable, level);
  const wanted = need.slates + need.reserve;
  return {
    state: roofAnswer(usableInterval, need),
    judged: judged.length,
    unusable,
    usableInterval,
    need,
    missingInterval: {
      low: Math.max(0, wanted - usableInterval.high),
      high: Math.max(0, wanted - usableInterval.low),
      level
    },
    ...(evenness && { evenness }),
    basis: { standing: 'computed', source: 'exact hypergeometric interval' }
  };
}

function usableIn(lotSize: number, judged: number, unusable: number, level: number): Interval {
  const bad = countOf(unusable, judged, lotSize, level);
  return { low: lotSize - bad.high, high: lotSize - bad.low, level };
}

function roofAnswer(usable: Interval, need: RoofNeed): RoofAnswer {
  const wanted = need.slates + need.reserve;
  if (usable.low >= wanted) return 'enough';
  if (usable.high < need.slates) return 'short';
  if (usable.low >= need.slates)
    return usable.high < wanted ? 'reserve short' : 'reserve uncertain';
  return 'uncertain';
}

/**
 * The most unusable slates that the same sample could hold with the delivery still `enough`: what
 * would have to change for the finding to change.
 *
 * @returns whole, 0 to judged; undefined where even none would not do
 *
 * Exact, by halving: more unusable slates in the sample never widen what is usable.
 */
export function mostUnusableForEnough(
  lotSize: number,
  judged: number,
  need: RoofNeed,
  level: number
): number | undefined {
  const isEnough = (unusable: number): boolean =>
    roofAnswer(usableIn(lotSize, judged, unusable, level), need) === 'enough';
  if (!isEnough(0)) return undefined;
  let most = 0;
  let tooMany = judged + 1;
  while (tooMany - most > 1) {
    const middle = Math.floor((most + tooMany) / 2);
    if (isEnough(middle)) most = middle;
    else tooMany = middle;
  }
  return most;
}
