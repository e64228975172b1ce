import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { kickProbabilityWithin, pileOf } from '$lib/engine/grading';
import { binsFromPairs, totalCount } from '$lib/engine/thickness';
import { EMPTY_VIEW, type NewEvent, type StoredEvent, foldAll, readEvent } from '$lib/journal';
import { stockOf } from '../stock.ts';
import { createPilesAsSorted } from './piles-as-sorted.ts';

const pilesAsSorted = createPilesAsSorted();

const GRADES_ID = '01900000-0000-7000-8000-000000000002';
const THRESHOLDS_MM = [6.5, 5.5];
const ALLOWANCE_MM = 1;

const start: NewEvent[] = [
  { type: 'jobOpened', body: { name: 'Barn' } },
  { type: 'jobSettingsSet', body: { gaugeSdMm: 0 } },
  { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [...THRESHOLDS_MM] } },
  { type: 'palletAdded', body: { palletId: 'a', label: 'A', slates: 6000 } }
];

function viewOf(acts: readonly NewEvent[]) {
  const events = [...start, ...acts].map((act, place): StoredEvent => ({
    ...act,
    id: `01900000-0000-7000-8000-${String(place).padStart(12, '0')}`,
    jobId: '01900000-0000-7000-8000-00000000ffff',
    deviceId: '01900000-0000-7000-8000-00000000fffe',
    deviceSeq: place + 1,
    at: '2024-05-01T08:00:00.000Z',
    sorter: 'Finch',
    v: 1
  }));
  return foldAll(events.map(readEvent), EMPTY_VIEW);
}

const gauged = (hundredths: number): NewEvent => ({
  type: 'slateGauged',
  body: {
    palletId: 'a',
    points: [hundredths],
    gradesId: GRADES_ID,
    pile: pileOf(hundredths / 100, THRESHOLDS_MM)
  }
});

/** Slates of a normal stock, each felt with an error of so many mm, tapped, and so many checked. */
function sortByHand(slates: number, sdMm: number, everyChecked: number) {
  const random = createRandom(71);
  const truth: [number, number][][] = [[], [], []];
  const acts: NewEvent[] = [];
  for (let slate = 0; slate < slates; slate++) {
    const hundredths = Math.round(600 + 60 * randomNormal(random));
    const pile = pileOf(hundredths / 100 + sdMm * randomNormal(random), THRESHOLDS_MM);
    truth[pile - 1].push([hundredths, 1]);
    acts.push({ type: 'slateTapped', body: { palletId: 'a', pile, gradesId: GRADES_ID } });
    if (slate % everyChecked === 0)
      acts.push({
        type: 'slateChecked',
        body: { palletId: 'a', of: 'tap', pile, gradesId: GRADES_ID, points: [hundredths] }
      });
  }
  return { acts, truth: truth.map((pile) => binsFromPairs(pile)) };
}

/** A random sample of the same stock by gauge, drawn on to no pile. */
function sample(slates: number): NewEvent[] {
  const random = createRandom(5);
  return Array.from({ length: slates }, (): NewEvent => ({
    type: 'slateGauged',
    body: {
      palletId: 'a',
      points: [Math.round(600 + 60 * randomNormal(random))],
      gradesId: null,
      pile: null
    }
  }));
}

describe('pilesAsSorted', () => {
  it('is the piles themselves where nothing was gauged', () => {
    const view = viewOf([]);
    expect(pilesAsSorted(view, stockOf(view))).toMatchObject({
      byHandShare: 0,
      tapsAssumed: 0
    });
  });

  it('is the sharp piles where a gauge without error sorted all', () => {
    const view = viewOf([450, 520, 560, 590, 630, 660, 720, 800].map(gauged));
    const stock = stockOf(view);
    const { bins, byHandShare } = pilesAsSorted(view, stock);
    expect(byHandShare).toBe(0);
    for (const [pile, sharp] of stock.piles.entries()) {
      expect([...bins[pile].hundredths]).toEqual([...sharp.bins.hundredths]);
      expect(totalCount(bins[pile])).toBeCloseTo(sharp.slates, 9);
    }
  });

  it('assumes an error for taps of a hand that no spot check tells, and says how many', () => {
    const { acts } = sortByHand(40, 0.4, 1000);
    const view = viewOf([...sample(100), ...acts]);
    const stock = stockOf(view);
    const { tapsAssumed, byHandShare, bins, assumedHandSdMm } = pilesAsSorted(view, stock);
    expect(tapsAssumed).toBe(40);
    expect(byHandShare).toBe(1);
    expect(assumedHandSdMm).toBe(0.5);
    const foretold = bins.map((pile) => kickProbabilityWithin(pile, ALLOWANCE_MM));
    const sharp = stock.piles.map((pile) => kickProbabilityWithin(pile.bins, ALLOWANCE_MM));
    for (const [pile, chance] of foretold.entries()) expect(chance).toBeGreaterThan(sharp[pile]);
  });

  it('foretells by the assumed error what such a hand comes to', () => {
    const { acts, truth } = sortByHand(3000, 0.5, 100_000);
    const view = viewOf([...sample(3000), ...acts]);
    const { bins } = pilesAsSorted(view, stockOf(view));
    for (const [pile, real] of truth.entries()) {
      const foretold = kickProbabilityWithin(bins[pile], ALLOWANCE_MM);
      const happened = kickProbabilityWithin(real, ALLOWANCE_MM);
      expect(Math.abs(foretold - happened)).toBeLessThan(0.25 * happened);
    }
  });

  it('foretells the kickers of piles that a hand sorted', () => {
    const { acts, truth } = sortByHand(3000, 0.4, 10);
    const view = viewOf([...sample(3000), ...acts]);
    const stock = stockOf(view);
    const { bins, tapsAssumed } = pilesAsSorted(view, stock);
    expect(tapsAssumed).toBe(0);
    for (const [pile, real] of truth.entries()) {
      expect(totalCount(bins[pile])).toBeCloseTo(stock.piles[pile].slates, 6);
      const sharp = kickProbabilityWithin(stock.piles[pile].bins, ALLOWANCE_MM);
      const foretold = kickProbabilityWithin(bins[pile], ALLOWANCE_MM);
      const happened = kickProbabilityWithin(real, ALLOWANCE_MM);
      // Within a quarter of what happened, where the sharp piles are off by more.
      expect(Math.abs(foretold - happened)).toBeLessThan(0.25 * happened);
      expect(Math.abs(sharp - happened)).toBeGreaterThan(0.25 * happened);
    }
  });
});
