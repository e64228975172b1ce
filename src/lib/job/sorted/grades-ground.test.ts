import { describe, expect, it } from 'vitest';
import { binsFromPairs, totalCount } from '$lib/engine/thickness';
import type { NewEvent } from '$lib/journal';
import { stockOf } from '../stock.ts';
import { tallyPallets } from '../queries.ts';
import { TestJournal } from '../../../../tests/support/test-journal.ts';
import { courseNeeds, samplesOf, weightedSpread } from './grades-ground.ts';

describe('the spread of the stock', () => {
  it('is empty where nothing was gauged', () => {
    expect(weightedSpread([]).counts).toHaveLength(0);
    const unread = { palletId: 'a', slates: 100, bins: binsFromPairs([]) };
    expect(weightedSpread([unread]).counts).toHaveLength(0);
  });

  it('is the readings themselves where pallets were gauged alike', () => {
    const spread = weightedSpread([
      { palletId: 'a', slates: 300, bins: binsFromPairs([[500, 3]]) },
      { palletId: 'b', slates: 100, bins: binsFromPairs([[600, 1]]) }
    ]);
    expect([...spread.counts]).toEqual([3, 1]);
  });

  it('weights a pallet by its slates, not by its readings', () => {
    const spread = weightedSpread([
      { palletId: 'a', slates: 300, bins: binsFromPairs([[500, 1]]) },
      { palletId: 'b', slates: 100, bins: binsFromPairs([[600, 3]]) }
    ]);
    expect([...spread.counts]).toEqual([3, 1]);
    expect(totalCount(spread)).toBe(4);
  });
});

describe('the samples', () => {
  const tally = {
    palletId: 'a',
    label: 'A',
    slates: 100,
    gaugedBins: binsFromPairs([[500, 10]]),
    putBackBins: binsFromPairs([[500, 10]]),
    piledBins: binsFromPairs([]),
    gauged: 10,
    sampled: 0,
    tapped: 0,
    setAside: 7,
    onPile: new Map(),
    sorted: 7
  };
  const stock = (usable: number) => ({
    pallets: [{ palletId: 'a', label: 'A', usable, slatesOfPile: [] }]
  });

  it('count what the stock counts on', () => {
    expect(samplesOf([tally], stock(86))[0].slates).toBe(86);
  });

  it('count what was seen where that is more', () => {
    expect(samplesOf([tally], stock(8))[0].slates).toBe(10);
    expect(samplesOf([{ ...tally, tapped: 12 }], stock(8))[0].slates).toBe(12);
  });

  it('leave out a pallet of no known slates', () => {
    const none = binsFromPairs([]);
    const nothing = { gaugedBins: none, putBackBins: none, gauged: 0 };
    expect(samplesOf([{ ...tally, ...nothing }], stock(0))).toEqual([]);
  });
});

describe('slates gauged twice', () => {
  const gauged = (palletId: string, hundredths: number, pile: number | null): NewEvent => ({
    type: 'slateGauged',
    body: { palletId, points: [hundredths], gradesId: pile ? GRADES : null, pile }
  });
  const GRADES = TestJournal.id(0);

  /** A pallet of thirty, so many gauged and put back, and so many gauged on to piles since. */
  function sampleOf(putBack: number, piled: number) {
    const { view } = new TestJournal().add(
      { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6] } },
      { type: 'palletAdded', body: { palletId: 'a', label: 'A', slates: 30 } },
      ...Array.from({ length: putBack }, () => gauged('a', 500, null)),
      ...Array.from({ length: piled }, () => gauged('a', 700, 1))
    );
    return samplesOf(tallyPallets(view), stockOf(view))[0];
  }
  const readings = (putBack: number, piled: number) =>
    Object.fromEntries(
      [500, 700].map((hundredths) => {
        const { bins } = sampleOf(putBack, piled);
        return [hundredths, bins.counts[bins.hundredths.indexOf(hundredths)] ?? 0];
      })
    );

  it('are few while few are gauged, and all readings count', () => {
    expect(readings(8, 6)).toEqual({ 500: 8, 700: 6 });
  });

  it('do not make a pallet larger than it is', () => {
    expect(sampleOf(8, 30).slates).toBe(30);
    expect(readings(8, 30)).toEqual({ 500: 0, 700: 30 });
  });

  it('do not make a pallet known to the last slate before it is', () => {
    expect(totalCount(sampleOf(8, 22).bins)).toBe(22);
    expect(sampleOf(8, 22).slates).toBe(30);
  });

  it('count as put back where nearly all were', () => {
    expect(readings(30, 5)).toEqual({ 500: 30, 700: 0 });
  });
});

describe('what a course needs', () => {
  it('has a joint less than pieces in every unbroken run', () => {
    const run = { slates: 10, startsWithSlateAndAHalf: true, endsWithSlateAndAHalf: false };
    const short = { slates: 3, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false };
    const nothing = { ...short, slates: 0 };
    expect(
      courseNeeds([{ slopeId: 's', course: 1, heightMm: 0, runs: [run, short, nothing] }])
    ).toEqual([{ slates: 13, joints: 12 }]);
  });
});
