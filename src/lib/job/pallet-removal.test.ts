import { describe, expect, it } from 'vitest';
import { type NewEvent, canonicalView } from '$lib/journal';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { palletRemoval } from './pallet-removal.ts';
import { PalletCounter } from './pallet-count.ts';

const added = (palletId: string, slates = 400): NewEvent => ({
  type: 'palletAdded',
  body: { palletId, label: palletId.toUpperCase(), slates }
});
const labels = ({ view }: TestJournal) =>
  new PalletCounter().all(view, []).map(({ label }) => label);

describe('palletRemoval', () => {
  it('undoes each entry of a pallet that nothing else is known of', () => {
    const journal = new TestJournal().add(added('a'), added('b'), added('b', 300));
    const act = palletRemoval(journal.view, 'b');
    expect(act).toEqual([
      { type: 'entryVoided', body: { voids: TestJournal.id(1) } },
      { type: 'entryVoided', body: { voids: TestJournal.id(2) } }
    ]);
    journal.add(...(act ?? []));
    expect(labels(journal)).toEqual(['A']);
    expect(canonicalView(journal.view)).not.toContain('pallet:b');
  });

  it('is brought back by undoing it', () => {
    const journal = new TestJournal().add(added('a'), added('b'));
    journal.add(...(palletRemoval(journal.view, 'b') ?? []));
    journal.add({ type: 'entryVoided', body: { voids: TestJournal.id(2) } });
    expect(labels(journal)).toEqual(['A', 'B']);
  });

  const entries: [string, NewEvent][] = [
    [
      'a reading',
      { type: 'slateGauged', body: { palletId: 'b', points: [600], gradesId: null, pile: null } }
    ],
    [
      'a reading that waits',
      { type: 'readingHeld', body: { palletId: 'b', points: [3000], gradesId: null, pile: null } }
    ],
    ['a tap', { type: 'slateTapped', body: { palletId: 'b', gradesId: 'g', pile: 1 } }],
    [
      'a slate set aside',
      { type: 'slateSetAside', body: { palletId: 'b', reason: 'broken', use: 'scrap' } }
    ],
    ['a stack', { type: 'stackMeasured', body: { palletId: 'b', slates: 20, totalMm: 130 } }],
    ['a defect', { type: 'defectNoted', body: { palletId: 'b', text: 'wet' } }],
    [
      'a place on a sample list',
      {
        type: 'sampleDrawn',
        body: { seed: 1, plan: 'own', positions: [{ palletId: 'b', layer: 1, place: 1 }] }
      }
    ]
  ];
  it.each(entries)('refuses a pallet with %s, until that is undone', (_what, entry) => {
    const journal = new TestJournal().add(added('a'), added('b'), entry);
    expect(palletRemoval(journal.view, 'b')).toBeUndefined();
    expect(palletRemoval(journal.view, 'a')).toHaveLength(1);
    journal.add({ type: 'entryVoided', body: { voids: TestJournal.id(2) } });
    expect(palletRemoval(journal.view, 'b')).toHaveLength(1);
  });

  it('takes a mixed pallet in every length, or in none', () => {
    const journal = new TestJournal().add(added('m.long'), added('m.short'), added('a'));
    expect(palletRemoval(journal.view, 'm.long')).toHaveLength(2);
    journal.add({ type: 'slateTapped', body: { palletId: 'm.short', gradesId: 'g', pile: 1 } });
    expect(palletRemoval(journal.view, 'm.long')).toBeUndefined();
    expect(palletRemoval(journal.view, 'never entered')).toBeUndefined();
  });
});
