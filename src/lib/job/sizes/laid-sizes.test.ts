import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { partOf } from '$lib/journal';
import { TestJournal as Journal } from '../../../../tests/support/test-journal.ts';
import { laidOfSizes } from './laid-sizes.ts';
import { longerBelow, misplacedSizes, sizesLaidOut, sizesToLay, viewOfSize } from './index.ts';

const slope = (slopeId: string): NewEvent => ({
  type: 'slopeSet',
  body: {
    ...{ slopeId, name: slopeId, rafterLengthMm: 4000, eaveWidthMm: 4000 },
    ...{ pitchDegrees: 40, eaveHeightMm: 0, openings: [] },
    ...{ left: { kind: 'verge' as const }, right: { kind: 'verge' as const } }
  }
});
/** A pallet of a size with a sample that was gauged, and two grades. */
const pallet = (sizeId: string, slates: number): NewEvent[] => [
  { type: 'palletAdded', body: { palletId: sizeId, label: sizeId, slates, sizeId } },
  ...Array.from({ length: 20 }, (_, n): NewEvent => ({
    type: 'slateGauged',
    body: { palletId: sizeId, points: [500 + 9 * n], gradesId: null, pile: null }
  })),
  { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6], sizeId } }
];
const START: NewEvent[] = [
  {
    type: 'slateSpecSet',
    body: {
      ...{ lengthMm: 500, widthMm: 250, nailing: 'centre' as const, headlapMm: 90 },
      ...{ jointMinMm: 3, jointMaxMm: 5, eaveOverhangMm: 50, vergeOverhangMm: 50 }
    }
  },
  slope('south'),
  slope('north'),
  {
    type: 'slateSizesSet',
    body: {
      sizes: [
        { sizeId: 'long', lengthMm: 500, widthMm: 250 },
        { sizeId: 'mid', lengthMm: 400, widthMm: 200 },
        { sizeId: 'short', lengthMm: 300, widthMm: 200 }
      ]
    }
  },
  ...pallet('long', 500),
  ...pallet('mid', 600),
  ...pallet('short', 700)
];
const choose = (...courses: [long: number, mid: number, short: number]): NewEvent => ({
  type: 'setCoursesChosen',
  body: {
    courses: ['long', 'mid', 'short'].map((sizeId, at) => ({ sizeId, courses: courses[at] }))
  }
});
const lay = (slopeId: string, course: number): NewEvent => ({
  type: 'courseLaid',
  body: { slopeId, course, piles: [{ pile: 1, pieces: 16 }] }
});
const counts = (journal: Journal): number[] => {
  const laid = sizesLaidOut(journal.view);
  if (!laid.ok) throw new Error(laid.reason);
  return laid.sets.map(({ courses }) => courses);
};
const free: NewEvent = { type: 'setCoursesChosen', body: { courses: [] } };
const laying = (...acts: NewEvent[]) => new Journal().add(...START, ...acts);
const proposed = counts(laying());

describe('a course of which a part was laid', () => {
  const part = (pieces: number): NewEvent => ({
    type: 'coursePartLaid',
    body: {
      ...{ slopeId: 'south', course: 1, from: 'left' as const },
      piles: pieces > 0 ? [{ pile: 1, pieces }] : []
    }
  });
  const chosen = choose(...(proposed as [number, number, number]));
  const lying = (...acts: NewEvent[]) =>
    laidOfSizes(laying(chosen, ...acts).view).map(({ course, sizeId }) => [course, sizeId]);

  it('lies once, where it was ended too, and of the size that the whole was laid of', () => {
    expect(lying(part(4))).toEqual([[1, 'long']]);
    const [long, mid, short] = proposed;
    const other = choose(0, mid + long, short);
    expect(lying(part(4), other, lay('south', 1))).toEqual([[1, 'mid']]);
  });

  it('does not lie where none of it lies after all', () => {
    expect(lying(part(4), part(0))).toEqual([]);
  });
});

