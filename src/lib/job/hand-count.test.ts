import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { countingGround, knownStacks, refusedCounts } from './hand-count.ts';
import { slatesFoundByCount, slatesSorted } from './slates-sorted.ts';
import { stockOf } from './stock.ts';

const pallet = (palletId: string, slates: number): NewEvent => ({
  type: 'palletAdded',
  body: { palletId, label: palletId, slates }
});
const grades: NewEvent = { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 5] } };
const job = (): TestJournal => new TestJournal().add(pallet('a', 400), pallet('b', 200), grades);
const GRADES_ID = TestJournal.id(2);
const taps = (n: number, pile: number): NewEvent[] =>
  Array.from({ length: n }, () => ({
    type: 'slateTapped',
    body: { palletId: 'a', pile, gradesId: GRADES_ID }
  }));

function counted(journal: TestJournal, pile: number, slates: number): TestJournal {
  const body = countingGround(journal.view).piles[pile - 1].count(slates);
  return journal.add({ type: 'pileCounted', body });
}

describe('counting piles that nobody tapped', () => {
  it('finds an empty book, and what came as the most that can stand there', () => {
    const ground = countingGround(job().view);
    expect(ground.piles.map(({ standing }) => standing)).toEqual([0, 0, 0]);
    expect(ground).toMatchObject({ most: 600, hasWide: false, isCounted: false });
  });

  it('takes what is counted off the pallets, and later taps come on top', () => {
    const journal = counted(counted(job(), 1, 150), 2, 220);
    expect(slatesSorted(journal.view)).toBe(370);
    expect(slatesFoundByCount(journal.view)).toBe(370);
    journal.add(...taps(10, 1));
    expect(stockOf(journal.view).piles.map(({ onPile }) => onPile)).toEqual([160, 220, 0]);
    expect(slatesSorted(journal.view)).toBe(380);
    expect(countingGround(journal.view)).toMatchObject({ isCounted: true, most: 600 });
  });

  it('a second count stands in the place of the first', () => {
    const journal = counted(counted(job(), 1, 150), 1, 120);
    expect(slatesSorted(journal.view)).toBe(120);
    expect(countingGround(journal.view).piles[0].standing).toBe(120);
  });

  it('does not know the most where nobody knows what came on a pallet', () => {
    const journal = job().add(pallet('c', 0));
    expect(countingGround(journal.view).most).toBeUndefined();
    expect(refusedCounts(countingGround(journal.view), [9999])).toBeUndefined();
  });

  it('refuses more than came, alone and with the other piles', () => {
    const aside: NewEvent = {
      type: 'slateSetAside',
      body: { palletId: 'a', reason: 'other', use: 'scrap' }
    };
    const ground = countingGround(counted(job().add(aside), 2, 300).view);
    expect(refusedCounts(ground, [600])).toEqual({ pile: 1, reason: 'above-came', most: 599 });
    expect(refusedCounts(ground, [300])).toEqual({
      pile: 1,
      reason: 'above-with-others',
      sum: 600,
      most: 599
    });
    expect(refusedCounts(ground, [299])).toBeUndefined();
    // counted too high before, a pile may be counted down whatever the others say
    expect(refusedCounts(ground, [undefined, 100])).toBeUndefined();
  });
});

describe('stacks of known count', () => {
  it('are those of the piles there are; a stack of the delivery is none', () => {
    const stack = (pile?: number, gradesId: string | null = GRADES_ID): NewEvent => ({
      type: 'stackMeasured',
      body: {
        ...{ palletId: null, slates: 50, totalMm: 360 },
        ...(pile !== undefined && { pile, gradesId })
      }
    });
    const { view } = job().add(stack(1), stack(), stack(2, null), stack(7));
    expect(knownStacks(view)).toEqual([
      { eventId: TestJournal.id(3), pile: 1, slates: 50, totalMm: 360 },
      { eventId: TestJournal.id(5), pile: 2, slates: 50, totalMm: 360 }
    ]);
  });
});
