import type { Interval } from '$lib/engine/delivery';
import type { Catalogue, NumberWords } from '$lib/text';
import { sayMoney } from './delivery-costs.ts';
import type { Judged } from './delivery-judge.ts';
import { sayOutside } from './outside-words.ts';

/** One finding in short: its name, one line that says it, and what a sheet says besides. */
export interface FindingInShort {
  readonly anchor: 'outside' | 'sorting' | 'roof';
  readonly title: string;
  /** The finding in one line. */
  readonly line: string;
  readonly answer: string;
  readonly lines: readonly string[];
}

/** The three findings in short, in their order; without what sorting costs unless `hasCosts`. */
export function sayFindings(
  judged: Judged,
  currency: string,
  text: Catalogue,
  numbers: NumberWords,
  hasCosts = true
): FindingInShort[] {
  const words = text.delivery.findings;
  const { findings, hasRoof } = judged;
  const { outsideOrder, sorting, roof } = findings;
  const total = text.common.slates(findings.delivered);
  const { outside, outsideForCertain, judged: looked, attributes } = outsideOrder;
  const said = sayOutside(outsideOrder, findings.delivered, text, numbers);
  const { evenness, need } = roof;
  const whole = ({ low, high }: Interval): [string, string] => [
    numbers.whole(low),
    numbers.whole(high)
  ];
  const usable = words.interval(...whole(roof.usableInterval));
  const wanted = hasRoof ? numbers.whole(need.slates + need.reserve) : '';
  return [
    {
      anchor: 'outside',
      title: words.first,
      line: words.short.outside(
        outsideForCertain,
        outside - outsideForCertain,
        looked,
        attributes.acceptAtMost
      ),
      answer: said.counted,
      lines: [
        words.inDeliveryShort(
          ...whole(outsideOrder.countIntervalForCertain),
          total,
          outsideOrder.byCheck.some(({ measured }) => measured < looked)
        ),
        words.byPlan[outsideOrder.attributesForCertain.state](attributes.acceptAtMost, looked),
        ...(said.withAsked ? [said.withAsked] : [])
      ]
    },
    {
      anchor: 'sorting',
      title: words.second,
      line: words.short.needed[sorting.isNeeded](evenness?.unsortedKickersPer100),
      answer: sorting.missing.includes('thicknesses')
        ? words.neededTooFew
        : words.needed[sorting.isNeeded],
      lines: [
        ...(hasCosts && sorting.cost && sorting.isNeeded !== 'no'
          ? [
              words.costShort(
                sayMoney(sorting.cost, currency, text, numbers),
                sorting.isNeeded === 'yes',
                judged.pace?.measuredPerHour !== undefined
              )
            ]
          : []),
        ...(evenness
          ? [
              words.evennessShort(
                evenness.unsortedKickersPer100,
                evenness.sortedKickersPer100,
                text.common.piles(evenness.piles)
              )
            ]
          : [])
      ]
    },
    {
      anchor: 'roof',
      title: words.third,
      line: hasRoof
        ? words.short.usable(words.short.roof[roof.state], usable, wanted)
        : words.short.noRoof(usable),
      answer: hasRoof ? words.roof[roof.state] : words.noRoof,
      lines: [words.usableShort(usable, total, wanted)]
    }
  ];
}
