import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JobView, NewEvent } from '$lib/journal';
import { keptForCourse, lastLaidAct } from './lay-reading.ts';
import { pilesLeft } from './piles-left.ts';
import { planRequestOf } from './plan-request.ts';
import { stockOf } from './stock.ts';
import { smallRoof } from '../../../tests/support/small-roof.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';
import { rounds } from '../../../tests/support/rounds.ts';

const GRADES = Journal.id(4);
/** 60 slates of a pallet of 90 sorted, 20 on each pile. */
const SET_UP: NewEvent[] = [
  { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 90 } },
  ...[420, 560, 740].map((hundredths): NewEvent => ({
    type: 'slateGauged',
    body: { palletId: 'p1', points: [hundredths], gradesId: null, pile: null }
  })),
  { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 5] } },
  ...smallRoof({ rafterLengthMm: 1200, eaveWidthMm: 1500 }),
  ...Array.from({ length: 60 }, (_slate, n) => tap(1 + (n % 3)))
];
function tap(pile: number): NewEvent {
  return { type: 'slateTapped', body: { palletId: 'p1', pile, gradesId: GRADES } };
}
const job = () => new Journal().add(...SET_UP);
const move = (fromPile: number, toPile: number, slates = 1): NewEvent => ({
  type: 'slatesMoved',
  body: { ...{ fromPile, toPile, gradesId: GRADES, slates }, thicknessHundredths: 430 }
});
const standing = (view: JobView) => stockOf(view).piles.map(({ onPile }) => onPile);
const all = (view: JobView) => stockOf(view).piles.reduce((sum, { slates }) => sum + slates, 0);
const left = (view: JobView): number[] => {
  const ground = planRequestOf(view);
  if (!ground.ok) throw new Error(ground.missing);
  return pilesLeft(ground).map((pile) => pile.left);
};

describe('J61 a slate moved to another pile', () => {
  it('leaves the one and joins the other, in stock and in laying, and an undo puts it back', () => {
    const journal = job();
    const [stock, laying] = [all(journal.view), left(journal.view)];
    journal.add(move(1, 3));
    expect(standing(journal.view)).toEqual([19, 20, 21]);
    expect(all(journal.view)).toBe(stock);
    expect(left(journal.view)).toEqual([laying[0] - 1, laying[1], laying[2] + 1]);
    expect(lastLaidAct(journal.view)).toMatchObject({ kind: 'moved', fromPile: 1, toPile: 3 });
    const voids = Journal.id(journal.length - 1);
    journal.add({ type: 'entryVoided', body: { voids } });
    expect(standing(journal.view)).toEqual([20, 20, 20]);
    expect(left(journal.view)).toEqual(laying);
  });

  it('is kept for a course, which changes no count', () => {
    const kept = move(1, 3);
    const keptFor = { slopeId: 'south', course: 3 };
    const { view } = job().add({ ...kept, body: { ...kept.body, keptFor } } as NewEvent);
    expect(keptForCourse(view, keptFor)).toEqual([{ pile: 3, slates: 1, thicknessMm: 4.3 }]);
    expect(keptForCourse(view, { slopeId: 'south', course: 4 })).toEqual([]);
    expect(standing(view)).toEqual([19, 20, 21]);
  });

  it('stays on its pile, which keeps its number where the grades have fewer', () => {
    const fewer: NewEvent = { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [5.5] } };
    expect(standing(job().add(move(1, 3), fewer).view)).toEqual([19, 20, 21]);
  });

  it('counts once, however moves, taps, courses and counts follow each other', () => {
    const pile = fc.constantFrom(1, 2, 3);
    const act = fc.oneof(
      fc.record({ kind: fc.constant('move' as const), pile, to: pile }),
      fc.record({ kind: fc.constantFrom('tap' as const, 'lose' as const, 'count' as const), pile })
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), (acts) => {
        const journal = job();
        const stands = [20, 20, 20];
        for (const one of acts) {
          const at = one.pile - 1;
          if (one.kind === 'tap') {
            stands[at]++;
            journal.add(tap(one.pile));
          } else if (one.kind === 'move') {
            if (one.to === one.pile) continue;
            stands[at]--;
            stands[one.to - 1]++;
            journal.add(move(one.pile, one.to));
          } else if (one.kind === 'lose') {
            stands[at]--;
            const body = { pile: one.pile, gradesId: GRADES, slates: 1, reason: 'broken' as const };
            journal.add({ type: 'slatesLost', body });
          } else {
            const ground = planRequestOf(journal.view);
            if (!ground.ok) throw new Error(ground.missing);
            const taken = ground.before[at].slates - ground.left[at].slates;
            const { tallied, toCome } = ground.stock.piles[at];
            const body = { gradesId: GRADES, pile: one.pile, slates: stands[at], tallied, taken };
            journal.add({ type: 'pileCounted', body });
            // A count that tells the truth changes nothing of what is still to come.
            expect(stockOf(journal.view).piles[at].toCome).toBe(toCome);
          }
        }
        const toCome = stockOf(journal.view).piles.map((one) => one.toCome);
        expect(left(journal.view)).toEqual(stands.map((n, at) => n + toCome[at]));
      }),
      { numRuns: rounds(60, 3000) }
    );
  });
});
