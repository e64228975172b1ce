import { EngineError } from '../errors.ts';
import { FULL_CHECKS } from '../slate-checks.ts';
import type { Basis, Interval } from './basis.ts';
import { countInLot } from './finite-lot.ts';
import { type JudgingPlan, acceptanceNumberFor } from './judging-plan.ts';
import type { ProductLimits } from './product-tolerances.ts';
import { clopperPearson } from './proportion-intervals.ts';
import type { JudgedSlate } from './sample-evidence.ts';
import { SLATE_CHECKS, type SlateCheckName, basisOfMark, isCertain } from './slate-conformity.ts';
import { judgeByVariables, type VariablesJudgement } from './variables-judgement.ts';
import type { VariablesPlan } from './variables-plan.ts';

/** How often one check failed in the sample, and what that says of the delivery. */
export interface CheckFinding {
  readonly check: SlateCheckName;
  readonly measured: number;
  readonly failed: number;
  /** Of these, on a limit that the order states or the buyer confirmed from it. */
  readonly failedForCertain: number;
  /**
   * Slates that the share rests on, and those of them that failed: all that judge, or those that
   * chance picked for this check. Absent where the share is.
   */
  readonly drawn?: { readonly slates: number; readonly failed: number };
  /**
   * Share of the delivery that fails it. Absent where nothing was measured, where no limit is
   * agreed, and where only some of the slates were looked at that chance picked for it: whoever
   * looks at the bad ones alone would make a share of one.
   */
  readonly shareInterval?: Interval;
  /** Slates of the delivery that fail it; absent where the share is. */
  readonly countInterval?: Interval;
  readonly basis: Basis;
}

/** How many slates of the sample have one defect. */
export interface DefectFinding {
  readonly defect: string;
  readonly slates: number;
  readonly basis: Basis;
}

/** What the plan by attributes says so far. */
export interface AttributesJudgement {
  /** `unfinished`: the slates still to be looked at may decide either way. */
  readonly state: 'accepted' | 'refused' | 'unfinished';
  /** Slates outside that are still accepted among those the judgement rests on. */
  readonly acceptAtMost: number;
  /** Slates still to be looked at before the sample is complete. */
  readonly toJudge: number;
}

/** First finding: what lies outside the order. */
export interface OutsideOrderFinding {
  readonly judged: number;
  readonly outside: number;
  /** Of these, outside by a limit that the order states or the buyer confirmed from it. */
  readonly outsideForCertain: number;
  /** Exact interval for the share outside, as if the delivery had no end. */
  readonly shareInterval: Interval;
  /** Exact interval for the slates outside in this delivery. */
  readonly countInterval: Interval;
  /** The same two, counting only what is outside for certain. */
  readonly shareIntervalForCertain: Interval;
  readonly countIntervalForCertain: Interval;
  readonly byCheck: readonly CheckFinding[];
  /** Defects seen, the most frequent first; a slate may have several. */
  readonly byDefect: readonly DefectFinding[];
  readonly attributes: AttributesJudgement;
  /** The same, counting only what is outside for certain. */
  readonly attributesForCertain: AttributesJudgement;
  /** Thickness by the variables plan; absent without such a plan or with too few thicknesses. */
  readonly thickness?: VariablesJudgement;
  readonly basis: readonly Basis[];
}

/**
 * What a plan says after some slates: refused as soon as nothing can save it, accepted as soon as
 * nothing can spoil it.
 */
export function judgeByAttributes(
  plan: JudgingPlan,
  judged: number,
  outside: number
): AttributesJudgement {
  const acceptAtMost = acceptanceNumberFor(plan, judged);
  const toJudge = Math.max(0, plan.sampleSize - judged);
  const state =
    outside > acceptAtMost
      ? 'refused'
      : outside + toJudge <= acceptAtMost
        ? 'accepted'
        : 'unfinished';
  return { state, acceptAtMost, toJudge };
}

/** What the first finding is made from. */
export interface OutsideOrderInput {
  readonly judged: readonly JudgedSlate[];
  /** Slates delivered; at least the number judged, at least 1 judged. */
  readonly lotSize: number;
  readonly limits: ProductLimits;
  readonly plan: JudgingPlan;
  readonly variablesPlan?: VariablesPlan;
  readonly level: number;
}

/**
 * States what lies outside the order: by check, together, and by the plans.
 *
 * Intervals are exact: Clopper–Pearson for shares, hypergeometric for slates of this delivery.
 * The result is the same whatever the order of the slates.
 */
