import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planByRule, planCourses } from '$lib/engine/courses';
import { runOutChances } from '$lib/engine/courses/risk';
import { piecesOfDemand } from '$lib/engine/roof';
import type { NewEvent } from '$lib/journal';
import { handCount } from './hand-count.ts';
import { ownPartsOf, ownPlanOf, pilesLacking, setPileOfCourse } from './own-plan.ts';
import { pilesLeft } from './piles-left.ts';
import { type PlanGround, planRequestOf } from './plan-request.ts';
import { undereaveLaying } from './undereave-draw.ts';
import { pileCounts } from './sorted/pile-counts.ts';
import { smallRoof } from '../../../tests/support/small-roof.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';
import { rounds } from '../../../tests/support/rounds.ts';

const [SPEC, SOUTH] = smallRoof({ rafterLengthMm: 1600, eaveWidthMm: 2500 });
const [, NORTH] = smallRoof({
  ...{ slopeId: 'north', name: 'North' },
  ...{ rafterLengthMm: 1600, eaveWidthMm: 2500 }
});
const GRADES = Journal.id(8);
const SET_UP: NewEvent[] = [
  ...[SPEC, SOUTH, NORTH],
  { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 300 } },
  ...[420, 560, 640, 740].map((hundredths): NewEvent => ({
    type: 'slateGauged',
    body: { palletId: 'p1', points: [hundredths], gradesId: null, pile: null }
  })),
  { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 5] } },
  ...Array.from({ length: 300 }, (_slate, n): NewEvent => ({
    type: 'slateTapped',
    body: { palletId: 'p1', pile: 1 + (n % 3), gradesId: GRADES }
  }))
];
const job = () => new Journal().add(...SET_UP);

function groundOf({ view }: Journal): PlanGround {
  const ground = planRequestOf(view);
  if (!ground.ok) throw new Error(ground.missing);
  return ground;
}
/** Slates of each pile that plans may use, and those that are left of it. */
const mayUse = (journal: Journal) => groundOf(journal).request.piles.map(({ slates }) => slates);
const left = (journal: Journal) => pilesLeft(groundOf(journal)).map((pile) => pile.left);
const WHOLE = groundOf(job());
const OF = piecesOfDemand(WHOLE.roof.demand[0]);
const [ROW, OTHER] = WHOLE.undereave;

/** The first course of a slope laid, whole or so many pieces of it, with its undereave row. */
function first(journal: Journal, slopeId: string, pieces = OF): NewEvent {
  const place = { slopeId, course: 1 };
  const said = undereaveLaying(groundOf(journal), place);
  const body = { ...place, piles: [{ pile: 1, pieces }], ...(said && { undereave: said }) };
  return pieces === OF
    ? { type: 'courseLaid', body }
    : { type: 'coursePartLaid', body: { ...body, from: 'left' } };
}
const undoLast = (journal: Journal): Journal =>
  journal.add({ type: 'entryVoided', body: { voids: Journal.id(journal.length - 1) } });
/** Full slates of the first course among so many of its pieces from the left. */
const slatesOf = (pieces: number): number => {
  const [run] = WHOLE.roof.demand[0].runs;
  const wide = Number(run.startsWithSlateAndAHalf);
  return pieces - wide - Number(pieces === OF && run.endsWithSlateAndAHalf);
};

