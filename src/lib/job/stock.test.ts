import { describe, expect, it } from 'vitest';
import { totalCount } from '$lib/engine/thickness';
import type { NewEvent } from '$lib/journal/events.ts';
import { stockOf } from './stock.ts';
import { TestJournal } from '../../../tests/support/test-journal.ts';

const pallet = (palletId: string, slates: number): NewEvent => ({
  type: 'palletAdded',
  body: { palletId, label: palletId.toUpperCase(), slates }
});
const gauged = (
  palletId: string,
  hundredths: number,
  pile: number | null,
  gradesId: string | null
): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points: [hundredths], pile, gradesId }
});
const many = <T>(n: number, make: (index: number) => T): T[] =>
  Array.from({ length: n }, (_, i) => make(i));

/** Pallet a holds thick slates, b thin ones; grades are set at 6 mm. */
function measured(): { journal: TestJournal; gradesId: string } {
  const journal = new TestJournal().add(
    pallet('a', 100),
    pallet('b', 50),
    ...many(10, (i) => gauged('a', 700 + i, null, null)),
    ...many(10, (i) => gauged('b', 500 + i, null, null))
  );
  journal.add({ type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6] } });
  return { journal, gradesId: TestJournal.id(journal.length - 1) };
}

describe('stockOf', () => {
  it('is empty without pallets', () => {
    expect(stockOf(new TestJournal().view)).toMatchObject({
      delivered: 0,
      usable: 0,
      isGauged: false
    });
  });

  it('knows no piles to come before a slate was gauged or tapped', () => {
    const stock = stockOf(new TestJournal().add(pallet('a', 100)).view);
    expect(stock.delivered).toBe(100);
    expect(stock.piles.map(({ slates }) => slates)).toEqual([0, 0, 0]);
  });

  it('foretells each pallet from its own readings, in whole slates that sum to it', () => {
    const stock = stockOf(measured().journal.view);
    expect(stock.pallets.map(({ slatesOfPile }) => slatesOfPile)).toEqual([
      [100, 0],
      [0, 50]
    ]);
    expect(stock.piles.map(({ slates, toCome }) => [slates, toCome])).toEqual([
      [100, 100],
      [50, 50]
    ]);
    expect(totalCount(stock.spread)).toBeCloseTo(150, 9);
    expect(totalCount(stock.piles[0].bins)).toBeCloseTo(100, 9);
  });

  it('counts sorted slates where they were put and only the rest as to come', () => {
    const { journal, gradesId } = measured();
    journal.add(...many(5, () => gauged('a', 550, 2, gradesId)));
    const [, thin] = stockOf(journal.view).piles;
    expect(thin).toMatchObject({ onPile: 5, tallied: 5 });
    expect(stockOf(journal.view).usable).toBe(150);
  });

  it('foretells from the taps where nothing was gauged', () => {
    const taps = [1, 1, 1, 2].map((pile): NewEvent => ({
      type: 'slateTapped',
      body: { palletId: 'a', pile, gradesId: null }
    }));
    const stock = stockOf(new TestJournal().add(pallet('a', 40), ...taps).view);
    expect(stock.piles.map(({ slates }) => slates)).toEqual([30, 10, 0]);
    expect(stock.piles[0].bins.counts).toHaveLength(0);
  });

  it('takes off the share set aside once fifty were sorted', () => {
    const { journal, gradesId } = measured();
    journal.add(...many(45, () => gauged('a', 700, 1, gradesId)));
    journal.add(
      ...many(5, (): NewEvent => ({
        type: 'slateSetAside',
        body: { palletId: 'a', reason: 'broken', use: 'scrap' }
      }))
    );
    // 50 are left on each pallet, of which a tenth is expected to be set aside.
    expect(stockOf(journal.view).usable).toBe(45 + 45 + 45);
  });

  it('tells what is usable of each pallet, as much as stands on the piles or will', () => {
    const { journal, gradesId } = measured();
    expect(stockOf(journal.view).pallets.map(({ usable }) => usable)).toEqual([100, 50]);
    journal.add(...many(20, () => gauged('a', 700, 1, gradesId)));
    journal.add({ type: 'pileCounted', body: { gradesId, pile: 1, slates: 15, tallied: 20 } });
    const { pallets, usable } = stockOf(journal.view);
    expect(pallets.reduce((sum, pallet) => sum + pallet.usable, 0)).toBe(usable);
  });

  it('tells what is usable of a pallet before anything tells the piles', () => {
    const { pallets } = stockOf(new TestJournal().add(pallet('a', 100)).view);
    expect(pallets[0]).toMatchObject({ usable: 100, slatesOfPile: [0, 0, 0] });
  });

  it('counts a pallet that nobody declared as what was seen of it', () => {
    const journal = new TestJournal().add(
      pallet('a', 0),
      ...many(10, (): NewEvent => ({
        type: 'slateGauged',
        body: {
          palletId: 'a',
          points: [600],
          pile: null,
          gradesId: null,
          sample: { drawId: TestJournal.id(0), layer: 1, place: 1, ring: 'clear' }
        }
      }))
    );
    expect(stockOf(journal.view)).toMatchObject({ delivered: 10, pallets: [{ usable: 10 }] });
  });

  it('counts a pallet that nobody declared and that was only measured as what was measured', () => {
    const journal = new TestJournal().add(...many(12, (i) => gauged('c', 600 + i, null, null)));
    expect(stockOf(journal.view)).toMatchObject({ delivered: 12, pallets: [{ usable: 12 }] });
  });

  it('believes a count by hand, and adds what is tallied after it', () => {
    const { journal, gradesId } = measured();
    const tap = (): NewEvent => ({
      type: 'slateTapped',
      body: { palletId: 'a', pile: 1, gradesId }
    });
    journal.add(...many(20, tap));
    journal.add({ type: 'pileCounted', body: { gradesId, pile: 1, slates: 18, tallied: 20 } });
    expect(stockOf(journal.view).piles[0]).toMatchObject({ onPile: 18, toCome: 80, slates: 98 });
    journal.add(...many(7, tap));
    expect(stockOf(journal.view).piles[0]).toMatchObject({ onPile: 25, toCome: 73, slates: 98 });
  });

  it('makes no stock of a count above the tally: what was not logged is no more to come', () => {
    const { journal, gradesId } = measured();
    journal.add(...many(20, () => gauged('a', 700, 1, gradesId)));
    const count = (slates: number, taken: number): NewEvent => ({
      type: 'pileCounted',
      body: { gradesId, pile: 1, slates, tallied: 20, taken }
    });
    // 35 stand there where 20 were logged: 15 of the 80 to come are there already.
    journal.add(count(35, 0));
    expect(stockOf(journal.view).piles[0]).toMatchObject({ onPile: 35, toCome: 65, slates: 100 });
    // All 20 and 15 more were laid: the empty pile leaves 65 to come, not 80.
    journal.add(count(0, 35));
    expect(stockOf(journal.view).piles[0]).toMatchObject({ onPile: 0, toCome: 65, slates: 65 });
    // More than there can be: nothing is to come any more.
    journal.add(count(300, 0));
    expect(stockOf(journal.view).piles[0]).toMatchObject({ onPile: 300, toCome: 0 });
  });

  it('makes no stock either of a pile that holds more than was foretold: the others get fewer', () => {
    const { journal, gradesId } = measured();
    const before = stockOf(journal.view);
    const more = before.piles[0].toCome + 30;
    journal.add({
      type: 'pileCounted',
      body: { gradesId, pile: 1, slates: more, tallied: 0, taken: 0 }
    });
    const after = stockOf(journal.view);
    expect(after.piles[0]).toMatchObject({ onPile: more, toCome: 0, unlogged: more });
    expect(after.piles[1].toCome).toBe(before.piles[1].toCome - 30);
    expect(after.usable).toBe(before.usable);
  });

  it('of a crew that counts and taps nothing, foretells the rest as counted, less what it sets aside', () => {
    const journal = new TestJournal().add(pallet('a', 600));
    journal.add({ type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6] } });
    const gradesId = TestJournal.id(journal.length - 1);
    const count = (pile: number, slates: number): NewEvent => ({
      type: 'pileCounted',
      body: { gradesId, pile, slates, tallied: 0, taken: 0 }
    });
    journal.add(count(1, 60), count(2, 180));
    journal.add(
      ...many(60, (): NewEvent => ({
        type: 'slateSetAside',
        body: { palletId: 'a', reason: 'broken', use: 'scrap' }
      }))
    );
    // 300 of 600 were sorted, a fifth of them set aside: 240 more, a quarter of them thick.
    const { piles, usable } = stockOf(journal.view);
    expect(piles.map(({ onPile, toCome }) => [onPile, toCome])).toEqual([
      [60, 60],
      [180, 180]
    ]);
    expect(usable).toBe(480);
  });

  it('tells what a count did not find apart from what was laid or lost before it', () => {
    const { journal, gradesId } = measured();
    journal.add(...many(20, () => gauged('a', 700, 1, gradesId)));
    expect(stockOf(journal.view)).toMatchObject({ takenBeforeCount: 0, notFound: 0 });
    const count = (pile: number, slates: number, taken?: number): NewEvent => ({
      type: 'pileCounted',
      body: { gradesId, pile, slates, tallied: pile === 1 ? 20 : 0, taken }
    });
    // Of 20 on the pile 6 were laid; 9 stand there where 14 should.
    journal.add(count(1, 9, 6));
    expect(stockOf(journal.view)).toMatchObject({ takenBeforeCount: 6, notFound: 5, usable: 139 });
    // More than were logged: nothing is missing, and the slates laid are still gone.
    journal.add(count(1, 30, 6));
    expect(stockOf(journal.view)).toMatchObject({ takenBeforeCount: 6, notFound: 0, usable: 144 });
    // A count of before it was noted how many were taken: all that is gone was not found.
    journal.add(count(1, 9));
    expect(stockOf(journal.view)).toMatchObject({ takenBeforeCount: 0, notFound: 11 });
  });

  it('J66 puts no slate back on the pallets that a pile is found to lack after some were laid', () => {
    const { journal, gradesId } = measured();
    const count = (slates: number, taken: number): NewEvent => ({
      type: 'pileCounted',
      body: { gradesId, pile: 1, slates, tallied: 0, taken }
    });
    const [before] = stockOf(journal.view).piles;
    journal.add(count(30, 0));
    const toCome = stockOf(journal.view).piles.reduce((sum, pile) => sum + pile.toCome, 0);
    // 20 of the 30 were laid; 4 stand where 10 should: 6 are gone, and none came back.
    journal.add(count(4, 20));
    const { piles, notFound, takenBeforeCount } = stockOf(journal.view);
    expect(piles.reduce((sum, pile) => sum + pile.toCome, 0)).toBe(toCome);
    expect({ notFound, takenBeforeCount }).toEqual({ notFound: 6, takenBeforeCount: 20 });
    // A count that was mistyped and is counted again at once was never true.
    const again = measured();
    again.journal.add(count(30, 0), count(4, 0));
    expect(stockOf(again.journal.view).piles[0].toCome).toBe(before.toCome - 4);
    expect(stockOf(again.journal.view).notFound).toBe(0);
  });
});
