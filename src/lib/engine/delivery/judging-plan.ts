import type { AttributesPlan } from './attributes-plan.ts';
import type { Basis } from './basis.ts';
import {
  type OperatingPoint,
  type PlanRisks,
  acceptance,
  acceptanceInLot,
  operatingCurve,
  planRisks
} from './operating-characteristic.ts';
import { variablesAcceptance } from './variables-operating-characteristic.ts';
import type { VariablesPlan } from './variables-plan.ts';

/** The plan that a delivery is judged by, and the quality that it means to accept. */
export interface JudgingPlan extends AttributesPlan {
  /** Share outside that the plan means to accept, above 0 and below 1 (AQL / 100). */
  readonly acceptableShare: number;
  /**
   * How often a delivery at the acceptable share is to pass, however many slates are judged; left
   * out, as often as under the plan itself.
   */
  readonly promised?: number;
  /** Share outside of a poor delivery, as the buyer set it. */
  readonly poorShare?: number;
  /** Where the delivery is accepted by its thickness alone: the risks are then of that. */
  readonly byThickness?: ThicknessPlan;
  readonly basis: readonly Basis[];
  /**
   * Whether slates were drawn in groups that share a layer: the risks are those of slates drawn one by
   * one, and may be worse where faults lie in layers.
   */
  readonly isInFewLayers?: boolean;
}

/** A plan with what it risks for one delivery: the same object chosen, drawn and judged. */
export interface PlanWithRisks extends JudgingPlan, PlanRisks {
  /** A poor delivery: as set, or the least share that passes at most one time in ten. */
  readonly poorShare: number;
}

/** Judging by thickness alone, as `VariablesPlan` has it, for so many slates gauged. */
export type ThicknessPlan = Pick<VariablesPlan, 'sampleSize' | 'acceptability' | 'allowedShare'>;

/**
 * How many slates outside a sample of another size than planned may hold.
 *
 * A sample no larger than planned keeps the plan's number. A larger one gets the least number with
 * which a delivery at the acceptable level passes as often as promised, so that looking at more
 * slates never costs the seller anything, nor the buyer more than it must. This extension is ours.
 *
 * @param judged whole, 0 or more
 */
export function acceptanceNumberFor(plan: JudgingPlan, judged: number): number {
  if (judged <= plan.sampleSize) return plan.acceptAtMost;
  const promised = plan.promised ?? acceptance(plan, plan.acceptableShare);
  let acceptAtMost = plan.acceptAtMost;
  while (acceptance({ sampleSize: judged, acceptAtMost }, plan.acceptableShare) < promised)
    acceptAtMost++;
  return acceptAtMost;
}

/** The plan for at least so many slates, with the acceptance number for them. */
export function planForSize<P extends JudgingPlan>(plan: P, slates: number): P {
  const sampleSize = Math.max(plan.sampleSize, slates);
  const acceptAtMost = acceptanceNumberFor(plan, sampleSize);
  const { byThickness } = plan;
  return {
    ...plan,
    sampleSize,
    acceptAtMost,
    ...(byThickness && { byThickness: { ...byThickness, sampleSize } })
  };
}

/** One time in ten: what "a poor delivery is seldom accepted" means here. */
const SELDOM = 0.1;
const CURVE_POINTS = 61;

/**
 * How often a plan accepts a delivery, by its share outside, up to where hardly any is accepted.
 *
 * @param lotSize slates delivered; at least the sample, else the sample counts as the delivery
 *
 * By attributes exact for the lot (hypergeometric); by thickness for one limit and normal
 * thickness (noncentral t).
 */
export function planCurve(plan: JudgingPlan, lotSize: number): OperatingPoint[] {
  const { acceptableShare, poorShare = 0, byThickness } = plan;
  const first = Math.max(0.1, 2 * acceptableShare, 1.1 * poorShare);
  const worst = endOfCurve(first, (share) => acceptedAt(plan, lotSize, share));
  return byThickness
    ? thicknessCurve(byThickness, worst)
    : operatingCurve(plan, Math.max(lotSize, plan.sampleSize), CURVE_POINTS, worst);
}

/**
 * A plan with what it risks for a delivery of so many slates, from either side.
 *
 * @param lotSize slates delivered; at least the sample, else the sample counts as the delivery
 *
 * @example
 * // 40 slates of 5,000, at most 4 outside, good at 4 %, poor at 20 %: risks 0.02053 and 0.07510
 */
export function withRisks<P extends JudgingPlan>(plan: P, lotSize: number): P & PlanWithRisks {
  const lot = Math.max(lotSize, plan.sampleSize);
  const { acceptableShare } = plan;
  const at = (share: number): number => acceptedAt(plan, lot, share);
  const poorShare =
    plan.poorShare ?? planCurve(plan, lot).find((point) => point.acceptance <= SELDOM)?.share ?? 1;
  const limiting = Math.max(poorShare, acceptableShare + 1 / lot);
  const risks =
    plan.byThickness || limiting > 1
      ? { sellersRisk: 1 - at(acceptableShare), buyersRisk: at(poorShare) }
      : planRisks(plan, lot, acceptableShare, limiting);
  return { ...plan, poorShare, ...risks };
}

function acceptedAt(plan: JudgingPlan, lotSize: number, share: number): number {
  const { byThickness } = plan;
  const lot = Math.max(lotSize, plan.sampleSize);
  if (!byThickness) return acceptanceInLot(plan, lot, Math.floor(lot * share));
  return share >= 1 ? 0 : variablesAcceptance(byThickness, share);
}

/** A share, from a first one upwards, beyond which the curve has little left to show. */
function endOfCurve(first: number, acceptedAt: (share: number) => number): number {
  let end = Math.min(1, first);
  while (end < 1 && acceptedAt(end) > SELDOM / 2) end = Math.min(1, 1.25 * end);
  return end;
}

function thicknessCurve(plan: ThicknessPlan, worst: number): OperatingPoint[] {
  return Array.from({ length: CURVE_POINTS }, (_, index) => {
    const share = (worst * index) / (CURVE_POINTS - 1);
    const isEnd = share === 0 || share === 1;
    return { share, acceptance: isEnd ? 1 - share : variablesAcceptance(plan, share) };
  });
}
