import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { farReadings } from './far-readings.ts';

const pallet = (palletId: string): NewEvent => ({
  type: 'palletAdded',
  body: { palletId, label: palletId.toUpperCase(), slates: 400 }
});
const read = (palletId: string, hundredths: number): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points: [hundredths], pile: null, gradesId: null }
});
/** Slates of 5.60 to 6.36 mm from each pallet, 20 of each. */
const usual = (...palletIds: string[]): NewEvent[] =>
  palletIds.flatMap((id) => [
    pallet(id),
    ...Array.from({ length: 20 }, (_, at) => read(id, 560 + 4 * at))
  ]);
const farOf = (...acts: NewEvent[]) =>
  farReadings(new TestJournal().add(...acts).view).map(({ label, hundredths, slates }) => [
    ...[label, hundredths, slates]
  ]);

describe('readings far from all others', () => {
  it('J65 are named though they came before anybody knew what is usual', () => {
    expect(farOf(pallet('a'), read('a', 620), read('a', 1520), ...usual('b', 'c'))).toEqual([
      ['A', 1520, 1]
    ]);
  });

  it('are none among usual slates, nor of few', () => {
    expect(farOf(...usual('a', 'b'))).toEqual([]);
    expect(farOf(pallet('a'), ...[600, 610, 590, 620, 1520].map((mm) => read('a', mm)))).toEqual(
      []
    );
  });

  it('lie beyond the range that the others make likely, and not on its edge', () => {
    // Forty of 6.00: what is likely ends at 4.00 and at 9.00.
    const same = Array.from({ length: 40 }, () => read('a', 600));
    expect(farOf(pallet('a'), ...same, read('a', 900), read('a', 400))).toEqual([]);
    expect(farOf(pallet('a'), ...same, read('a', 901))).toEqual([['A', 901, 1]]);
    expect(farOf(pallet('a'), ...same, read('a', 399))).toEqual([['A', 399, 1]]);
  });

  it('come furthest first, thick and thin, each with its pallet', () => {
    expect(
      farOf(...usual('a', 'b', 'c'), read('b', 180), read('a', 1520), read('c', 1520))
    ).toEqual([
      ['A', 1520, 1],
      ['C', 1520, 1],
      ['B', 180, 1]
    ]);
  });

  it('are not the slates of a pallet that is all of another thickness', () => {
    const thick = Array.from({ length: 4 }, (_, at) => read('d', 1200 + at));
    expect(farOf(...usual('a', 'b', 'c', 'e', 'f', 'g'), pallet('d'), ...thick)).toEqual([]);
  });

  it('say which were measured for the check of the delivery', () => {
    const sample = { drawId: 'd', layer: 1, place: 1 };
    const sampled: NewEvent = {
      type: 'slateGauged',
      body: { palletId: 'b', points: [1520], pile: null, gradesId: null, sample }
    };
    const journal = new TestJournal().add(...usual('a', 'b', 'c'), sampled);
    expect(farReadings(journal.view)).toMatchObject([{ hundredths: 1520, isOfSample: true }]);
    journal.add(read('b', 1520));
    expect(farReadings(journal.view)).toMatchObject([{ slates: 2, isOfSample: false }]);
  });
});