describe('shorter slates begun earlier than chosen', () => {
  const chosen = choose(...(proposed as [number, number, number]));
  const [long, mid] = proposed;

  it('every size is still to lay at first, longest first on each slope', () => {
    const toLay = sizesToLay(laying(chosen).view);
    expect(toLay.map(({ sizeId, slopeId }) => [sizeId, slopeId])).toEqual(
      ['long', 'mid', 'short'].flatMap((sizeId) => [
        [sizeId, 'north'],
        [sizeId, 'south']
      ])
    );
    expect(toLay[0].courses).toEqual(Array.from({ length: long }, (_, at) => at + 1));
  });

  it('tells the courses of longer slates below that are not laid, of its slope only', () => {
    const { view } = laying(
      chosen,
      ...Array.from({ length: long - 2 }, (_, at) => lay('south', at + 1))
    );
    expect(longerBelow(view, 'south', long + 1)).toEqual([
      { sizeId: 'long', lengthMm: 500, slopeId: 'south', courses: [long - 1, long] }
    ]);
    expect(longerBelow(view, 'north', long + 1)[0].courses).toHaveLength(long);
    expect(longerBelow(view, 'south', long + mid + 1).map(({ sizeId }) => sizeId)).toEqual([
      'long',
      'mid'
    ]);
  });

  it('is silent in the order chosen', () => {
    const all = Array.from({ length: long }, (_, at) => lay('south', at + 1));
    const { view } = laying(chosen, ...all);
    expect(longerBelow(view, 'south', long + 1)).toEqual([]);
    expect(longerBelow(laying(chosen).view, 'south', 1)).toEqual([]);
  });
});

describe('a choice changed while the roof is being laid', () => {
  const [long, mid, short] = proposed;
  const chosen = choose(long, mid, short);

  it('courses proposed again keep what lies', () => {
    const more: NewEvent = {
      type: 'palletAdded',
      body: { palletId: 'p', label: 'p', slates: 4000, sizeId: 'short' }
    };
    const whole = Array.from({ length: long }, (_, at) => lay('south', at + 1));
    const begun = [chosen, ...whole, lay('south', long + 1), lay('south', long + 2)];
    expect(counts(laying(chosen, more, free))[0]).toBeLessThan(long);
    const [now, next] = counts(laying(...begun, more, free));
    expect(now).toBe(long);
    expect(next).toBeGreaterThanOrEqual(2);
    expect(misplacedSizes(laying(...begun, more, free).view)).toEqual([]);
  });

  it('slates that ran out let the longer size end where it is', () => {
    const whole = Array.from({ length: 2 }, (_, at) => lay('south', at + 1));
    const ranOut: NewEvent = {
      type: 'slatesLost',
      body: { pile: 1, gradesId: null, slates: 420, reason: 'ranOut', sizeId: 'long' }
    };
    expect(long).toBeGreaterThan(2);
    expect(counts(laying(chosen, ...whole, ranOut, free))[0]).toBe(2);
  });

  it('what lies of another size than now chosen is told, and comes off its own piles', () => {
    const whole = Array.from({ length: long }, (_, at) => lay('south', at + 1));
    // Two courses more of the short one than of the long one fewer: the rafter is filled all the same.
    const { view } = laying(chosen, ...whole, choose(long - 2, mid + 1, short + 3));
    const laid = sizesLaidOut(view);
    expect(laid).toMatchObject({ ok: true, standing: 'chosen' });
    expect(misplacedSizes(view)).toEqual([
      { slopeId: 'south', courses: [long - 1, long], laidOf: 'long', nowOf: 'mid' }
    ]);
    const laidIn = (sizeId: string) =>
      Object.keys(partOf(viewOfSize(view, sizeId), 'laying').laid).length;
    expect(['long', 'mid', 'short'].map(laidIn)).toEqual([long, 0, 0]);
  });
});
