import { describe, expect, it } from 'vitest';
import type { Verdict } from '$lib/engine/delivery';
import { type StoredEvent, foldAll, readEvent } from '$lib/journal';
import { type Catalogue, NumberWords } from '$lib/text';
import { exampleEvents } from '../../../seeds/worked-example.ts';
import { common } from '../text/en/common.ts';
import { delivery } from '../text/en/delivery.ts';
import { type Judged, judgeJob } from './delivery-judge.ts';
import { offeredSlates } from './delivery-sample.ts';
import { sayMessage, sayReason } from './delivery-report.ts';

const text = { common, delivery } as Catalogue;
const numbers = new NumberWords('en-GB');
const events = exampleEvents({
  jobId: '01890000-0000-7000-8000-000000000001',
  deviceId: '01890000-0000-7000-8000-000000000002',
  endsAt: 1_740_000_000_000,
  randomHex: () => '0123456789abcdef'
});

/** The example, its order made out with these fields. */
function judgedWith(fields: object): Judged {
  const changed = (event: StoredEvent): StoredEvent =>
    event.type === 'deliveryDeclared'
      ? { ...event, body: { ...event.body, ...fields } as typeof event.body }
      : event;
  const view = foldAll(events.map(changed).map(readEvent));
  const judgement = judgeJob(view, offeredSlates(view));
  if (!judgement.ok) throw new Error(judgement.reason);
  return judgement;
}

const example = judgedWith({});
const refused = judgedWith({ tolerancePercent: 5 });

const messageOf = (judged: Judged, answer: Verdict = judged.verdict.verdict, photos = 0): string =>
  sayMessage(judged, answer, { name: 'Shed', photos }, text, numbers);
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
      expect.stringMatching(/^The roof may run short: /)
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

  it('gives no ground for taking, and both kinds for a query', () => {
    expect(groundsIn(messageOf(refused, 'take'))).toEqual([]);
    expect(messageOf(refused, 'take')).not.toContain('Grounds');
    expect(groundsIn(messageOf(refused, 'query'))).toEqual(reasonsOf(refused, 'refuse', 'query'));
  });

  it('promises photos only where there are some', () => {
    expect(messageOf(example)).not.toContain('photo');
    expect(messageOf(example, 'query', 1)).toContain('method, readings and photos');
  });
});
