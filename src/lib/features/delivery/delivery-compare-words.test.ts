import { describe, expect, it } from 'vitest';
import { type DeliverySummary, betterDelivery } from '$lib/engine/delivery';
import { type Catalogue, NumberWords } from '$lib/text';
import { common } from '$lib/text/en/common.ts';
import { delivery } from '$lib/text/en/delivery.ts';
import { sayBetter } from './delivery-compare-words.ts';

const text = { common, delivery } as Catalogue;
const numbers = new NumberWords('en-GB');

const of = (id: string, outside: number, sampled: number, sdMm: number): DeliverySummary => ({
  ...{ id, supplier: '', arrivalDate: '', meanMm: 6, sorted: 0, setAside: 0 },
  ...{ outside, sampled, sdMm }
});
function said(...deliveries: DeliverySummary[]): string {
  const better = betterDelivery(deliveries);
  if (!better) throw new Error('nothing was compared');
  return sayBetter(better, (id) => `Job ${id}`, text, numbers);
}

describe('the sentence that compares deliveries', () => {
  it('calls none of two better that have as many outside', () => {
    const words = said(of('a', 3, 80, 0.9), of('b', 3, 80, 0.6));
    expect(words).toMatch(/^Job b and Job a have as many outside: 3 of 80 slates .*, and 3 of 80/);
    expect(words).not.toContain('better');
  });

  it('says that one looks better where chance may explain it, and is better where it does not', () => {
    expect(said(of('a', 2, 80, 0.9), of('b', 4, 80, 0.6))).toMatch(
      /^Job a looks better than Job b/
    );
    expect(said(of('a', 2, 80, 0.9), of('b', 20, 80, 0.6))).toMatch(
      /^Job a is better than Job b: 2/
    );
  });
});
