import type { Catalogue, NumberWords } from '$lib/text';
import type { ListCoverage } from '$lib/job';
import type { SoFar } from './delivery-judge.ts';

/** How far the list is measured, and which pallets that tells of. */
export function sayCoverage(
  { places, measured, isFirst, reached, unreached, lost }: ListCoverage,
  { delivery }: Catalogue,
  numbers: NumberWords
): string {
  const words = delivery.findings.soFar;
  const head = words.measured(numbers.whole(measured), numbers.whole(places), isFirst);
  if (unreached.length === 0) return words.everyPallet(head, places - measured);
  const waiting = unreached.filter((label) => !lost.includes(label));
  const parts = [
    reached.length > 0 ? words.onlyPallets(head, reached) : head,
    ...(waiting.length > 0 ? [words.unknownPallets(waiting)] : []),
    ...(lost.length > 0 ? [words.lostPallets(lost)] : [])
  ];
  return `${parts.join('; ')}.`;
}

/** What the plan says before the end of what is outside for certain: only what the open places cannot turn. */
export function sayPlanSoFar(
  { found: { plan, judged, attributesForCertain } }: Pick<SoFar, 'found'>,
  { delivery }: Catalogue
): string {
  const open = plan.sampleSize - judged;
  const { state } = attributesForCertain;
  return delivery.findings.soFar.plan[state](plan.sampleSize, plan.acceptAtMost, open);
}

/** What would finish the list. */
export function sayToFinish({ open, lost }: ListCoverage, { delivery }: Catalogue): string {
  const words = delivery.findings.soFar;
  const measurable = open.filter(({ label }) => !lost.includes(label));
  return measurable.length > 0 ? words.finish(measurable) : words.finishNothing;
}
