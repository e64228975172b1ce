import { describe, expect, it } from 'vitest';
import { type ChoiceTerms, costOfChoices } from './cost-of-choices.ts';
import { type DeliveryEvidence, type DeliveryFindings, findAll } from './findings.ts';
import type { SortingTerms } from './finding-sorting.ts';

/** Twenty slates of a thousand, none outside: 834 to 1,000 inside the order at 95 %. */
const TWENTY = Array.from({ length: 20 }, (_, index) => ({
  palletId: 'P1',
  drawnAs: 'unsorted sample' as const,
  pointsMm: [4.5 + index * 0.05]
}));
const EVENNESS = { unsortedKickersPer100: 22, sortedKickersPer100: 4, piles: 3 };
const PACE = { slatesPerHour: 250 };
const RATE = { costPerHour: 30 };
const NEEDED = { acceptableKickersPer100: 10 };
const NOT_NEEDED = { acceptableKickersPer100: 22 };
/** Hours 3.336 to 4, so 100.08 to 120. */
const COST = { low: (834 / 250) * 30, high: 120 };

function findings(sorting: SortingTerms, more: Partial<DeliveryEvidence> = {}): DeliveryFindings {
  const result = findAll({
    order: {
      lengthMm: 500,
      widthMm: 250,
      nominalThicknessMm: 5,
      thicknessTolerancePercent: 35,
      texture: 'normal',
      slatesOrdered: 1000
    },
    delivered: 1000,
    slates: TWENTY,
    plan: { sampleSize: 20, acceptAtMost: 2, acceptableShare: 0.04, basis: [] },
    stacks: [],
    need: { slates: 700, reserve: 50 },
    evenness: EVENNESS,
    sorting,
    level: 0.95,
    ...more
  });
  if (!result.ok) throw new Error(result.reason);
  return result.findings;
}

function take(sorting: SortingTerms, more: Partial<DeliveryEvidence> = {}, terms = {}) {
  return costOfChoices(findings(sorting, more), terms)[0];
}

/** What the sorting part of taking says: its amounts, or the figures that are missing. */
function sortingOf(sorting: SortingTerms, more: Partial<DeliveryEvidence> = {}) {
  const { parts, unknown } = take(sorting, more);
  return (
    parts.find(({ code }) => code === 'sorting') ?? unknown.find(({ code }) => code === 'sorting')
  );
}

describe('the cost of sorting', () => {
  it.each<[string, SortingTerms, object]>([
    ['needed, all known', { ...PACE, ...RATE, ...NEEDED }, { code: 'sorting', ...COST }],
    [
      'needed, no pace',
      { ...RATE, ...NEEDED },
      { code: 'sorting', isDecided: true, missing: ['pace'] }
    ],
    [
      'needed, no rate',
      { ...PACE, ...NEEDED },
      { code: 'sorting', isDecided: true, missing: ['rate'] }
    ],
    ['needed, neither', NEEDED, { code: 'sorting', isDecided: true, missing: ['pace', 'rate'] }],
    [
      'undecided, all else known',
      { ...PACE, ...RATE },
      {
        code: 'sorting',
        low: 0,
        high: 120,
        ifNeeded: { ...COST, level: 0.95 },
        undecidedFor: 'accepted-kickers'
      }
    ],
    [
      'undecided, no pace',
      RATE,
      { code: 'sorting', isDecided: false, missing: ['accepted-kickers', 'pace'] }
    ],
    [
      'undecided, no rate',
      PACE,
      { code: 'sorting', isDecided: false, missing: ['accepted-kickers', 'rate'] }
    ],
    [
      'nothing entered',
      {},
      { code: 'sorting', isDecided: false, missing: ['accepted-kickers', 'pace', 'rate'] }
    ],
    ['not needed', { ...PACE, ...RATE, ...NOT_NEEDED }, { code: 'sorting', low: 0, high: 0 }],
    ['not needed, and nothing else known', NOT_NEEDED, { code: 'sorting', low: 0, high: 0 }]
  ])('%s', (_, sorting, expected) => {
    expect(sortingOf(sorting)).toEqual(expected);
  });

  it('is undecided for want of thicknesses where evenness cannot be foretold', () => {
    const none = { evenness: undefined };
    expect(sortingOf({ ...PACE, ...RATE, ...NEEDED }, none)).toEqual({
      code: 'sorting',
      low: 0,
      high: 120,
      ifNeeded: { ...COST, level: 0.95 },
      undecidedFor: 'thicknesses'
    });
    expect(sortingOf({}, none)).toMatchObject({
      missing: ['thicknesses', 'accepted-kickers', 'pace', 'rate']
    });
  });

  it('is known, and nothing, at a rate of 0', () => {
    expect(sortingOf({ ...PACE, costPerHour: 0, ...NEEDED })).toMatchObject({ low: 0, high: 0 });
  });

  it('is the cost that the second finding names, wherever it is known', () => {
    for (const terms of [
      { ...PACE, ...RATE },
      { ...PACE, ...RATE, ...NEEDED }
    ]) {
      const found = findings(terms);
      for (const { choice, parts } of costOfChoices(found, {})) {
        const part = parts.find(({ code }) => code === 'sorting');
        if (choice === 'refuse') expect(part).toBeUndefined();
        else expect((part?.ifNeeded ?? part)?.high).toBe(found.sorting.cost?.high);
      }
    }
  });
});

