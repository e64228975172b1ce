import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { listStep } from './list-step.ts';
import { sampleStep } from './sample-step.ts';

const pallet = (label: string, measured: number, slates = 480, sorted = 0) => ({
  ...{ palletId: label.toLowerCase(), label, slates, sorted, measured }
});

describe('where the sorter is in the sample before grades', () => {
  it('counts the current pallet: A 12 of 20', () => {
    expect(sampleStep([pallet('A', 12), pallet('B', 0)], 'a')).toEqual({
      ...{ label: 'A', done: 12, of: 20, isEnough: false }
    });
  });

  it('names the next pallet once this one has enough, in their order', () => {
    const pallets = [pallet('A', 20), pallet('B', 20), pallet('C', 3), pallet('D', 0)];
    expect(sampleStep(pallets, 'b')?.next).toEqual({ palletId: 'c', label: 'C' });
    expect(sampleStep(pallets, 'd')?.next).toBeUndefined();
  });

  it('asks no more of a pallet than lies on it', () => {
    expect(sampleStep([pallet('A', 3, 12), pallet('B', 0)], 'a')).toMatchObject({ of: 12 });
    expect(sampleStep([pallet('A', 3, 30, 25), pallet('B', 0)], 'a')).toMatchObject({ of: 5 });
    expect(sampleStep([pallet('A', 3, 0), pallet('B', 0)], 'a')).toMatchObject({ of: 20 });
  });

  it('asks for pallets of which nothing was measured, however many slates others gave', () => {
    const step = sampleStep([pallet('A', 60), pallet('B', 0), pallet('C', 0)], 'a');
    expect(step).toMatchObject({ isEnough: false, next: { label: 'B' } });
    expect(sampleStep([pallet('A', 60), pallet('B', 5), pallet('C', 4)], 'b')).toMatchObject({
      ...{ of: 5, isEnough: false, next: { label: 'C' } }
    });
  });

  it('asks the same of each pallet, and a few of each of sixty', () => {
    const of = (pallets: number) =>
      sampleStep(
        Array.from({ length: pallets }, (_, at) => pallet(`A${at}`, 0)),
        'a0'
      )?.of;
    expect([1, 2, 3, 4, 6, 12, 60].map(of)).toEqual([20, 20, 20, 15, 10, 5, 5]);
  });

  it('has enough at 60 of the job with a few of each, or where every pallet has its own', () => {
    expect(sampleStep([pallet('A', 55), pallet('B', 5)], 'a')).toMatchObject({ isEnough: true });
    expect(sampleStep([pallet('A', 55), pallet('B', 5)], 'a')).not.toHaveProperty('next');
    expect(sampleStep([pallet('A', 59), pallet('B', 0)], 'a')).toMatchObject({
      ...{ isEnough: false, next: { palletId: 'b', label: 'B' } }
    });
    expect(sampleStep([pallet('A', 20)], 'a')).toMatchObject({ isEnough: true });
  });

  it('is nothing without a pallet', () => expect(sampleStep([], undefined)).toBeUndefined());
});

describe('where the walk along the delivery list is', () => {
  const places = [
    { palletId: 'b', layer: 1, place: 2 },
    { palletId: 'a', layer: 3, place: 4 },
    { palletId: 'a', layer: 1, place: 9 }
  ];
  const drawn = (): TestJournal =>
    new TestJournal().add(
      { type: 'palletAdded', body: { palletId: 'a', label: 'A', slates: 40 } },
      { type: 'palletAdded', body: { palletId: 'b', label: 'B', slates: 40 } },
      { type: 'sampleDrawn', body: { seed: 1, plan: 'own', positions: places } }
    );
  const measured = (at: number): NewEvent => {
    const { palletId, layer, place } = places[at];
    const sample = { drawId: TestJournal.id(2), layer, place };
    const body = { palletId, points: [600], gradesId: null, pile: null, sample };
    return { type: 'slateGauged', body };
  };

  it('names the next place of the pallet, lowest layer first, and counts the whole list', () => {
    const journal = drawn();
    expect(listStep(journal.view, 'a')).toEqual({ ...places[2], done: 0, of: 3 });
    journal.add(measured(2));
    expect(listStep(journal.view, 'a')).toEqual({ ...places[1], done: 1, of: 3 });
    journal.add(measured(1));
    expect(listStep(journal.view, 'a')).toBeUndefined();
    expect(listStep(journal.view, 'b')).toEqual({ ...places[0], done: 2, of: 3 });
  });

  it('is nothing without a list, and once the pallet was begun otherwise', () => {
    expect(listStep(new TestJournal().view, 'a')).toBeUndefined();
    const body = { palletId: 'a', points: [600], gradesId: null, pile: null };
    const begun = drawn().add({ type: 'slateGauged', body });
    expect(listStep(begun.view, 'a')).toBeUndefined();
    expect(listStep(begun.view, 'b')).toMatchObject({ palletId: 'b' });
  });
});
