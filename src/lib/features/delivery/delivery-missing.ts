import type { Catalogue, NumberWords } from '$lib/text';
import type { DeliveryState } from './delivery.svelte.ts';

/** What a claim names beside its findings; an order of one product need not name it. */
const PAPERS = [
  'buyer',
  'orderNumber',
  'deliveryNote',
  'batches',
  'gauge',
  'gaugeCheckedOn',
  'measuredBy',
  'answerBy'
] as const;

/** Checks of the full check, by what holds them. */
const SIZES = {
  length: 'lengthMm',
  width: 'widthMm',
  squareness: 'squarenessMm',
  edge: 'edgeMm',
  flatness: 'bowMm'
} as const;

/** Slates that chance picked for the full check, and those of them that a check was made on. */
function askedInFull(
  { judging, progress }: Pick<DeliveryState, 'judging' | 'progress'>,
  check: keyof typeof SIZES
): { readonly measured: number; readonly of: number } {
  const full = judging.filter(({ isFull }) => isFull);
  const open = progress?.places.filter(({ isFull, isMeasured }) => isFull && !isMeasured) ?? [];
  return {
    measured: full.filter(({ measured }) => measured[SIZES[check]] !== undefined).length,
    of: full.length + open.length
  };
}

/** What the sheet lacks, in words: each a weak place in an argument. */
export function sayMissing(
  state: Pick<
    DeliveryState,
    'judged' | 'soFar' | 'order' | 'progress' | 'signed' | 'isSignedStale' | 'judging'
  >,
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
  const papers = PAPERS.filter((paper) => !order?.[paper]);
  if (papers.length > 0)
    missing.push(items.papers(papers.map((paper) => delivery.order[paper].toLocaleLowerCase())));
  const open = progress ? progress.places.length - progress.measured : 0;
  if (open > 0) missing.push(items.places(open));
  const evidence = judged
    ? { ...judged.findings.outsideOrder, stack: judged.findings.stack }
    : soFar?.found;
  if (evidence) {
    const { stack, byCheck } = evidence;
    if (!stack.ok && stack.reason === 'stack-not-measured') missing.push(items.stack);
    for (const found of byCheck) {
      const { check, measured } = found;
      const drawn = 'drawn' in found ? found.drawn : undefined;
      // Measured wherever chance picked a slate for the full check: nothing is missing.
      const isFull = drawn !== undefined && drawn.slates < evidence.judged;
      const asked = check in SIZES ? askedInFull(state, check as keyof typeof SIZES) : undefined;
      if (asked && asked.of > 0) {
        if (asked.measured < asked.of)
          missing.push(
            items.checkAsked(
              delivery.checks[check],
              numbers.whole(asked.measured),
              numbers.whole(asked.of)
            )
          );
      } else if (measured < evidence.judged && !isFull)
        missing.push(
          items.check(
            delivery.checks[check],
            numbers.whole(measured),
            numbers.whole(evidence.judged)
          )
        );
    }
    if (!(judged ?? soFar)?.hasRoof) missing.push(items.roof);
  }
  if (photos === 0) missing.push(items.photos);
  if (!signed) missing.push(items.unsigned);
  else if (state.isSignedStale) missing.push(items.stale);
  return missing;
}
