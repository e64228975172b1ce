import {
  type JudgingPlan,
  type VariablesPlan,
  acceptance,
  attributesPlan,
  planForSize,
  variablesPlan
} from '$lib/engine/delivery';
import type { SampleDraw } from '$lib/job';

/** Share outside that a list without a plan of its own is taken to accept. Ours: a starting value. */
const STARTING_SHARE = 0.04;
/** A delivery at the acceptable share passes at least this often. Ours: a starting value. */
const STARTING_ACCEPTANCE = 0.95;

/**
 * The plan that a list was drawn by, as far as it named one, for the slates it holds to, and the
 * variables plan where it was drawn by that. A list that named no plan accepts what a delivery with
 * 4 % outside passes.
 *
 * @param slates those of the list and those of earlier lists that count beside them
 * @param earlier lists before it; what was drawn in few layers is so told if slates of theirs count too
 */
export function plansOf(
  draw: SampleDraw,
  delivered: number,
  slates = draw.value.positions.length,
  earlier: readonly SampleDraw[] = []
): { plan: JudgingPlan; variables?: VariablesPlan } {
  const { plan, variables } = planAsNamed(draw, delivered);
  const isBeside = slates > draw.value.positions.length;
  const lists = [draw, ...(isBeside ? earlier.filter(({ id }) => id < draw.id) : [])];
  const isInFewLayers = lists.some(({ value }) => value.fewLayers);
  return {
    plan: { ...planForSize(plan, slates), ...(isInFewLayers && { isInFewLayers }) },
    ...(variables && { variables })
  };
}

function planAsNamed(
  { value }: SampleDraw,
  delivered: number
): { plan: JudgingPlan; variables?: VariablesPlan } {
  const sampleSize = value.planSize ?? value.positions.length;
  const acceptableShare =
    value.good?.share ?? (value.aqlPercent ? value.aqlPercent / 100 : STARTING_SHARE);
  const acceptAtMost = value.acceptAtMost ?? leastAcceptance(sampleSize, acceptableShare);
  const isOwn = value.acceptAtMost !== undefined;
  const plain = {
    sampleSize,
    acceptAtMost,
    acceptableShare,
    ...(isOwn && value.good && { promised: value.good.acceptance }),
    ...(isOwn && value.poor && { poorShare: value.poor.share })
  };
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
        plan: {
          ...plain,
          byThickness: table.plan,
          basis: [{ standing: 'computed', source: 'binomial distribution' }]
        },
        variables: table.plan
      };
  }
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

/** The least acceptance number with which a delivery at `share` passes at least 95 times in 100. */
export function leastAcceptance(sampleSize: number, share: number): number {
  let acceptAtMost = 0;
  while (acceptance({ sampleSize, acceptAtMost }, share) < STARTING_ACCEPTANCE) acceptAtMost++;
  return acceptAtMost;
}