export function findOutsideOrder(input: OutsideOrderInput): OutsideOrderFinding {
  const { judged, lotSize, limits, plan, variablesPlan, level } = input;
  const outside = judged.filter((slate) => slate.isOutside).length;
  const outsideForCertain = judged.filter((slate) => slate.isOutsideForCertain).length;
  const thicknesses = judged.flatMap(({ thicknessMm }) => thicknessMm ?? []);
  const { thickness } = limits;
  const byVariables =
    variablesPlan &&
    thickness &&
    judgeByVariables(thicknesses, { low: thickness.lowMm, high: thickness.highMm }, variablesPlan);
  return {
    judged: judged.length,
    outside,
    outsideForCertain,
    shareInterval: clopperPearson(outside, judged.length, level),
    countInterval: countOf(outside, judged.length, lotSize, level),
    shareIntervalForCertain: clopperPearson(outsideForCertain, judged.length, level),
    countIntervalForCertain: countOf(outsideForCertain, judged.length, lotSize, level),
    byCheck: SLATE_CHECKS.map((check) => findingOf(check, judged, lotSize, level)),
    byDefect: defectsOf(judged, limits),
    attributes: judgeByAttributes(plan, judged.length, outside),
    attributesForCertain: judgeByAttributes(plan, judged.length, outsideForCertain),
    ...(byVariables?.ok && { thickness: byVariables.judgement }),
    basis: [...plan.basis, ...(variablesPlan ? [variablesPlan.basis] : [])]
  };
}

/**
 * A check over the sample. Its range rests on slates that chance picked for it: every slate that
 * judges, or for size, squareness, edge and bow those of the full check. All of them must have been
 * looked at; a slate that could not be gauged for its thickness counts as either.
 */
function findingOf(
  check: SlateCheckName,
  judged: readonly JudgedSlate[],
  lotSize: number,
  level: number
): CheckFinding {
  const at = SLATE_CHECKS.indexOf(check);
  const outcomesOf = (slates: readonly JudgedSlate[]) => {
    const results = slates.map(({ checks }) => checks[at]);
    return {
      results,
      measured: results.filter(({ outcome }) => outcome !== 'not measured').length,
      failed: results.filter(({ outcome }) => outcome === 'fail').length
    };
  };
  const { results, measured, failed } = outcomesOf(judged);
  const picked = judged.filter(({ isFullCheck }) => isFullCheck);
  const isFull = FULL_CHECKS.some((full) => full === check);
  const isPicked = isFull && picked.length > 0 && measured < judged.length;
  const base = isPicked ? picked : judged;
  const drawn = outcomesOf(base);
  const unknown = base.length - drawn.measured;
  const isHeld = results.some(({ outcome }) => outcome !== 'no limit');
  const tells = isHeld && drawn.measured > 0 && (unknown === 0 || check === 'thickness');
  const certain = results.filter(({ outcome, basis }) => outcome === 'fail' && isCertain(basis));
  return {
    check,
    measured,
    failed,
    failedForCertain: certain.length,
    ...(tells && {
      drawn: { slates: base.length, failed: drawn.failed },
      shareInterval: {
        low: clopperPearson(drawn.failed, base.length, level).low,
        high: clopperPearson(drawn.failed + unknown, base.length, level).high,
        level
      },
      countInterval: {
        low: countOf(drawn.failed, base.length, lotSize, level).low,
        high: countOf(drawn.failed + unknown, base.length, lotSize, level).high,
        level
      }
    }),
    basis: (certain[0] ?? results.find(({ outcome }) => outcome === 'fail') ?? results[0]).basis
  };
}

function defectsOf(judged: readonly JudgedSlate[], limits: ProductLimits): DefectFinding[] {
  const counts = new Map<string, number>();
  for (const { defects } of judged)
    for (const defect of defects) counts.set(defect, (counts.get(defect) ?? 0) + 1);
  return [...counts]
    .map(([defect, slates]) => ({ defect, slates, basis: basisOfMark(defect, limits.agreed) }))
    .sort((one, other) => other.slates - one.slates || (one.defect < other.defect ? -1 : 1));
}

/**
 * The interval for a sample that the caller knows to fit its lot.
 *
 * @throws EngineError `inconsistent` when the sample does not fit the lot
 */
export function countOf(found: number, sampled: number, lotSize: number, level: number): Interval {
  const result = countInLot({ found, sampled, lotSize }, level);
  if (!result.ok) throw new EngineError('inconsistent', `sample and lot: ${result.reason}`);
  return result.count;
}
