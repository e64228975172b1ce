import {
  type JudgingPlan,
  type VariablesPlan,
  acceptance,
  attributesPlan,
  variablesPlan
} from '$lib/engine/delivery';
import type { SampleDraw } from '$lib/job';

/** Share outside that a list without a plan of its own is taken to accept. Ours: a starting value. */
const STARTING_SHARE = 0.04;
/** A delivery at the acceptable share passes at least this often. Ours: a starting value. */
const STARTING_ACCEPTANCE = 0.95;

/** How often a delivery with a share outside is to pass, each from 0 to 1. */
export interface AcceptancePoint {
  readonly share: number;
  readonly acceptance: number;
}

/** A good delivery that is seldom refused, and a poor one that is seldom accepted. */
export interface RiskPoints {
  readonly good: AcceptancePoint;
  readonly poor: AcceptancePoint;
}

/**
 * The plan that a list was drawn by, as far as it named one, and the variables plan where it was
 * drawn by that. A list that named no plan accepts what a delivery with 4 % outside passes.
 */
export function plansOf(
  { value }: SampleDraw,
  delivered: number
): { plan: JudgingPlan; variables?: VariablesPlan } {
  const sampleSize = value.planSize ?? value.positions.length;
  const acceptableShare =
    value.good?.share ?? (value.aqlPercent ? value.aqlPercent / 100 : STARTING_SHARE);
  const acceptAtMost = value.acceptAtMost ?? leastAcceptance(sampleSize, acceptableShare);
  const plain = { sampleSize, acceptAtMost, acceptableShare };
  if (value.plan === 'attributes') {
    const aql = value.aqlPercent as Parameters<typeof attributesPlan>[2];
    const table = attributesPlan(delivered, value.level ?? 'II', aql, value.severity ?? 'normal');
    if (table.ok) return { plan: { ...plain, basis: table.plan.basis } };
  }
  if (value.plan === 'variables') {
    const aql = value.aqlPercent as Parameters<typeof variablesPlan>[1];
    const table = variablesPlan(delivered, aql);
    if (table.ok)
      return {
        plan: { ...plain, basis: [{ standing: 'computed', source: 'binomial distribution' }] },
        variables: table.plan
      };
  }
  const isOwn = value.acceptAtMost !== undefined;
  return {
    plan: {
      ...plain,
      basis: [
        isOwn
          ? { standing: 'computed', source: 'binomial distribution, from two risk points' }
          : { standing: 'common practice', source: '' }
      ]
    }
  };
}

/** The two points that the plan of a list was chosen by; undefined where it names none. */
export function riskPointsOf({ value }: SampleDraw): RiskPoints | undefined {
  const { acceptAtMost, good, poor } = value;
  return acceptAtMost !== undefined && good && poor ? { good, poor } : undefined;
}

/** The least acceptance number with which a delivery at `share` passes at least 95 times in 100. */
export function leastAcceptance(sampleSize: number, share: number): number {
  let acceptAtMost = 0;
  while (acceptance({ sampleSize, acceptAtMost }, share) < STARTING_ACCEPTANCE) acceptAtMost++;
  return acceptAtMost;
}
