import type { Catalogue, NumberWords } from '$lib/text';
import type { DeliveryState } from './delivery.svelte.ts';

/** What the sheet lacks, in words: each a weak place in an argument. */
export function sayMissing(
  state: Pick<DeliveryState, 'judged' | 'order' | 'progress' | 'signed'>,
  photos: number,
  { delivery }: Catalogue,
  numbers: NumberWords
): string[] {
  const items = delivery.sheet.missingItems;
  const { judged, order, progress, signed } = state;
  const missing: string[] = [];
  if (order?.tolerancePercent === undefined) missing.push(items.memory);
  if (!order?.arrivedOn || order.daysToClaim === undefined) missing.push(items.arrival);
  if (!order?.stackOf100Mm) missing.push(items.label);
  const open = progress ? progress.places.length - progress.measured : 0;
  if (open > 0) missing.push(items.places(open));
  if (judged) {
    const { stack, outsideOrder } = judged.findings;
    if (!stack.ok && stack.reason === 'stack-not-measured') missing.push(items.stack);
    for (const { check, measured } of outsideOrder.byCheck)
      if (measured < outsideOrder.judged)
        missing.push(
          items.check(
            delivery.checks[check],
            numbers.whole(measured),
            numbers.whole(outsideOrder.judged)
          )
        );
    if (!judged.hasRoof) missing.push(items.roof);
  }
  if (photos === 0) missing.push(items.photos);
  if (!signed) missing.push(items.unsigned);
  return missing;
}
