import { describe, expect, it } from 'vitest';
import type { Verdict } from '$lib/engine/delivery';
import type { StoredEvent } from '$lib/journal';
import { type Catalogue, NumberWords } from '$lib/text';
import { common } from '$lib/text/en/common.ts';
import { delivery } from '$lib/text/en/delivery.ts';
import { sort } from '$lib/text/en/sort.ts';
import type { Judged } from './delivery-judge.ts';
import { sayFaults, sayFound, sayLimits } from './claim-words.ts';
import { sayMessage } from './delivery-message.ts';
import { judgedExample } from '../../../../tests/support/test-delivery.ts';

const text = { common, delivery, sort } as Catalogue;
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

const JOB = { name: 'Shed', photos: 0, coursesLaid: 0 };

/** The message, signed with an answer and a note, or not signed. */
function messageOf(judged: Judged, verdict?: Verdict, note = '', job: object = {}): string {
  const signed = verdict && { verdict, note, journalSha256: 'abc' };
  return sayMessage(judged, { ...JOB, signed, ...job }, text, numbers);
}
const faultsIn = (message: string): string[] =>
  message
    .split('\n')
    .filter((line) => line.startsWith('– '))
    .map((line) => line.slice(2));

describe('the message to the supplier', () => {
  it('says that the risks are those of slates drawn one by one, where few layers were opened', () => {
    const { risksOneByOne } = delivery.sample;
    expect(messageOf(example)).not.toContain(risksOneByOne);
    const few = judgedExample((event) =>
      event.type === 'sampleDrawn'
        ? ({ ...event, body: { ...event.body, fewLayers: true } } as StoredEvent)
        : event
    );
    expect(messageOf(few)).toContain(risksOneByOne);
  });

  it('tells the certain faults, those asked about and the range as the claim does', () => {
    const { certain, queried } = sayFaults(example, text, numbers);
    expect(certain).toEqual([
      'Thickness 3.90 mm to 8.10 mm: 1 of 100 slates measured fails; order, line 2 (set by the order).',
      'Inclusion: 1 slate; order, line 4 (set by the order).'
    ]);
    expect(queried).toEqual(['Ring: 3 of 100 slates tapped are dull; common practice, no source.']);
    const message = messageOf(example);
    expect(faultsIn(message)).toEqual([...certain, ...queried]);
    const { parts, leftOut } = sayFound(example, text, numbers);
    for (const words of [
      delivery.claim.certain(2, 100),
      delivery.claim.queried,
      ...parts.map(({ whole }) => whole),
      leftOut
    ])
      expect(message.split('\n')).toContain(words);
  });

  // Ranges from scipy 1.17: counts whose hypergeometric tails at what was found are above 0.025.
  it('tells two counts, each with its range and with what the plan says of it', () => {
    const lines = messageOf(example).split('\n');
    const first = lines.indexOf('2 of 100 slates of the sample are outside a limit of the order:');
    expect(lines[first + 3]).toBe(
      'In the whole delivery: 11 to 293 of the 4,200 slates (95 % confidence). 7 of 100 may be outside: the plan accepts.'
    );
    const second = lines.indexOf(delivery.claim.queried);
    expect(lines[second + 2]).toBe(
      'With those asked about, 4 of 100 are outside: 2 by a limit of the order, 2 only by one that it does not confirm. In the whole delivery: 48 to 413 of the 4,200 slates (95 % confidence). With them too the plan accepts.'
    );
    expect(lines.filter((line) => /plan (accepts|refuses)/.test(line))).toHaveLength(2);
  });

  it('names one count where every slate outside is so by a limit of the order', () => {
    const agreed = [
      { limit: 'ring', where: 'terms, clause 4' },
      { limit: 'inclusion', where: 'order, line 4' }
    ];
    const message = messageOf(judgedWith({ agreed }));
    expect(message).toContain('4 of 100 slates of the sample are outside a limit of the order:');
    expect(message).not.toContain('asked about');
  });

  it('says that the plan refuses only with those asked about, where it is so', () => {
    const dull = judgedExample((event) =>
      event.type === 'slateGauged' && event.body.sample
        ? ({
            ...event,
            body: { ...event.body, sample: { ...event.body.sample, ring: 'dull' } }
          } as StoredEvent)
        : event
    );
    expect(dull.verdict.verdict).toBe('query');
    const message = messageOf(dull);
    expect(message).toMatch(/7 of 100 may be outside: the plan accepts\.$/m);
    expect(message).toContain('With those asked about, 100 of 100 are outside: 2 by a limit');
    expect(message).toMatch(/ Only with them does the plan refuse\.$/m);
    // Here every dull slate is too thick or too thin as well.
    expect(messageOf(refused)).toContain('All these slates are outside a limit of the order too');
    expect(messageOf(refused)).not.toContain('With those asked about');
    const tight = judgedWith({ tolerancePercent: 12 });
    expect(messageOf(tight)).toMatch(/ The plan refuses without them already\.$/m);
  });

  it('tells the shortage, what is asked for and by when', () => {
    const order = {
      supplier: '',
      orderNumber: 'P-117',
      deliveryNote: 'DN-40',
      arrivedOn: '2026-12-01',
      asks: ['credit', 'collection'],
      answerBy: '2026-12-12'
    };
    const short = judgedWith({ slatesOrdered: example.findings.delivered + 50 });
    const message = messageOf(short, undefined, '', { order });
    expect(message).toContain('on the pallets 4,200. 50 slates short.');
    expect(message).toMatch(
      /^Delivery for “Shed”, order P-117, delivery note DN-40, arrived 1 Dec 2026\.\n/
    );
    expect(message).toContain('We ask for a credit and collection of the slates, by 12 Dec 2026.');
    expect(message).toContain('Until then we hole and fix none of these slates');
    expect(messageOf(short)).toContain('We ask for your answer.');
  });

  it('has no word of roof, sorting and costs, and no note to the buyer', () => {
    const codes = example.verdict.reasons.map(({ code }) => code);
    expect(codes).toContain('roof-reserve-uncertain');
    const noted = judgedWith({ tolerancePercent: undefined, stackOf100Mm: undefined });
    for (const judged of [example, refused, noted])
      for (const signed of [undefined, 'take', 'refuse'] as const)
        expect(messageOf(judged, signed)).not.toMatch(
          /\broof\b|reserve|sorting\b(?<!drawn by chance before sorting)|joints|usable|cost|EUR|\benter\b|no stack|ask which|used for the verdict/i
        );
    expect(messageOf(noted)).toContain('tell us which one holds.');
    expect(messageOf(noted)).toContain('The label does not say how thick 100 slates pack.');
  });

  it('says where a check was left out that more may be outside, and not where none was', () => {
    const left = 'A slate not looked at counts as inside there, so there may be more.';
    expect(messageOf(example)).toContain('Not looked at on every slate: length, width, ');
    expect(messageOf(example)).toContain(left);
    const slates = { ...example.findings.outsideOrder };
    const byCheck = slates.byCheck.map((check) => ({ ...check, measured: slates.judged }));
    const findings = { ...example.findings, outsideOrder: { ...slates, byCheck } };
    expect(messageOf({ ...example, findings })).not.toContain(left);
  });

  it('tells what the plan says of the sample', () => {
    expect(messageOf(example)).toContain('We measured 100 slates drawn by chance before sorting.');
    expect(messageOf(example)).toMatch(/^In the whole delivery: .*: the plan accepts\.$/m);
    expect(refused.verdict.verdict).toBe('refuse');
    expect(messageOf(refused)).toMatch(/^In the whole delivery: .*: the plan refuses\.$/m);
  });

  it('once courses are laid neither says that all is unfixed nor that none is holed', () => {
    const answers = [undefined, 'query', 'refuse'] as const;
    for (const judged of [example, refused])
      for (const signed of answers) {
        const message = messageOf(judged, signed, 'no', { coursesLaid: 3 });
        expect(message).not.toMatch(/unfixed|fix none/);
        expect(message).toContain('3 courses were laid before; we claim for the slates not laid');
      }
  });

  it('names a limit with the decimals that it has', () => {
    const agreed = [{ limit: 'length', where: 'order, line 1', limitMm: 2.5 }];
    const { limits } = judgedWith({ agreed });
    const lengths = sayLimits({ ...example, limits }, text, numbers).agreed;
    expect(lengths.map(({ figure }) => figure)).toContain('497.5 mm to 502.5 mm');
  });

  it('holds nothing back of a delivery that is taken, and asks only for what was chosen', () => {
    const taken = messageOf(refused, 'take', 'the price came down');
    expect(taken).not.toMatch(/We ask|Until then|keep/);
    // What the order asks for is for whoever queries or refuses.
    const order = { supplier: '', asks: ['replacement'], answerBy: '2026-12-12' };
    const unasked = messageOf(refused, 'take', 'rain is coming', { order });
    expect(unasked).toContain('We take it all the same, because: rain is coming.');
    expect(unasked).not.toMatch(/ask for/);
    const sign = { verdict: 'take', note: 'rain is coming', journalSha256: 'abc' };
    const credited = messageOf(refused, undefined, '', {
      order,
      signed: { ...sign, asks: ['credit'] }
    });
    expect(credited).toMatch(/^We take it and ask for a credit, by 12 Dec 2026\.$/m);
    expect(credited).not.toMatch(/replacement/);
  });

  it('asks for nothing where the findings take it and nobody signed', () => {
    const verdict = { ...example.verdict, verdict: 'take' as const, reasons: [] };
    const order = { supplier: '', asks: ['replacement'] };
    const message = messageOf({ ...example, verdict }, undefined, '', { order });
    expect(message).toContain('We take the delivery.');
    expect(message).not.toMatch(/ask for/);
  });

  it('signed as the findings say is worded as before it was signed, with the fingerprint', () => {
    expect(messageOf(example, 'query', 'As agreed.')).toBe(
      `${messageOf(example)}\nJournal fingerprint abc`
    );
  });

  it('signed otherwise states the findings as they are, then the answer with its reason', () => {
    const lines = messageOf(example, 'refuse', 'the barn waits for no second look').split('\n');
    const at = lines.indexOf('By the findings alone this delivery would be queried.');
    expect(lines[at + 1]).toBe(
      'We refuse it instead and hold it unfixed, because: the barn waits for no second look.'
    );
    expect(lines.join()).not.toContain('We query');
  });

  it('tells the faults even where the buyer takes or queries', () => {
    for (const answer of ['take', 'query'] as const) {
      const message = messageOf(refused, answer, 'the price came down');
      expect(faultsIn(message)).toEqual(faultsIn(messageOf(refused)));
      expect(faultsIn(message).length).toBeGreaterThan(0);
      expect(message).toContain('By the findings alone this delivery would be refused.');
      expect(message).toMatch(/^We (take|query) it .*, because: the price came down\.$/m);
    }
  });

  it('gives no reason that was not given', () => {
    const none = {
      ...example,
      verdict: { ...example.verdict, verdict: 'take', reasons: [] }
    } as Judged;
    expect(messageOf(none)).toContain('We take the delivery.');
    const message = messageOf(none, 'refuse');
    expect(message).toContain('We refuse it instead and hold it unfixed.');
    expect(message).not.toContain('because');
  });

  it('promises photos only where there are some', () => {
    expect(messageOf(example)).not.toContain('photo');
    expect(messageOf(example, 'query', '', { photos: 1 })).toContain('method, readings and photos');
  });
});
