import { describe, expect, it } from 'vitest';
import { fixedExample } from '../../../tests/support/fixed-example.ts';
import { EMPTY_VIEW, type NewEvent, foldAll, readEvent } from '$lib/journal';
import { readingCounts } from './reading-counts.ts';
import { tallyPallets } from './queries.ts';
import { TestJournal } from '../../../tests/support/test-journal.ts';

const gauged = (pile: number | null, gradesId: string | null): NewEvent => ({
  type: 'slateGauged',
  body: { palletId: 'a', points: [600], pile, gradesId }
});

describe('readingCounts', () => {
  it('of nothing are all 0', () => {
    expect(readingCounts(EMPTY_VIEW)).toEqual({
      inSample: 0,
      beforeGrades: 0,
      whileSorting: 0,
      all: 0
    });
  });

  it('parts readings before the grades from those of any grades, and counts no tap', () => {
    const journal = new TestJournal().add(gauged(null, null), gauged(null, null));
    for (const thresholdsMm of [[6], [5.5]]) {
      journal.add({ type: 'gradesSet', body: { method: 'byHand', thresholdsMm } });
      const gradesId = TestJournal.id(journal.length - 1);
      journal.add(gauged(1, gradesId));
      journal.add({ type: 'slateTapped', body: { palletId: 'a', pile: 2, gradesId } });
    }
    const { inSample, beforeGrades, whileSorting, all } = readingCounts(journal.view);
    expect([inSample, beforeGrades, whileSorting, all]).toEqual([0, 2, 2, 4]);
  });

  it('no longer counts a reading that was taken back', () => {
    const journal = new TestJournal().add(gauged(null, null), gauged(null, null));
    journal.add({ type: 'entryVoided', body: { voids: TestJournal.id(0) } });
    expect(readingCounts(journal.view)).toMatchObject({ beforeGrades: 1, all: 1 });
  });

  it('of the worked example: 100, 325 and 369, which are all 794 of its pallets', () => {
    const view = foldAll(fixedExample().map(readEvent));
    expect(readingCounts(view)).toEqual({
      inSample: 100,
      beforeGrades: 325,
      whileSorting: 369,
      all: 794
    });
    expect(tallyPallets(view).reduce((total, { gauged }) => total + gauged, 0)).toBe(794);
  });
});
