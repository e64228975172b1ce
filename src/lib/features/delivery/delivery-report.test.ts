import { describe, expect, it } from 'vitest';
import type { Catalogue } from '$lib/text';
import { common } from '$lib/text/en/common.ts';
import { delivery } from '$lib/text/en/delivery.ts';
import { sayDecision } from './delivery-report.ts';

const text = { common, delivery } as Catalogue;

describe('the decision of the buyer', () => {
  it('is silent before signing and where it is the one of the findings', () => {
    expect(sayDecision('query', undefined, text)).toBeUndefined();
    expect(sayDecision('query', { verdict: 'query', note: 'x' }, text)).toBeUndefined();
  });

  it('is told beside the findings, with its reason where one was given', () => {
    expect(sayDecision('query', { verdict: 'refuse', note: 'no time' }, text)).toBe(
      'By the findings alone this delivery would be queried; the buyer refuses it, because: no time.'
    );
    expect(sayDecision('refuse', { verdict: 'take', note: '' }, text)).toBe(
      'By the findings alone this delivery would be refused; the buyer takes it.'
    );
  });
});
