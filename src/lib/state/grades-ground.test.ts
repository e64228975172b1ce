import { describe, expect, it } from 'vitest';
import { binsFromPairs, totalCount } from '$lib/engine/thickness';
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
    gauged: 10,
    sampled: 0,
    tapped: 0,
    setAside: 7,
    onPile: [0, 0, 0],
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
    const nothing = { gaugedBins: binsFromPairs([]), gauged: 0 };
    expect(samplesOf([{ ...tally, ...nothing }], stock(0))).toEqual([]);
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
