import type { BetterDelivery, DeliverySummary } from '$lib/engine/delivery';
import type { Catalogue, NumberWords } from '$lib/text';

/** Which of the deliveries is better and why, or that none is, in two sentences. */
export function sayBetter(
  { best, against, isShown, isMoreEven }: BetterDelivery<DeliverySummary>,
  nameOf: (id: string) => string,
  { delivery: { compare } }: Catalogue,
  numbers: NumberWords
): string {
  const counts = ({ outside, sampled }: DeliverySummary): string =>
    compare.counts(numbers.whole(outside), numbers.whole(sampled));
  const isAlike = best.outside * against.sampled === against.outside * best.sampled;
  const say = isShown ? compare.better : isAlike ? compare.alike : compare.notTold;
  const even = compare.even(numbers.mm(best.sdMm, 2), numbers.mm(against.sdMm, 2), isMoreEven);
  return say(nameOf(best.id), counts(best), nameOf(against.id), counts(against), even);
}
