import type { PlanWithRisks } from '$lib/engine/delivery';
import type { Catalogue, NumberWords } from '$lib/text';

/**
 * A plan in words: slates, acceptance number and both risks, and for which draw they hold. List,
 * findings, sheet and message say it in these words, so that they cannot differ.
 */
export function sayPlan(
  plan: PlanWithRisks,
  { delivery }: Catalogue,
  numbers: NumberWords
): { readonly rule: string; readonly risks: string } {
  const { sampleSize, acceptAtMost, acceptableShare, poorShare, byThickness } = plan;
  const { sample } = delivery;
  const percent = (share: number): string => numbers.percent(share, 1);
  const byCount = sample.planRule(numbers.whole(sampleSize), numbers.whole(acceptAtMost));
  return {
    rule: byThickness
      ? `${byCount} ${sample.acceptShare(numbers.percent(byThickness.allowedShare, 2))}`
      : byCount,
    risks: [
      sample.sellersRisk(percent(acceptableShare), percent(plan.sellersRisk)),
      sample.buyersRisk(percent(poorShare), percent(plan.buyersRisk)),
      ...(plan.isInFewLayers ? [sample.risksOneByOne] : [])
    ].join(' ')
  };
}
