import { describe, expect, it } from 'vitest';
import type { BodyOf, StoredEvent } from '$lib/journal';
import { type Catalogue, NumberWords } from '$lib/text';
import { delivery } from '$lib/text/en/delivery.ts';
import { judgedExample, judgingExample } from '../../../../tests/support/test-delivery.ts';
import { sayMissing } from './delivery-missing.ts';

const text = { delivery } as Catalogue;
const numbers = new NumberWords('en-GB');
const missingOf = (
  judged: ReturnType<typeof judgedExample>,
  order?: Parameters<typeof sayMissing>[0]['order'],
  judging = judgingExample()
): string[] =>
  sayMissing(
    {
      judged,
      judging,
      soFar: undefined,
      order,
      progress: undefined,
      signed: undefined,
      isSignedStale: false
    },
    0,
    text,
    numbers
  );

describe('what a sheet lacks', () => {
  it('is no check made wherever chance picked a slate for it', () => {
    const missing = missingOf(judgedExample());
    expect(missing).toContain('No photos.');
    expect(missing.join()).not.toContain('measured on');
  });

  it('is whatever paper the claim would leave blank', () => {
    const order = {
      supplier: 'Heron',
      buyer: 'Wren',
      orderNumber: 'P-117',
      deliveryNote: 'DN-40',
      batches: 'B7',
      gauge: 'no. 3',
      answerBy: '2026-12-12'
    };
    expect(missingOf(judgedExample(), order)).toContain(
      'Not entered: gauge last checked on and who measured.'
    );
    const all = { ...order, gaugeCheckedOn: '2026-11-27', measuredBy: 'Siskin' };
    expect(missingOf(judgedExample(), all).join()).not.toContain('Not entered');
  });

  it('is a check left out on one of those slates', () => {
    let isLeftOut = false;
    const leaveOut = (event: StoredEvent): StoredEvent => {
      if (isLeftOut || event.type !== 'slateGauged') return event;
      const { sample: measured } = event.body as BodyOf<'slateGauged'>;
      if (!measured?.lengthMm) return event;
      isLeftOut = true;
      const sample = { ...measured, lengthMm: undefined };
      return { ...event, body: { ...event.body, sample } } as StoredEvent;
    };
    const judged = judgedExample(leaveOut);
    isLeftOut = false;
    const missing = missingOf(judged, undefined, judgingExample(leaveOut));
    expect(missing).toContain('Length: measured on 24 of the 25 asked.');
    expect(missing.join()).not.toContain('Width: measured');
  });
});
