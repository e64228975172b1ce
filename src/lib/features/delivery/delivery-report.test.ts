import { describe, expect, it } from 'vitest';
import type { Verdict } from '$lib/engine/delivery';
import type { StoredEvent } from '$lib/journal';
import { type Catalogue, NumberWords } from '$lib/text';
import { common } from '$lib/text/en/common.ts';
import { delivery } from '$lib/text/en/delivery.ts';
import type { Judged } from './delivery-judge.ts';
import { sayDecision, sayMessage, sayReason } from './delivery-report.ts';
import { judgedExample } from '../../../../tests/support/test-delivery.ts';

const text = { common, delivery } as Catalogue;
const numbers = new NumberWords('en-GB');

/** The example, its order made out with these fields. */
function judgedWith(fields: object): Judged {
  return judgedExample((event) =>
    event.type === 'deliveryDeclared'
      ? ({ ...event, body: { ...event.body, ...fields } } as StoredEvent)
      : event
  );
}

const example = judgedExample();
const refused = judgedWith({ tolerancePercent: 5 });

/** The message, signed with an answer and a note, or not signed. */
function messageOf(judged: Judged, verdict?: Verdict, note = '', photos = 0): string {
  const signed = verdict && { verdict, note, journalSha256: 'abc' };
  return sayMessage(judged, { name: 'Shed', photos, signed }, text, numbers);
}
const groundsIn = (message: string): string[] =>
  message
    .split('\n')
    .filter((line) => line.startsWith('– '))
    .map((line) => line.slice(2));
const reasonsOf = (judged: Judged, ...weights: string[]): string[] =>
  judged.verdict.reasons
    .filter(({ weight }) => weights.includes(weight))
    .map((reason) => sayReason(reason, text, numbers));

describe('the message to the supplier', () => {
  it('of the worked example queries on the one ground that the verdict has', () => {
    expect(example.verdict.verdict).toBe('query');
    expect(groundsIn(messageOf(example))).toEqual(reasonsOf(example, 'query'));
    expect(groundsIn(messageOf(example))).toEqual([
      expect.stringMatching(/^The roof is covered, the reserve may run short: /)
    ]);
  });

  it('tells what the sample found as within the plan where the plan accepts', () => {
    expect(messageOf(example)).toMatch(
      /^4 of them are outside the order, within what the plan accepts \(up to 7\); /m
    );
  });

  it('of a refused delivery refuses on what speaks for refusing, and on nothing else', () => {
    expect(refused.verdict.verdict).toBe('refuse');
    expect(groundsIn(messageOf(refused))).toEqual(reasonsOf(refused, 'refuse'));
    expect(groundsIn(messageOf(refused))).toHaveLength(1);
    expect(messageOf(refused)).toMatch(/outside the order, more than the plan accepts \(up to 7\)/);
  });

  it('signed as the findings say is worded as before it was signed, with the fingerprint', () => {
    expect(messageOf(example, 'query', 'As agreed.')).toBe(
      `${messageOf(example)}\nJournal fingerprint abc`
    );
  });

  it('signed otherwise states the findings as they are, then the answer with its reason', () => {
    const lines = messageOf(example, 'refuse', 'the barn waits for no second look').split('\n');
    expect(lines.slice(4, 8)).toEqual([
      'By the findings alone this delivery would be queried.',
      'Ground:',
      `– ${reasonsOf(example, 'query')[0]}`,
      'We refuse it instead and hold it unfixed, because: the barn waits for no second look.'
    ]);
    expect(lines.join()).not.toContain('We query');
  });

  it('tells what speaks for refusing even where the buyer takes or queries', () => {
    for (const answer of ['take', 'query'] as const) {
      const message = messageOf(refused, answer, 'the price came down');
      expect(groundsIn(message)).toEqual(reasonsOf(refused, 'refuse'));
      expect(message).toContain('By the findings alone this delivery would be refused.');
      expect(message).toMatch(/^We (take|query) it .*, because: the price came down\.$/m);
    }
  });

  it('gives no ground where the findings alone would take it, and no reason that was not given', () => {
    const none = {
      ...example,
      verdict: { ...example.verdict, verdict: 'take', reasons: [] }
    } as Judged;
    expect(messageOf(none)).toContain('We take the delivery.');
    const message = messageOf(none, 'refuse');
    expect(groundsIn(message)).toEqual([]);
    expect(message).not.toMatch(/Grounds?:/);
    expect(message).toContain('We refuse it instead and hold it unfixed.');
    expect(message).not.toContain('because');
  });

  it('promises photos only where there are some', () => {
    expect(messageOf(example)).not.toContain('photo');
    expect(messageOf(example, 'query', '', 1)).toContain('method, readings and photos');
  });
});

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
