import { describe, expect, it } from 'vitest';
import { totalCount } from '$lib/engine/thickness';
import type { NewEvent } from '$lib/journal';
import { gradesBody, gradeOfPile, misfitsOf, pileMeanings, pilesUnder } from './pile-numbers.ts';
import { pileOf } from '$lib/engine/grading';
import { gradesOf } from './queries.ts';
import { stockOf } from './stock.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';

const PALLET: NewEvent = { type: 'palletAdded', body: { palletId: 'p', label: 'P', slates: 0 } };

/** A job in which grades are set and slates sorted by them. */
class Job {
  readonly journal = new Journal().add(PALLET);

  grades(...thresholdsMm: number[]): this {
    const body = gradesBody(this.view, { method: 'byHand' }, thresholdsMm);
    this.journal.add({ type: 'gradesSet', body });
    return this;
  }

  sort(...thicknessMm: number[]): this {
    const grades = gradesOf(this.view);
    if (!grades) throw new Error('no grades');
    for (const mm of thicknessMm) {
      const pile = grades.numbers[pileOf(mm, grades.thresholdsMm) - 1];
      const points = [Math.round(mm * 100)];
      const body = { palletId: 'p', points, gradesId: grades.gradesId, pile };
      this.journal.add({ type: 'slateGauged', body });
    }
    return this;
  }

  merge(fromPile: number, toPile: number, slates: number): this {
    const gradesId = gradesOf(this.view)?.gradesId ?? null;
    const body = { fromPile, toPile, gradesId, slates, why: 'merged' } as const;
    this.journal.add({ type: 'slatesMoved', body });
    return this;
  }

  get view() {
    return this.journal.view;
  }

  get numbers() {
    return gradesOf(this.view)?.numbers;
  }

  get piles() {
    return stockOf(this.view).piles.map(({ number, onPile }) => [number, onPile]);
  }
}

const three = () => new Job().grades(7.2, 5.9).sort(8, 6.5, 6.6, 5);