describe('the cost of slates to make up', () => {
  const known = { ...PACE, ...RATE, ...NEEDED };
  const unknownOf = (more: Partial<DeliveryEvidence>, terms: ChoiceTerms = {}) =>
    take(known, more, terms).unknown;

  it('is nothing where the roof is sure to be made, price or no price', () => {
    expect(unknownOf({})).toEqual([]);
  });

  it('wants the price where slates may be missing', () => {
    const need = { slates: 900, reserve: 50 };
    expect(unknownOf({ need })).toEqual([
      { code: 'shortage', isDecided: true, missing: ['price'] }
    ]);
    expect(unknownOf({ need }, { pricePerThousand: 2000 })).toEqual([]);
  });

  it('is not known without a roof, and never taken for nothing', () => {
    const need = { slates: 0, reserve: 0 };
    expect(unknownOf({ need })).toEqual([
      { code: 'shortage', isDecided: false, missing: ['roof'] }
    ]);
    expect(unknownOf({ need }, { pricePerThousand: 2000 })).toHaveLength(1);
  });
});

describe('the cost of waiting, credit and return', () => {
  const found = findings({ ...PACE, ...RATE, ...NEEDED });
  const missing = (terms: ChoiceTerms) =>
    costOfChoices(found, terms).map(({ unknown }) => unknown.flatMap((part) => part.missing));

  it('says which figure each waits for', () => {
    expect(missing({})).toEqual([
      [],
      ['credit', 'query-days'],
      ['replacement-days', 'return-cost']
    ]);
    expect(missing({ queryDelayDays: 2, replacementDelayDays: 9, creditWhenQueried: 0 })).toEqual([
      [],
      ['delay-cost'],
      ['delay-cost', 'return-cost']
    ]);
  });

  it('no day of delay costs nothing, whatever a day costs', () => {
    expect(missing({ queryDelayDays: 0, creditWhenQueried: 0 })[1]).toEqual([]);
  });
});

describe('the sum of a choice', () => {
  it('adds up what is known, and is complete only when all of it is', () => {
    const need = { slates: 900, reserve: 50 };
    const found = findings({ ...PACE, ...RATE, ...NEEDED }, { need });
    const most = 950 - 834;
    const full = {
      pricePerThousand: 2000,
      creditWhenQueried: 150,
      queryDelayDays: 2,
      replacementDelayDays: 10,
      delayCostPerDay: 80,
      returnCost: 300
    };
    expect(costOfChoices(found, full)).toMatchObject([
      { choice: 'take', high: 120 + most * 2, unknown: [] },
      { choice: 'query', high: 120 + most * 2 - 150 + 160, unknown: [] },
      { choice: 'refuse', low: 1100, high: 1100, unknown: [] }
    ]);
    expect(costOfChoices(found, {})).toMatchObject([
      { high: 120, unknown: [{ code: 'shortage' }] },
      { high: 120, unknown: [{ code: 'shortage' }, { code: 'credit' }, { code: 'delay' }] },
      { high: 0, unknown: [{ code: 'delay' }, { code: 'return' }] }
    ]);
  });

  it('runs from nothing while it is undecided whether sorting is needed', () => {
    expect(take({ ...PACE, ...RATE })).toMatchObject({ low: 0, high: 120, unknown: [] });
  });
});
