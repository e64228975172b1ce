import { describe, expect, it } from 'vitest';
import { type NewEvent, canonicalView } from '$lib/journal';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { type HeldAnswer, answerHeld, heldReadings } from './held-readings.ts';
import { likelyRangeOf } from './likely-range.ts';
import { readingCounts } from './reading-counts.ts';
import { PalletCounter } from './pallet-count.ts';
import { stockOf } from './stock.ts';
import { jobPace } from './pace.ts';

const PALLET: NewEvent = { type: 'palletAdded', body: { palletId: 'p', label: 'P', slates: 400 } };
const GRADES: NewEvent = { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6] } };
const WILD = { palletId: 'p', points: [3200], gradesId: null, pile: null };

/** A job of 40 slates of 5.6 to 6.4 mm, before its grades and on its piles. */
function sorted(): TestJournal {
  const journal = new TestJournal().add(PALLET);
  for (let slate = 0; slate < 40; slate++)
    journal.add({ type: 'slateGauged', body: { ...WILD, points: [560 + 2 * slate] } });
  return journal.add(GRADES);
}

/** All that a screen says of the slates. */
const figures = ({ view }: TestJournal) => ({
  likely: likelyRangeOf(view),
  counts: readingCounts(view),
  pallets: new PalletCounter().all(view, [1, 2]),
  stock: stockOf(view),
  pace: jobPace(view)
});

describe('a reading that the sorter is asked about', () => {
  it('J65 counts nowhere until it is answered, and is kept', () => {
    const journal = sorted();
    const before = figures(journal);
    journal.add({ type: 'readingHeld', body: WILD });
    expect(figures(journal)).toEqual(before);
    expect(heldReadings(journal.view).map(({ body }) => body)).toEqual([WILD]);
  });

  it('J65 kept, it counts as it was read; measured again, as if it had never been', () => {
    const counted = figures(sorted().add({ type: 'slateGauged', body: WILD }));
    const answered = (answer: HeldAnswer) => {
      const journal = sorted().add({ type: 'readingHeld', body: WILD });
      for (const event of answerHeld(heldReadings(journal.view)[0], answer)) journal.add(event);
      expect(heldReadings(journal.view), answer).toEqual([]);
      return journal;
    };
    const kept = figures(answered('keep'));
    expect([kept.stock, kept.likely, kept.counts]).toEqual([
      counted.stock,
      counted.likely,
      counted.counts
    ]);
    expect(kept.counts.all).toBe(41);
    expect(figures(answered('again'))).toEqual(figures(sorted()));
    const aside = figures(answered('aside'));
    expect(aside.counts).toEqual(figures(sorted()).counts);
    expect(aside.pallets[0].setAside).toBe(1);
  });

  it('J65 waits for each reading in turn, oldest first, on whatever pallet', () => {
    const other = { ...WILD, palletId: 'a', points: [3300] };
    const journal = sorted().add({ type: 'readingHeld', body: WILD });
    journal.add({ type: 'readingHeld', body: other });
    expect(heldReadings(journal.view).map(({ body }) => body)).toEqual([WILD, other]);
    const [first] = heldReadings(journal.view);
    journal.add({ type: 'entryVoided', body: { voids: first.id } });
    expect(heldReadings(journal.view).map(({ body }) => body)).toEqual([other]);
    expect(canonicalView(journal.view)).toContain('3300');
  });
});
