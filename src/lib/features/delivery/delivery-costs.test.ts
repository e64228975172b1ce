import { describe, expect, it } from 'vitest';
import type { BodyOf, StoredEvent } from '$lib/journal';
import type { JobSettings } from '$lib/job';
import { type Catalogue, NumberWords } from '$lib/text';
import { common } from '$lib/text/en/common.ts';
import { delivery } from '$lib/text/en/delivery.ts';
import { hasAmounts, missingFigures, sayCostPace, sayCosts, sayMoney } from './delivery-costs.ts';
import { sayFindings } from './delivery-glance.ts';
import type { Judged } from './delivery-judge.ts';
import { judgedExample } from '../../../../tests/support/test-delivery.ts';

const text = { common, delivery } as Catalogue;
const numbers = new NumberWords('en-GB');

/** The example as if these fields of its order and its settings had been left empty. */
function judgedWithout(
  order: readonly (keyof BodyOf<'deliveryDeclared'>)[],
  settings: readonly (keyof JobSettings)[] = [],
  hasRoof = true
): Judged {
  return judgedExample((event) => {
    if (event.type === 'slopeSet' && !hasRoof) return undefined;
    const gone: readonly string[] = event.type === 'deliveryDeclared' ? order : settings;
    if (event.type !== 'deliveryDeclared' && event.type !== 'jobSettingsSet') return event;
    const body = Object.entries(event.body).filter(([field]) => !gone.includes(field));
    return { ...event, body: Object.fromEntries(body) } as StoredEvent;
  });
}

const said = (judged: Judged, currency = 'EUR') =>
  sayCosts(judged.costs, currency, text, numbers).map(({ choice, cost, parts }) =>
    [choice, cost, parts].map((words) => words.replaceAll('\u00a0', ' '))
  );

describe('what each answer of the worked example costs', () => {
  it('is told in full', () => {
    expect(said(judgedWithout([]))).toEqual([
      ['take', '215 to 320 EUR', 'sorting 215 to 235 EUR; slates to make up 0 to 85 EUR'],
      [
        'query',
        '503 to 608 EUR',
        'sorting 215 to 235 EUR; slates to make up 0 to 85 EUR; less credit 252 EUR; delay 540 EUR'
      ],
      ['refuse', '2,580 EUR', 'delay 2,160 EUR; sending back 420 EUR']
    ]);
    expect(missingFigures(judgedWithout([]).costs)).toEqual([]);
  });

  it('names the sorting that was priced, and why it may not be needed', () => {
    const judged = judgedWithout(['acceptableKickersPer100']);
    expect(said(judged)[0]).toEqual([
      'take',
      '0 to 320 EUR',
      'sorting 215 to 235 EUR if it is needed (the order does not say how many joints may show); slates to make up 0 to 85 EUR'
    ]);
    expect(missingFigures(judged.costs)).toEqual(['accepted-kickers']);
  });

  it('says which figures are missing, and calls a sum without them a sum so far', () => {
    const order = ['pricePerThousand', 'creditPerThousand', 'delayCostPerDay'] as const;
    const judged = judgedWithout(order, ['sortingRatePerHour']);
    expect(said(judged)).toEqual([
      [
        'take',
        'not known yet',
        'sorting: enter cost of an hour’s sorting; slates to make up: enter price per thousand'
      ],
      ['query', 'not known yet', expect.stringContaining('delay: enter cost of a day’s delay')],
      ['refuse', '420 EUR so far', 'sending back 420 EUR; delay: enter cost of a day’s delay']
    ]);
  });

  it('without a roof nobody knows what is missing for it', () => {
    const judged = judgedWithout([], [], false);
    expect(said(judged)[0][2]).toBe(
      'sorting 215 to 235 EUR; slates to make up, if needed: enter the roof'
    );
    expect(missingFigures(judged.costs)).toEqual(['roof']);
  });

  it('names no amount of sorting but the one of the second finding, however it is asked', () => {
    for (const order of [[], ['acceptableKickersPer100']] as const)
      for (const currency of ['EUR', '']) {
        const judged = judgedWithout(order);
        const { cost } = judged.findings.sorting;
        if (!cost) throw new Error('the example prices sorting');
        const amount = sayMoney(cost, currency, text, numbers).replaceAll('\u00a0', ' ');
        const short = sayFindings(judged, currency, text, numbers)[1].lines[0];
        expect(short.replaceAll('\u00a0', ' ')).toContain(amount);
        for (const [choice, , parts] of said(judged, currency))
          if (choice !== 'refuse')
            expect(parts).toMatch(
              new RegExp(`^sorting ${amount.replace(/[()?]/g, '\\$&')}( if|;)`)
            );
      }
  });
});

describe('the pace that sorting is priced at', () => {
  const paceOf = ({ costs, pace }: Judged): string => sayCostPace(costs, pace, text, numbers);
  /** The example with another entered pace. */
  const enteredAt = (sortingPacePerHour: number): Judged =>
    judgedExample((event) =>
      event.type === 'jobSettingsSet'
        ? ({ ...event, body: { ...event.body, sortingPacePerHour } } as StoredEvent)
        : event
    );

  it('is the entered one, with the measured one beside it where they differ', () => {
    expect(paceOf(judgedExample())).toBe(
      'Sorting is priced at the pace entered: 600 slates an hour; measured on this job: 370.'
    );
    expect(paceOf(enteredAt(380))).toBe(
      'Sorting is priced at the pace entered: 380 slates an hour.'
    );
  });

  it('is the measured one where none is entered', () => {
    expect(paceOf(judgedWithout([], ['sortingPacePerHour']))).toBe(
      'Sorting is priced at the pace measured on this job: 370 slates an hour.'
    );
  });

  it('is not named where sorting has no price', () => {
    expect(paceOf(judgedWithout([], ['sortingRatePerHour']))).toBe('');
  });
});

describe('an order that names no currency', () => {
  it('has every amount marked as in a currency that is not entered', () => {
    const amounts = said(judgedExample(), '').flatMap(([, cost, parts]) => [
      cost,
      ...parts.split('; ')
    ]);
    expect(amounts.length).toBeGreaterThan(6);
    for (const amount of amounts) expect(amount).toMatch(/\d \(currency\?\)/);
    for (const line of sayFindings(judgedExample(), '', text, numbers)[1].lines)
      if (/costs?\b/.test(line)) expect(line).toMatch(/\d[\s\u00a0]\(currency\?\)/);
  });

  it('asks for it only where there is an amount', () => {
    expect(hasAmounts(judgedExample().costs)).toBe(true);
    expect(hasAmounts([])).toBe(false);
  });
});
