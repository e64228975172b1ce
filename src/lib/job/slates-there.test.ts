import { describe, expect, it } from 'vitest';
import type { NewEvent } from '$lib/journal';
import { roofOrder } from '$lib/engine/roof';
import { settingsOf } from './queries.ts';
import { keptShare, keptShares, reservedOf } from './reserve.ts';
import { roofLayoutOf } from './roof-of.ts';
import { planRequestOf } from './plan-request.ts';
import { slatesThere } from './slates-there.ts';
import { smallRoof } from '../../../tests/support/small-roof.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';

const ROOF = smallRoof({ rafterLengthMm: 1600, eaveWidthMm: 2500 });
const PALLET: NewEvent = {
  type: 'palletAdded',
  body: { palletId: 'p1', label: 'A', slates: 300 }
};
const READINGS = [420, 560, 640, 740].map((hundredths): NewEvent => ({
  type: 'slateGauged',
  body: { palletId: 'p1', points: [hundredths], gradesId: null, pile: null }
}));
/** The act of the grades lies behind slate, slope, pallet and four readings. */
const GRADES_ID = Journal.id(7);
const GRADES: NewEvent = { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 5] } };
const tapped = (slates: number): NewEvent[] =>
  Array.from({ length: slates }, (_slate, n) => ({
    type: 'slateTapped',
    body: { palletId: 'p1', pile: 1 + (n % 3), gradesId: GRADES_ID }
  }));
const aside = (slates: number): NewEvent[] =>
  Array.from({ length: slates }, () => ({
    type: 'slateSetAside',
    body: { palletId: 'p1', reason: 'colour', use: 'undereave' }
  }));
const graded = (...acts: NewEvent[]) =>
  new Journal().add(...ROOF, PALLET, ...READINGS, GRADES, ...acts);

function thereOf({ view }: Journal) {
  const roof = roofLayoutOf(view);
  if (!roof.ok) throw new Error('the roof is refused');
  return slatesThere(view, roof);
}

describe('the slates that a job has for its roof', () => {
  it('of a job with no stock are not told', () => {
    expect(thereOf(new Journal().add(...ROOF))).toBeUndefined();
  });

  it('are those of its pallets before there are grades, and the same after', () => {
    expect(thereOf(new Journal().add(...ROOF, PALLET))?.slates).toBe(300);
    expect(thereOf(new Journal().add(...ROOF, PALLET, ...READINGS))?.slates).toBe(300);
    expect(thereOf(graded())?.slates).toBe(300);
    expect(thereOf(graded(...tapped(120)))?.slates).toBe(300);
  });

  it('are those that the plan counts, set aside once and for the undereave alone', () => {
    const journal = graded(...tapped(294), ...aside(6));
    const ground = planRequestOf(journal.view);
    if (!ground.ok) throw new Error(ground.missing);
    const plan = ground.before.reduce((sum, { slates }) => sum + slates, 0);
    expect(thereOf(journal)).toMatchObject({ slates: plan, forUndereave: 6 });
    expect(plan + 6).toBe(300);
  });

  it('are as counted by hand where somebody counted, slate-and-a-halves too', () => {
    const count = (pile: number, slates: number, wide?: number): NewEvent => ({
      type: 'pileCounted',
      body: {
        ...{ pile, slates, gradesId: GRADES_ID, tallied: 100 },
        ...(wide !== undefined && { slateAndAHalves: wide })
      }
    });
    const journal = graded(...tapped(300), count(1, 90, 7));
    expect(thereOf(journal)).toMatchObject({ slates: 290, slateAndAHalves: 7 });
    expect(thereOf(journal.add(count(2, 100, 5)))).toMatchObject({ slateAndAHalves: 12 });
    expect(thereOf(graded())?.slateAndAHalves).toBeUndefined();
  });

  it('stay as many when they are laid; lost ones are told', () => {
    const lay: NewEvent = {
      type: 'courseLaid',
      body: { slopeId: 'south', course: 1, piles: [{ pile: 1, pieces: 10 }] }
    };
    const lose: NewEvent = {
      type: 'slatesLost',
      body: { pile: 1, gradesId: GRADES_ID, slates: 4, reason: 'broken' }
    };
    expect(thereOf(graded(...tapped(300), lay, lose))).toMatchObject({ slates: 300, lost: 4 });
  });

  it('serve no undereave that comes ready cut', () => {
    const ordered: NewEvent = { type: 'jobSettingsSet', body: { undereaveOrdered: true } };
    const there = thereOf(graded(...tapped(290), ...aside(10), ordered));
    expect(there).toMatchObject({ isUndereaveCut: false, forUndereave: 0, slates: 290 });
  });

  it('with what is ordered are enough for the courses once each pile has kept its reserve', () => {
    const roof = roofLayoutOf(graded().view);
    if (!roof.ok) throw new Error('the roof is refused');
    for (const slates of [7, 30, 41, 62]) {
      const pallet: NewEvent = {
        type: 'palletAdded',
        body: { palletId: 'p1', label: 'A', slates }
      };
      const job = new Journal().add(...ROOF, pallet, ...READINGS, GRADES, ...tapped(slates));
      const ground = planRequestOf(job.view);
      if (!ground.ok) throw new Error(ground.missing);
      const settings = { ...settingsOf(job.view), battenLengthMm: 4800 };
      const order = roofOrder(roof.totals, settings, [], {}, thereOf(job));
      const ordered = order.slates
        .filter(({ kind }) => kind !== 'slate-and-a-half')
        .reduce((sum, line) => sum + line.order, 0);
      expect(ordered).toBeGreaterThan(4);
      const takes = roof.totals.slates + roof.totals.undereaveSlates;
      const share = settings.breakageShare + settings.sparesShare;
      /** What the piles may give once so many more slates lie on the second. */
      const give = (more: number): number =>
        ground.before.reduce((sum, pile, index) => {
          const has = pile.slates + (index === 1 ? more : 0);
          return sum + has - reservedOf(has, share);
        }, 0);
      expect(give(ordered)).toBeGreaterThanOrEqual(takes);
      expect(give(ordered - 4), 'and no more than rounding asks for').toBeLessThan(takes);
    }
  });

  it('are told of a job whose file keeps back more than there is', () => {
    const settings = { breakageShare: 0.9, sparesShare: 0.9 };
    expect(keptShares(settings)).toEqual({ breakageShare: 0.9, sparesShare: 0 });
    expect(keptShare({ breakageShare: 0.05, sparesShare: 0.02 })).toBeCloseTo(0.07, 12);
    const job = graded({ type: 'jobSettingsSet', body: settings });
    const roof = roofLayoutOf(job.view);
    if (!roof.ok) throw new Error('the roof is refused');
    const all = { ...settingsOf(job.view), ...keptShares(settings) };
    expect(roofOrder(roof.totals, all, [], {}, thereOf(job)).slates[0].order).toBeGreaterThan(0);
  });
});
