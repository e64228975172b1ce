import { requireWhole } from '../errors.ts';
import { findOutsideOrder, type OutsideOrderFinding } from './finding-outside-order.ts';
import { type JudgingPlan, type PlanWithRisks, planForSize, withRisks } from './judging-plan.ts';
import { findRoofFit, type RoofFinding, type RoofNeed } from './finding-roof.ts';
import {
  findSorting,
  type PredictedEvenness,
  type SortingFinding,
  type SortingTerms
} from './finding-sorting.ts';
import { compareJudgedPallets, type PalletsCompared } from './pallets-compared.ts';
import {
  productLimits,
  type DeliveryOrder,
  type OrderRefusal,
  type ToleranceLimit
} from './product-tolerances.ts';
import { sampleEvidence, type JudgedSlate } from './sample-evidence.ts';
import type { MeasuredSlate } from './slate-conformity.ts';
import {
  checkCount,
  checkStack,
  type CountComparison,
  type MeasuredStack,
  type StackCheckResult
} from './stack-check.ts';
import type { VariablesPlan } from './variables-plan.ts';

/** All that is known when a delivery is judged. */
export interface DeliveryEvidence {
  readonly order: DeliveryOrder;
  /** Slates delivered: counted, or else as declared. */
  readonly delivered: number;
  readonly slates: readonly MeasuredSlate[];
  readonly plan: JudgingPlan;
  readonly variablesPlan?: VariablesPlan;
  readonly stacks: readonly MeasuredStack[];
  readonly labelMmPer100?: number;
  /** Departure of a stack from the label that the order allows, per cent; none is assumed. */
  readonly stackTolerancePercent?: number;
  readonly need: RoofNeed;
  readonly evenness?: PredictedEvenness;
  readonly sorting: SortingTerms;
  /** Confidence of every interval, such as 0.95. */
  readonly level: number;
}

/** The three findings, kept apart, with the counts they stand on. */
export interface DeliveryFindings {
  readonly delivered: number;
  readonly level: number;
  /** The plan for the slates that judge, with the risks of that. */
  readonly plan: PlanWithRisks;
  readonly count: CountComparison;
  readonly stack: StackCheckResult;
  readonly outsideOrder: OutsideOrderFinding;
  readonly sorting: SortingFinding;
  readonly roof: RoofFinding;
  readonly pallets: PalletsCompared;
  /** Slates measured but not of the unsorted sample; they judged nothing. */
  readonly listedApart: number;
  /** The band of thickness they were held to, and the tolerance, per cent; absent: not agreed. */
  readonly thicknessLimit?: ToleranceLimit;
  readonly thicknessTolerancePercent?: number;
  /** The least thickness tolerance with which the plan would not refuse, per cent. */
  readonly tolerancePercentThatAccepts?: number;
}

export type FindingsResult =
  | { readonly ok: true; readonly findings: DeliveryFindings }
  | OrderRefusal
  | { readonly ok: false; readonly reason: 'sample-exceeds-lot' | 'no-unsorted-sample' };

/**
 * Judges a delivery in three findings: what lies outside the order, what is inside but needs
 * sorting, and whether it makes this roof.
 *
 * @param evidence lengths in mm; not modified
 * @returns the findings; refused, with the reason: an order that cannot be judged by, no slates
 *   delivered, more slates in the sample than delivered, no slate of the unsorted sample measured
 * @throws EngineError `not-finite`, `not-whole`, `out-of-range` for numbers that are none
 *
 * The findings are the same, to the last bit, whatever the order of the slates and stacks.
 * Cost: slates × checks, and some fifty exact distributions.
 */
export function findAll(evidence: DeliveryEvidence): FindingsResult {
  const { order, delivered, level, need, evenness, variablesPlan } = evidence;
  requireWhole(delivered, 0, 'slates delivered');
  const limited = productLimits(order);
  if (!limited.ok) return limited;
  const counted = checkCount(order.slatesOrdered, delivered);
  if (!counted.ok) return counted;
  const { judged, listedApart } = sampleEvidence(evidence.slates, limited.limits);
  if (judged.length === 0) return { ok: false, reason: 'no-unsorted-sample' };
  if (judged.length > delivered || evidence.plan.sampleSize > delivered)
    return { ok: false, reason: 'sample-exceeds-lot' };
  const plan = withRisks(planForSize(evidence.plan, judged.length), delivered);

  const outsideOrder = findOutsideOrder({
    judged,
    lotSize: delivered,
    limits: limited.limits,
    plan,
    variablesPlan,
    level
  });
  const { thickness } = limited.limits;
  const tolerance =
    thickness &&
    leastTolerancePercent(judged, order.nominalThicknessMm, outsideOrder.attributes.acceptAtMost);
  return {
    ok: true,
    findings: {
      delivered,
      level,
      plan,
      count: counted.count,
      stack: checkStack(evidence.stacks, evidence.labelMmPer100, evidence.stackTolerancePercent),
      outsideOrder,
      sorting: findSorting(
        judged,
        delivered,
        outsideOrder.countInterval,
        evidence.sorting,
        evenness
      ),
      roof: findRoofFit(judged, delivered, need, level, evenness),
      pallets: compareJudgedPallets(judged),
      listedApart,
      ...(thickness && {
        thicknessLimit: thickness,
        thicknessTolerancePercent: order.thicknessTolerancePercent
      }),
      ...(tolerance !== undefined && { tolerancePercentThatAccepts: tolerance })
    }
  };
}

/**
 * The least thickness tolerance, per cent of nominal, with which at most `acceptAtMost` of the
 * slates would be outside; undefined where other checks alone fail more, or 100 % is not enough.
 */
function leastTolerancePercent(
  judged: readonly JudgedSlate[],
  nominalMm: number,
  acceptAtMost: number
): number | undefined {
  const failsOtherwise = judged.filter((slate) => !slate.isUsable).length;
  if (failsOtherwise > acceptAtMost) return undefined;
  const departures = judged
    .filter((slate) => slate.isUsable)
    .map(({ thicknessMm = nominalMm }) => (Math.abs(thicknessMm - nominalMm) / nominalMm) * 100)
    .sort((one, other) => other - one);
  const percent = departures[acceptAtMost - failsOtherwise] ?? 0;
  return percent <= 100 ? percent : undefined;
}
