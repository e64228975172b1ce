import type { Interval, SortingFinding } from '$lib/engine/delivery';
import type { Catalogue, NumberWords } from '$lib/text';
import { sayMoney } from './delivery-costs.ts';
import type { Judged } from './delivery-judge.ts';

/** One finding in short: where its whole text stands, its name, and what it says. */
export interface FindingInShort {
  readonly anchor: 'outside' | 'sorting' | 'roof';
  readonly title: string;
  readonly answer: string;
  readonly lines: readonly string[];
}

/** Whether sorting is needed, and if that is open, what would decide it. */
function sayNeeded(
  { isNeeded, missing }: SortingFinding,
  findings: Catalogue['delivery']['findings']
): string {
  return missing.includes('thicknesses') ? findings.neededTooFew : findings.needed[isNeeded];
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
  const { findings } = judged;
  const { outsideOrder, sorting, roof } = findings;
  const total = text.common.slates(findings.delivered);
  const { countInterval, attributes } = outsideOrder;
  const { evenness, usableInterval, need } = roof;
  const whole = ({ low, high }: Interval): [string, string] => [
    numbers.whole(low),
    numbers.whole(high)
  ];
  return [
    {
      anchor: 'outside',
      title: words.first,
      answer: words.outside(outsideOrder.outside, outsideOrder.judged),
      lines: [words.inDeliveryShort(...whole(countInterval), total), words.states[attributes.state]]
    },
    {
      anchor: 'sorting',
      title: words.second,
      answer: sayNeeded(sorting, words),
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
                numbers.decimal(evenness.unsortedKickersPer100, 1),
                numbers.decimal(evenness.sortedKickersPer100, 1),
                text.common.piles(evenness.piles)
              )
            ]
          : [])
      ]
    },
    {
      anchor: 'roof',
      title: words.third,
      answer: judged.hasRoof ? words.roof[roof.state] : words.noRoof,
      lines: [
        words.usableShort(
          words.interval(...whole(usableInterval)),
          total,
          judged.hasRoof ? numbers.whole(need.slates + need.reserve) : ''
        )
      ]
    }
  ];
}
