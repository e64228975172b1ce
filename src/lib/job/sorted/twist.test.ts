import { describe, expect, it } from 'vitest';
import { EMPTY_VIEW, type NewEvent, type SampleSlate } from '$lib/journal';
import { TestJournal } from '../../../../tests/support/test-journal.ts';
import { twistOf } from './twist.ts';

const gauged = (rocks?: boolean, sample?: SampleSlate): NewEvent => ({
  type: 'slateGauged',
  body: {
    ...{ palletId: 'a', points: [600, 620], gradesId: null, pile: null },
    ...(rocks !== undefined && { rocks }),
    ...(sample && { sample })
  }
});
const aside = (reason: 'twisted' | 'broken', sample?: SampleSlate): NewEvent => ({
  type: 'slateSetAside',
  body: { palletId: 'a', reason, use: 'return', ...(sample && { sample }) }
});

describe('twist', () => {
  it('is not told where nobody looked', () => {
    const unlooked = { lookedOver: 0, looksTwisted: 0, setAside: 0 };
    const nothing = { tried: 0, rocking: 0, share: undefined, ...unlooked };
    expect(twistOf(EMPTY_VIEW)).toEqual(nothing);
    expect(twistOf(new TestJournal().add(gauged()).view)).toEqual(nothing);
  });

  it('is the share of the slates tried on a board, with its exact interval', () => {
    const journal = new TestJournal().add(
      ...Array.from({ length: 2 }, () => gauged(true)),
      ...Array.from({ length: 8 }, () => gauged(false)),
      gauged()
    );
    const { tried, rocking, share } = twistOf(journal.view);
    expect({ tried, rocking }).toEqual({ tried: 10, rocking: 2 });
    // Clopper-Pearson: at its ends 2 or more, and 2 or fewer, of 10 have a chance of 1 in 40
    const atMost = (k: number, p: number) =>
      [1, 10, 45]
        .slice(0, k + 1)
        .reduce((sum, ways, i) => sum + ways * p ** i * (1 - p) ** (10 - i), 0);
    expect(1 - atMost(1, share!.low)).toBeCloseTo(0.025, 9);
    expect(atMost(2, share!.high)).toBeCloseTo(0.025, 9);
  });

  it('counts a slate of a delivery once: by the board, else as looked over', () => {
    const seen = (place: number, defects?: SampleSlate['defects']): SampleSlate => ({
      ...{ drawId: 'draw', layer: 1, place },
      ...(defects && { defects })
    });
    const journal = new TestJournal().add(
      gauged(true, seen(1, ['twisted'])), // both: once
      gauged(undefined, seen(2, ['twisted', 'colour'])),
      gauged(undefined, seen(3, [])), // looked over, none
      gauged(undefined, seen(4)), // not looked over
      aside('twisted', seen(5)),
      aside('twisted'),
      aside('broken')
    );
    expect(twistOf(journal.view)).toMatchObject({
      ...{ tried: 1, rocking: 1 },
      ...{ lookedOver: 3, looksTwisted: 2, setAside: 1 }
    });
  });

  it('tells no share of slates that were looked over and never tried', () => {
    const looked = { drawId: 'draw', layer: 1, place: 1, ring: 'clear' as const, defects: [] };
    const { tried, share } = twistOf(new TestJournal().add(gauged(undefined, looked)).view);
    expect({ tried, share }).toEqual({ tried: 0, share: undefined });
  });

  it('is as before once the slate is taken back', () => {
    const journal = new TestJournal().add(gauged(true));
    expect(twistOf(journal.view).tried).toBe(1);
    journal.add({ type: 'entryVoided', body: { voids: TestJournal.id(0) } });
    expect(twistOf(journal.view).tried).toBe(0);
  });
});
