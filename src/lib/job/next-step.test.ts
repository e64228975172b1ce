import { describe, expect, it } from 'vitest';
import { EMPTY_VIEW, type NewEvent } from '$lib/journal';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { nextStep, toMeasure } from './next-step.ts';

const pallet = (palletId: string, slates: number): NewEvent => ({
  type: 'palletAdded',
  body: { palletId, label: palletId.toUpperCase(), slates }
});
const gauged = (palletId: string, count: number): NewEvent[] =>
  Array.from({ length: count }, () => ({
    type: 'slateGauged',
    body: { palletId, points: [600], pile: null, gradesId: null }
  }));
const tapped = (palletId: string, count: number): NewEvent[] =>
  Array.from({ length: count }, () => ({
    type: 'slateTapped',
    body: { palletId, pile: 1, gradesId: null }
  }));
const journalOf = (...events: NewEvent[]) => new TestJournal().add(...events);

describe('the next step', () => {
  it('is to enter the pallets, then to measure some of each', () => {
    expect(nextStep(EMPTY_VIEW)).toBe('pallets');
    expect(toMeasure(EMPTY_VIEW)).toEqual([]);
    const { view } = journalOf(pallet('a', 400), pallet('b', 0));
    expect(nextStep(view)).toBe('sample');
    expect(toMeasure(view)).toEqual([
      { label: 'A', slates: 20 },
      { label: 'B', slates: 20 }
    ]);
  });

  it('counts slates measured before there were grades, pallet by pallet', () => {
    const journal = journalOf(pallet('a', 400), pallet('b', 400), ...gauged('a', 25));
    journal.add(...gauged('b', 7));
    expect(nextStep(journal.view)).toBe('sample');
    expect(toMeasure(journal.view)).toEqual([{ label: 'B', slates: 13 }]);
    journal.add(...gauged('b', 13));
    expect(nextStep(journal.view)).toBe('grades');
  });

  it('is to set the grades from 60 slates on, a few of each pallet among them', () => {
    const journal = journalOf(pallet('a', 400), pallet('b', 400), ...gauged('a', 59));
    expect(toMeasure(journal.view)).toEqual([{ label: 'B', slates: 20 }]);
    journal.add(...gauged('a', 1));
    expect(nextStep(journal.view)).toBe('sample');
    expect(toMeasure(journal.view)).toEqual([{ label: 'B', slates: 5 }]);
    journal.add(...gauged('b', 5));
    expect(nextStep(journal.view)).toBe('grades');
    expect(toMeasure(journal.view)).toEqual([]);
  });

  it('asks for no more slates than lie on a pallet', () => {
    const journal = journalOf(pallet('a', 12), ...gauged('a', 5), ...tapped('a', 3));
    expect(toMeasure(journal.view)).toEqual([{ label: 'A', slates: 4 }]);
    journal.add(...tapped('a', 9));
    expect(nextStep(journal.view)).toBe('grades');
  });

  it('is the roof once grades are set, however few slates were measured', () => {
    const byHand: NewEvent = { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6] } };
    expect(nextStep(journalOf(pallet('a', 400), byHand).view)).toBe('roof');
  });
});
