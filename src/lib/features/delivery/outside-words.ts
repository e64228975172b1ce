import type { Interval, OutsideOrderFinding, SampleSoFar } from '$lib/engine/delivery';
import type { Catalogue, NumberWords } from '$lib/text';

/** Slates outside, told as two counts that cannot be played against one another. */
export interface SaidOutside {
  /** Slates of the sample outside a limit of the order: the only ones that can refuse. */
  readonly counted: string;
  /** What that count says of the whole delivery; empty before the sample is finished. */
  readonly whole: string;
  /** The count with those that are only asked about; empty where there are none. */
  readonly withAsked: string;
}

type Counts = Pick<
  SampleSoFar,
  'judged' | 'outside' | 'outsideForCertain' | 'attributes' | 'attributesForCertain'
>;

/** The second count, how it is made up of the first, and what the plan says of it. */
function sayWithAsked(found: Counts, { delivery }: Catalogue, range = ''): string {
  const { findings } = delivery;
  const { outside, outsideForCertain, judged, attributes, attributesForCertain } = found;
  if (outside === outsideForCertain) return '';
  const plan = attributesForCertain.state === 'refused' ? 'refusedAnyway' : attributes.state;
  return [
    findings.withAsked(outside, outsideForCertain, judged),
    range,
    findings.planWithAsked[plan]
  ]
    .filter(Boolean)
    .join(' ');
}

/** How many slates of the delivery a sample leaves possible. */
function sayRange(
  { low, high }: Interval,
  delivered: number,
  { delivery, common }: Catalogue,
  numbers: NumberWords
): string {
  const { findings } = delivery;
  const slates = common.slates(delivered);
  return findings.inDelivery(findings.between(numbers.whole(low), numbers.whole(high), slates));
}

/** Slates outside in a finished sample, and what they say of the whole delivery. */
export function sayOutside(
  found: OutsideOrderFinding,
  delivered: number,
  text: Catalogue,
  numbers: NumberWords
): SaidOutside {
  return {
    counted: text.delivery.findings.outside(found.outsideForCertain, found.judged),
    whole: sayRange(found.countIntervalForCertain, delivered, text, numbers),
    withAsked: sayWithAsked(found, text, sayRange(found.countInterval, delivered, text, numbers))
  };
}

/** Slates outside among those measured so far: counts alone. */
export function sayOutsideSoFar(found: Counts, text: Catalogue): SaidOutside {
  return {
    counted: text.delivery.findings.soFar.outside(found.outsideForCertain, found.judged),
    whole: '',
    withAsked: sayWithAsked(found, text)
  };
}
