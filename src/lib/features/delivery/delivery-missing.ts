import type { Catalogue, NumberWords } from '$lib/text';
import type { DeliveryState } from './delivery.svelte.ts';

/** What the sheet lacks, in words: each a weak place in an argument. */
export function sayMissing(
  state: Pick<DeliveryState, 'judged' | 'soFar' | 'order' | 'progress' | 'signed'>,
  photos: number,
  { delivery }: Catalogue,
  numbers: NumberWords
): string[] {
  const items = delivery.sheet.missingItems;
  const { judged, soFar, order, progress, signed } = state;
  const missing: string[] = [];
  if (order?.tolerancePercent === undefined) missing.push(items.tolerance);
  if (!order?.agreed?.length) missing.push(items.agreed);
  if (!order?.arrivedOn || order.daysToClaim === undefined) missing.push(items.arrival);
  if (!order?.stackOf100Mm) missing.push(items.label);
  const open = progress ? progress.places.length - progress.measured : 0;
  if (open > 0) missing.push(items.places(open));
  const evidence = judged
    ? { ...judged.findings.outsideOrder, stack: judged.findings.stack }
    : soFar?.found;
  if (evidence) {
    const { stack, byCheck } = evidence;
    if (!stack.ok && stack.reason === 'stack-not-measured') missing.push(items.stack);
    for (const { check, measured } of byCheck)
      if (measured < evidence.judged)
        missing.push(
          items.check(
            delivery.checks[check],
            numbers.whole(measured),
            numbers.whole(evidence.judged)
          )
        );
    if (!(judged ?? soFar)?.hasRoof) missing.push(items.roof);
  }
  if (photos === 0) missing.push(items.photos);
  if (!signed) missing.push(items.unsigned);
  return missing;
}
