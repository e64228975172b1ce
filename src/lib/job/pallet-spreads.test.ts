import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { stockOf } from './stock.ts';
import { tallyPallets } from './queries.ts';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { samplesOf } from './sorted/grades-ground.ts';
import { palletSpreads } from './pallet-spreads.ts';

const pallet = (palletId: string): NewEvent => ({
  type: 'palletAdded',
  body: { palletId, label: palletId.toUpperCase(), slates: 100 }
});
const gauged = (palletId: string, ...points: number[]): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points, gradesId: null, pile: null }
});

function spreadsOf(...acts: NewEvent[]) {
  const { view } = new TestJournal().add(pallet('a'), ...acts);
  return palletSpreads(view, samplesOf(tallyPallets(view), stockOf(view)));
}

describe('palletSpreads', () => {
  it('tell nothing of a pallet that was not gauged', () => {
    expect(spreadsOf()).toEqual([
      {
        palletId: 'a',
        label: 'A',
        slates: 100,
        gauged: 0,
        meanMm: undefined,
        sdMm: undefined,
        middleHalfMm: undefined,
        taperMm: undefined
      }
    ]);
  });

  it('of one slate tell its thickness, and neither a deviation nor a taper', () => {
    const [spread] = spreadsOf(gauged('a', 612));
    expect(spread).toMatchObject({ gauged: 1, meanMm: 6.12, middleHalfMm: [6.12, 6.12] });
    expect([spread.sdMm, spread.taperMm]).toEqual([undefined, undefined]);
  });

  it('tell mean, deviation and quarters, pallet by pallet', () => {
    const [a, b] = spreadsOf(
      pallet('b'),
      ...[400, 500, 700, 800].map((hundredths) => gauged('a', hundredths)),
      gauged('b', 900)
    );
    expect(a.meanMm).toBeCloseTo(6, 12);
    expect(a.sdMm).toBeCloseTo(Math.sqrt(10 / 3), 12); // 4, 5, 7 and 8 about 6
    expect(a.middleHalfMm).toEqual([4.75, 7.25]); // ranks 0.75 and 2.25 of 0 to 3
    expect([b.gauged, b.meanMm]).toEqual([1, 9]);
  });

  it('tell the mean taper of the slates gauged at several points', () => {
    const [spread] = spreadsOf(gauged('a', 600, 640), gauged('a', 600, 610, 620), gauged('a', 700));
    expect(spread.gauged).toBe(3);
    expect(spread.taperMm).toBeCloseTo(0.3, 12);
  });
});
