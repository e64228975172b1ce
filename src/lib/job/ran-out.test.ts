import { describe, expect, it } from 'vitest';
import { planCourses } from '$lib/engine/courses';
import { piecesInRun } from '$lib/engine/roof';
import type { NewEvent } from '$lib/journal';
import { planAdoption, adoptedPlanOf } from './adopted-plan.ts';
import { type PlanGround, planRequestOf } from './plan-request.ts';
import { ranOut } from './ran-out.ts';
import { smallRoof } from '../../../tests/support/small-roof.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';

const GRADES = Journal.id(15);
const GAUGED = [420, 440, 460, 520, 540, 560, 580, 610, 640, 700, 720, 740];
const SET_UP: NewEvent[] = [
  ...smallRoof({ rafterLengthMm: 2400, eaveWidthMm: 4000 }),
  { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 300 } },
  ...GAUGED.map((hundredths): NewEvent => ({
    type: 'slateGauged',
    body: { palletId: 'p1', points: [hundredths], gradesId: null, pile: null }
  })),
  { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 5] } }
];

function groundOf(journal: Journal): PlanGround {
  const ground = planRequestOf(journal.view);
  if (!ground.ok) throw new Error(ground.missing);
  return ground;
}

/** A job with so many slates sorted on each pile. */
function sorted(onPile: readonly number[]): Journal {
  const taps = onPile.flatMap((slates, index) =>
    Array.from({ length: slates }, (): NewEvent => ({
      type: 'slateTapped',
      body: { palletId: 'p1', pile: index + 1, gradesId: GRADES }
    }))
  );
  return new Journal().add(...SET_UP, ...taps);
}

/** The same with its best plan adopted. */
function planned(onPile: readonly number[]) {
  const journal = sorted(onPile);
  const ground = groundOf(journal);
  const plan = planCourses(ground.request);
  if (plan.status !== 'optimal') throw new Error(JSON.stringify(plan));
  const body = planAdoption(ground, plan, GRADES, 1.5, 'mostEven');
  return { journal: journal.add({ type: 'planAdopted', body }), plan };
}

/** The same with two courses of pile 1, then five of pile 2, then pile 3 to the ridge. */
function byHand(onPile: readonly number[]): Journal {
  const journal = sorted(onPile);
  const courses = groundOf(journal).roof.demand.map(({ slopeId, course, runs }) => ({
    ...{ slopeId, course },
    piles: [
      {
        pile: course <= 2 ? 1 : course <= 7 ? 2 : 3,
        pieces: runs.reduce((sum, run) => sum + piecesInRun(run), 0)
      }
    ]
  }));
  const figures = { gradesId: GRADES, kickAllowanceMm: 1.5, expectedKickers: 0, joints: 0 };
  return journal.add({ type: 'planAdopted', body: { ...figures, courses } });
}

function counted(journal: Journal, pile: number, slates: number) {
  const { tallied } = groundOf(journal).stock.piles[pile - 1];
  const body = { gradesId: GRADES, pile, slates, tallied, taken: 0 };
  const ground = groundOf(journal.add({ type: 'pileCounted', body }));
  const adopted = adoptedPlanOf(journal.view, ground);
  if (!adopted) throw new Error('no plan');
  return { ground, rest: adopted.rest, ran: ranOut(ground, adopted.rest, pile) };
}

describe('a pile that ran out', () => {
  it('counted as 0 stands at 0, and what is on the pallets is named apart', () => {
    const { journal } = planned([30, 30, 30]);
    const before = groundOf(journal).stock.piles[1].toCome;
    const { ran, rest } = counted(journal, 2, 0);
    expect(ran.standing).toBe(0);
    expect(before).toBeGreaterThan(0);
    expect(ran.toCome).toBe(before);
    expect(ran.missing).toBe(rest.piles[1].slates);
    expect(ran.missing).toBeGreaterThan(0);
    expect(ran.request.piles[1]).toMatchObject({ slates: 0, reservedSlates: 0 });
  });

  it('asks to sort in proportion to what the pallets are expected to hold of it', () => {
    const { journal } = planned([30, 30, 30]);
    const { ran, ground } = counted(journal, 2, 30);
    const unsorted = ground.stock.piles.reduce((sum, { toCome }) => sum + toCome, 0);
    if (ran.missing === 0 || ran.toSort === undefined) throw new Error('nothing is missing');
    expect(ran.toSort).toBe(Math.ceil((ran.missing * unsorted) / ran.toCome));
    expect(ran.toSort).toBeGreaterThanOrEqual(ran.missing);
  });

  it('is borrowed for by whole courses: the uppermost from a thinner pile, the lowest from a thicker', () => {
    const lenders = new Set<string>();
    for (const onPile of [
      [120, 90, 90],
      [40, 90, 170]
    ]) {
      const { ran, rest } = counted(byHand(onPile), 2, 30);
      const own = rest.courses.filter(({ parts }) => parts.some(({ pile }) => pile === 2));
      expect(ran.missing).toBeGreaterThan(0);
      expect(ran.neighbours.map(({ pile }) => pile)).toEqual([1, 3]);
      for (const { pile, borrowed } of ran.neighbours) {
        if (!borrowed) continue;
        lenders.add(pile < 2 ? 'thicker' : 'thinner');
        const { plan, slates, stillMissing, courses } = borrowed;
        expect(plan.piles[1].slates).toBe(rest.piles[1].slates - slates);
        expect(plan.piles[pile - 1].slates).toBe(rest.piles[pile - 1].slates + slates);
        expect(plan.piles[pile - 1].spareSlates).toBeGreaterThanOrEqual(0);
        expect(stillMissing).toBe(Math.max(0, ran.missing - slates));
        expect(plan.kickers - rest.kickers).toBeCloseTo(borrowed.kickersGained, 9);
        const lowest = pile === 1 ? own[0] : own[own.length - courses];
        expect(borrowed.first.course).toBe(lowest.course);
        if (pile === 3) expect(borrowed.rises).toBe(false);
      }
    }
    expect([...lenders].sort()).toEqual(['thicker', 'thinner']);
  });

  it('is not borrowed for from a pile that has none to spare', () => {
    const { journal } = planned([80, 80, 80]);
    const emptied = journal.add({
      type: 'pileCounted',
      body: { gradesId: GRADES, pile: 3, slates: 0, tallied: 80, taken: 0 }
    });
    const { ran } = counted(emptied, 2, 0);
    const thin = ran.neighbours.find(({ pile }) => pile === 3);
    const spare = groundOf(emptied).request.piles[2].slates;
    expect(spare).toBeLessThan(40);
    expect(thin?.borrowed).toBeUndefined();
  });

  it('leaves nothing to do where what stands there is enough', () => {
    const { journal } = planned([80, 80, 80]);
    const { ran } = counted(journal, 1, 80);
    expect(ran.missing).toBe(0);
    expect(ran.neighbours.every(({ borrowed }) => borrowed === undefined)).toBe(true);
  });
});