describe('J64 undereave slates are kept back until they lie', () => {
  it('are less in the stock of every plan, and no less on the pile', () => {
    expect(ROW.slates).toBeGreaterThan(5);
    expect(mayUse(job())).toEqual([100 - ROW.slates - OTHER.slates, 100, 100]);
    expect(left(job())).toEqual([100, 100, 100]);
  });

  it('by the rule, as even as can be and on an own plan: no plan takes what a row needs', () => {
    const has = WHOLE.left.map(({ slates, reservedSlates }) => slates - reservedSlates);
    for (const plan of [planByRule(WHOLE.request), planCourses(WHOLE.request)]) {
      if (plan.status !== 'optimal') throw new Error('there are slates enough');
      const [{ slates }] = plan.piles;
      expect(slates + ROW.slates + OTHER.slates).toBeLessThanOrEqual(has[0]);
    }
    const start = planByRule(WHOLE.request);
    if (start.status !== 'optimal') throw new Error('there are slates enough');
    const all = WHOLE.request.courses.reduce(
      (own, course) => setPileOfCourse(WHOLE, own, course, 1),
      ownPartsOf(start)
    );
    const lays = ownPlanOf(WHOLE, all).piles[0].slates;
    expect(pilesLacking(WHOLE, ownPlanOf(WHOLE, all))).toEqual([
      { pile: 1, takes: lays + ROW.slates + OTHER.slates, has: 100 }
    ]);
  });

  it('count for the chance that the pile runs out', () => {
    const estimates = pileCounts(WHOLE, [], undefined);
    expect(estimates?.map(({ meanSlates, takenFirst }) => [meanSlates, takenFirst])).toEqual([
      [100, ROW.slates + OTHER.slates],
      [100, 0],
      [100, 0]
    ]);
    const plan = planByRule(WHOLE.request);
    if (plan.status !== 'optimal' || !estimates) throw new Error('there are slates enough');
    const lays = plan.piles[0].slates;
    const unsure = estimates.map((one) => ({ ...one, sdSlates: 10 }));
    const asLaid = unsure.map((one, at) => ({ ...one, takenFirst: 0, ...(at > 0 && one) }));
    const more = { ...plan, piles: plan.piles.map((use) => ({ ...use })) };
    more.piles[0] = { ...more.piles[0], slates: lays + ROW.slates + OTHER.slates };
    const [{ chance }] = runOutChances(plan, unsure);
    expect(chance).toBe(runOutChances(more, asLaid)[0].chance);
    expect(chance).toBeGreaterThan(runOutChances(plan, asLaid)[0].chance);
  });

  it('leave enough slate-and-a-halves for the courses where nobody counted them', () => {
    expect(ROW.slateAndAHalves + OTHER.slateAndAHalves).toBeGreaterThan(0);
    const wide = ({ request }: PlanGround) => ({
      needed: request.courses
        .flatMap(({ runs }) => runs)
        .reduce(
          (sum, { startsWithSlateAndAHalf, endsWithSlateAndAHalf }) =>
            sum + Number(startsWithSlateAndAHalf) + Number(endsWithSlateAndAHalf),
          0
        ),
      has: request.piles[0].slateAndAHalves
    });
    for (const pieces of [1, OF]) {
      const journal = job();
      expect(wide(groundOf(journal)).has).toBeGreaterThanOrEqual(wide(groundOf(journal)).needed);
      journal.add(first(journal, 'south', pieces));
      const { has, needed } = wide(groundOf(journal));
      expect(has, `after ${pieces} pieces`).toBeGreaterThanOrEqual(needed);
    }
  });

  it('come off the book with the first of course 1, whole or a part of it, and an undo puts them back', () => {
    for (const pieces of [1, 4, OF]) {
      const journal = job();
      journal.add(first(journal, 'south', pieces));
      expect(left(journal)).toEqual([100 - ROW.slates - slatesOf(pieces), 100, 100]);
      expect(mayUse(journal)[0]).toBe(left(journal)[0] - OTHER.slates);
      expect(groundOf(journal).undereave.map(({ slopeId }) => slopeId)).toEqual(['north']);
      expect(pilesLeft(groundOf(journal))[0].laid).toBe(ROW.slates + slatesOf(pieces));
      undoLast(journal);
      expect(left(journal)).toEqual([100, 100, 100]);
      expect(mayUse(journal)).toEqual(mayUse(job()));
    }
  });

  it('come off once, where a part was laid, then more, then the whole', () => {
    const journal = job();
    for (const pieces of [2, 5, OF]) journal.add(first(journal, 'south', pieces));
    expect(left(journal)[0]).toBe(100 - ROW.slates - slatesOf(OF));
    undoLast(journal);
    expect(left(journal)[0]).toBe(100 - ROW.slates - slatesOf(5));
    const none = { slopeId: 'south', course: 1, from: 'left', piles: [] } as const;
    journal.add({ type: 'coursePartLaid', body: { ...none, piles: [] } });
    expect(left(journal), 'none of it lies after all').toEqual([100, 100, 100]);
  });

  it('take those that were set aside first, and those that lie no more than once', () => {
    const aside = { palletId: 'p1', reason: 'colour', use: 'undereave' } as const;
    const journal = job().add(
      ...Array.from({ length: ROW.slates + 3 }, (): NewEvent => ({
        type: 'slateSetAside',
        body: aside
      }))
    );
    expect(groundOf(journal).undereave.map(({ fromSetAside }) => fromSetAside)).toEqual([
      ROW.slates,
      3
    ]);
    const before = left(journal)[0];
    journal.add(first(journal, ROW.slopeId));
    expect(left(journal)[0]).toBe(before - slatesOf(OF));
    expect(groundOf(journal).undereave[0].fromSetAside).toBe(3);
  });

  it('come from no pile where they are ordered as an article of their own', () => {
    const ordered: NewEvent = { type: 'jobSettingsSet', body: { undereaveOrdered: true } };
    const journal = job().add(ordered);
    expect(mayUse(journal)).toEqual([100, 100, 100]);
    journal.add(first(journal, 'south'));
    expect(left(journal)[0]).toBe(100 - slatesOf(OF));
  });

  it('of a file of before, whose courses name none, are not taken', () => {
    const body = { slopeId: 'south', course: 1, piles: [{ pile: 1, pieces: OF }] };
    expect(left(job().add({ type: 'courseLaid', body }))[0]).toBe(100 - slatesOf(OF));
  });

  it('keep the book right however courses, counts and undos follow each other', () => {
    const act = fc.oneof(
      fc.record({
        kind: fc.constant('lay' as const),
        slopeId: fc.constantFrom('south', 'north'),
        pieces: fc.integer({ min: 1, max: OF })
      }),
      fc.record({ kind: fc.constantFrom('count' as const, 'lose' as const, 'undo' as const) })
    );
    const seen = { lay: 0, count: 0, lose: 0, undo: 0 };
    fc.assert(
      fc.property(fc.array(act, { maxLength: 10 }), (acts) => {
        const journal = job();
        // What stands on pile 1 by a book of its own, after each act that is in force.
        const states = [{ at: -1, stands: 100, south: 0, north: 0 }];
        for (const one of acts) {
          const now = states[states.length - 1];
          if (one.kind === 'lay') {
            const lies = now[one.slopeId as 'south' | 'north'];
            if (one.pieces <= lies) continue;
            const row = lies > 0 ? 0 : ROW.slates;
            const stands = now.stands - row - slatesOf(one.pieces) + (lies && slatesOf(lies));
            journal.add(first(journal, one.slopeId, one.pieces));
            states.push({ ...now, at: journal.length - 1, stands, [one.slopeId]: one.pieces });
          } else if (one.kind === 'count') {
            journal.add({
              type: 'pileCounted',
              body: handCount(groundOf(journal), 1, now.stands, GRADES)
            });
            states.push({ ...now, at: journal.length - 1 });
          } else if (one.kind === 'lose') {
            const body = { pile: 1, gradesId: GRADES, slates: 1, reason: 'broken' } as const;
            journal.add({ type: 'slatesLost', body });
            states.push({ ...now, at: journal.length - 1, stands: now.stands - 1 });
          } else if (states.length > 1) {
            const { at } = now;
            journal.add({ type: 'entryVoided', body: { voids: Journal.id(at) } });
            states.pop();
          } else continue;
          seen[one.kind]++;
          expect(left(journal)[0]).toBe(states[states.length - 1].stands);
        }
      }),
      { numRuns: rounds(60, 2000), seed: 64 }
    );
    for (const times of Object.values(seen)) expect(times).toBeGreaterThan(10);
  });
});