describe('J62 the numbers of piles', () => {
  it('are 1, 2, 3 for as long as no slate lies on one, and are not written down', () => {
    const job = new Job().grades(7.2, 5.9).grades(8, 6.6, 5);
    expect(job.numbers).toEqual([1, 2, 3, 4]);
    expect(gradesBody(job.view, { method: 'byHand' }, [6]).piles).toBeUndefined();
  });

  it('stay where no boundary moves more than 0.2 mm, and not a hundredth beyond', () => {
    expect(three().grades(7.4, 5.7).numbers).toEqual([1, 2, 3]);
    expect(three().grades(7.41, 5.9).numbers).toEqual([4, 5, 3]);
  });

  it('do not creep: what counts is where a pile was opened', () => {
    const job = three().grades(7.4, 5.9).sort(8, 6.5);
    expect(job.numbers).toEqual([1, 2, 3]);
    expect(job.grades(7.5, 5.9).numbers).toEqual([4, 5, 3]);
  });

  it('do not creep either where the grades that opened a pile were taken back', () => {
    const job = new Job().grades(7.45, 5.9).sort(8).grades(7.3, 5.9).sort(8);
    // The pallet is the first entry, the grades that opened the piles are the second.
    job.journal.add({ type: 'entryVoided', body: { voids: Journal.id(1) } });
    // What is known first of pile 1 is 7.3: 7.1 is within 0.2 mm of it, 7.05 of 7.1 alone.
    expect(job.grades(7.1, 5.9).numbers).toEqual([1, 2, 3]);
    expect(job.grades(7.05, 5.9).numbers?.[0]).not.toBe(1);
  });

  it('of the piles beside the grades stay, with their slates, in the order of their mean', () => {
    const job = three().grades(7.3, 6.6);
    expect(job.numbers).toEqual([1, 4, 5]);
    // 2 has 6.5 and 6.6, 3 has 5; on 4 and 5 nothing lies yet.
    expect(job.piles).toEqual([
      [1, 1],
      [4, 0],
      [5, 0],
      [2, 2],
      [3, 1]
    ]);
    expect(job.sort(7, 6.55, 6.1).piles).toEqual([
      [1, 1],
      [4, 1],
      [2, 2],
      [5, 2],
      [3, 1]
    ]);
  });

  it('are said before grades are set: kept, opened, beside', () => {
    const { view } = three();
    expect(pilesUnder(view, [7.3, 6.6])).toEqual({
      numbers: [1, 4, 5],
      kept: [{ number: 1, isMoved: true }],
      opened: [4, 5],
      beside: [2, 3]
    });
    expect(pilesUnder(view, [7.2, 5.9]).kept.map(({ isMoved }) => isMoved)).toEqual([
      false,
      false,
      false
    ]);
  });

  it('come back where grades return to what a pile was opened for', () => {
    const job = three().grades(7.3, 6.6).sort(7);
    expect(job.grades(7.2, 5.9).numbers).toEqual([1, 2, 3]);
    expect(job.piles).toContainEqual([4, 1]);
  });

  it('of an older file are those of its grades, whatever they mean', () => {
    const older: NewEvent = { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6.6] } };
    const job = three();
    job.journal.add(older);
    expect(job.numbers).toEqual([1, 2]);
    expect(job.piles).toEqual([
      [1, 1],
      [2, 2],
      [3, 1]
    ]);
    job.sort(5.2);
    expect(pileMeanings(job.view).find(({ number }) => number === 2)).toEqual({
      number: 2,
      opened: { fromMm: 5.9, toMm: 7.2 },
      range: { fromMm: 0, toMm: 7.2 }
    });
  });

  it('of piles made by feel become those of the first grades of as many piles', () => {
    const felt = (...piles: number[]): NewEvent[] =>
      piles.map((pile) => ({ type: 'slateTapped', body: { palletId: 'p', pile, gradesId: null } }));
    const job = new Job();
    job.journal.add(...felt(1, 2, 2, 3));
    expect(pilesUnder(job.view, [7.2, 5.9]).numbers).toEqual([1, 2, 3]);
    expect(pilesUnder(job.view, [7.2, 6.5, 5.9]).numbers).toEqual([4, 5, 6, 7]);
  });

  it('tell the grade that a slate was sorted by', () => {
    const { view, journal } = three().grades(7.3, 6.6);
    const gradesId = Journal.id(journal.length - 1);
    expect([1, 4, 5, 2].map((number) => gradeOfPile(view, gradesId, number))).toEqual([1, 2, 3, 0]);
    expect(gradeOfPile(view, null, 2)).toBe(2);
  });

  it('count what was measured on to a pile and is not of its new band', () => {
    const { view } = new Job().grades(7.2).sort(7.2, 7.25, 7.3, 8);
    expect(misfitsOf(view, 1, { fromMm: 7.3, toMm: Infinity })).toBe(2);
  });
});

describe('J63 a pile put on another', () => {
  const job = () => three().grades(7.3, 6.6).sort(7).merge(2, 4, 2);

  it('brings its slates with their thickness, and what it is for is said', () => {
    const { view, piles } = job();
    expect(piles).toContainEqual([4, 3]);
    expect(piles).not.toContainEqual([2, 2]);
    const four = stockOf(view).piles.find(({ number }) => number === 4);
    expect([...(four?.bins.hundredths ?? [])]).toEqual([650, 660, 700]);
    expect(totalCount(four!.bins)).toBe(3);
    expect(pileMeanings(view).find(({ number }) => number === 4)?.range).toEqual({
      fromMm: 5.9,
      toMm: 7.3
    });
  });

  it('is named no more', () => {
    expect(job().grades(7.2, 5.9).numbers).toEqual([1, 6, 3]);
  });

  it('is back with an undo', () => {
    const back = job();
    back.journal.add({ type: 'entryVoided', body: { voids: Journal.id(back.journal.length - 1) } });
    expect(back.piles).toEqual(three().grades(7.3, 6.6).sort(7).piles);
  });
});
