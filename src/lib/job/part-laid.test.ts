import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkPlan, planCourses } from '$lib/engine/courses';
import { piecesOfDemand } from '$lib/engine/roof';
import type { JobView, NewEvent } from '$lib/journal';
import { adoptedPlanOf, planAdoption } from './adopted-plan.ts';
import { drawOf, lastLaidAct, slopeProgress } from './lay-reading.ts';
import { slicePieces } from './laid-stretches.ts';
import { pilesLeft } from './piles-left.ts';
import { wholeRoof } from './plan-reading.ts';
import { type PlanGround, planRequestOf } from './plan-request.ts';
import { smallRoof } from '../../../tests/support/small-roof.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';
import { rounds } from '../../../tests/support/rounds.ts';

const [SPEC, SLOPE] = smallRoof({ rafterLengthMm: 1600, eaveWidthMm: 2500 });
const SET_UP: NewEvent[] = [
  SPEC,
  SLOPE,
  { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 240 } },
  ...[420, 560, 640, 740].map((hundredths): NewEvent => ({
    type: 'slateGauged',
    body: { palletId: 'p1', points: [hundredths], gradesId: null, pile: null }
  })),
  { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 5] } },
  ...Array.from({ length: 240 }, (_slate, n): NewEvent => ({
    type: 'slateTapped',
    body: { palletId: 'p1', pile: 1 + (n % 3), gradesId: Journal.id(7) }
  }))
];
const job = () => new Journal().add(...SET_UP);

function groundOf(view: JobView): PlanGround {
  const ground = planRequestOf(view);
  if (!ground.ok) throw new Error(ground.missing);
  return ground;
}
const leftOf = (journal: Journal): number[] =>
  pilesLeft(groundOf(journal.view)).map(({ left }) => left);
const part = (pieces: number, course = 1, pile = 1, from: 'left' | 'right' = 'left'): NewEvent => ({
  type: 'coursePartLaid',
  body: { slopeId: 'south', course, from, piles: [{ pile, pieces }] }
});
const whole = (course = 1, pile = 1, pieces = OF): NewEvent => ({
  type: 'courseLaid',
  body: { slopeId: 'south', course, piles: [{ pile, pieces }] }
});
const undo = (place: number): NewEvent => ({
  type: 'entryVoided',
  body: { voids: Journal.id(place) }
});
const DEMAND = groundOf(job().view).roof.demand;
const OF = piecesOfDemand(DEMAND[0]);

describe('J60 a course laid in part', () => {
  it('takes what lies off the pile and leaves the rest to plan', () => {
    const before = groundOf(job().view);
    const ground = groundOf(job().add(part(6)).view);
    expect(ground.laid).toEqual([]);
    expect(ground.partLaid).toMatchObject([{ course: 1, pieces: 6, of: OF, from: 'left' }]);
    const [course] = ground.request.courses;
    expect(piecesOfDemand(course)).toBe(OF - 6);
    const wide = Number(DEMAND[0].runs[0].startsWithSlateAndAHalf);
    expect(ground.left[0].slates).toBe(before.left[0].slates - 6 + wide);
    expect(pilesLeft(ground)[0].laid).toBe(6 - wide);
  });

  it('comes to what the course laid whole comes to, once it is, and once is what it counts', () => {
    const laid = leftOf(job().add(whole()));
    expect(leftOf(job().add(part(6), whole()))).toEqual(laid);
    expect(leftOf(job().add(part(6), part(6), part(9), whole(), part(4)))).toEqual(laid);
    expect(leftOf(job().add(part(6, 1, 1, 'right'), whole()))).toEqual(laid);
    expect(leftOf(job().add(part(6), part(6)))).toEqual(leftOf(job().add(part(6))));
  });

  it('of which the whole is undone lies in part again, and undone in part not at all', () => {
    const journal = job().add(part(6), whole());
    const place = journal.length - 1;
    expect(leftOf(journal.add(undo(place)))).toEqual(leftOf(job().add(part(6))));
    expect(leftOf(journal.add(undo(place - 1)))).toEqual(leftOf(job()));
    expect(leftOf(job().add(part(6), part(0)))).toEqual(leftOf(job()));
  });

  it('binds what comes above it, and its rest, by the piles it was begun with', () => {
    const { request } = groundOf(job().add(part(6, 1, 2)).view);
    const plan = planCourses(request);
    if (plan.status !== 'optimal') throw new Error(JSON.stringify(plan));
    expect(checkPlan(request, plan)).toEqual([]);
    expect(plan.courses.slice(1).every(({ parts }) => parts.every(({ pile }) => pile >= 2))).toBe(
      true
    );
  });

  it('goes on by the plan, is drawn for its rest alone, and stands whole on the whole roof', () => {
    const ground = groundOf(job().view);
    const plan = planCourses(ground.request);
    if (plan.status !== 'optimal') throw new Error(JSON.stringify(plan));
    const body = planAdoption(ground, plan, null, 1.5, 'mostEven');
    const journal = job().add({ type: 'planAdopted', body });
    const first = body.courses[0];
    const from = 'right';
    const lies = slicePieces(first.piles, OF - 6, OF);
    journal.add({
      type: 'coursePartLaid',
      body: { slopeId: 'south', course: 1, from, piles: lies, note: 'mind the pipe' }
    });
    const now = groundOf(journal.view);
    const adopted = adoptedPlanOf(journal.view, now);
    if (!adopted) throw new Error('no plan');
    expect(adopted.unknownCourses).toBe(0);
    const [progress] = slopeProgress(now, adopted.rest);
    expect(progress.begun).toMatchObject({ pieces: 6, of: OF, from, note: 'mind the pipe' });
    const next = progress.next;
    if (!next) throw new Error('no course');
    const slates = next.parts.reduce((sum, one) => sum + one.slates + one.slateAndAHalves, 0);
    expect(slates).toBe(OF - 6);
    const drawn = drawOf(now, adopted.rest, next)?.draws ?? [];
    expect(drawn.reduce((sum, one) => sum + one.slates + one.slateAndAHalves, 0)).toBe(OF - 6);
    for (const roof of [adopted.whole, wholeRoof(now, adopted.rest)]) {
      expect(roof.joints).toBe(plan.joints);
      const all = roof.courses[0].parts;
      expect(all.reduce((sum, one) => sum + one.slates + one.slateAndAHalves, 0)).toBe(OF);
    }
    expect(planAdoption(now, adopted.rest, null, 1.5, 'mostEven').courses).toEqual(body.courses);
    expect(lastLaidAct(journal.view)).toMatchObject({ kind: 'part', course: 1, pieces: 6 });
  });

  it('keeps a note with a course of which nothing lies', () => {
    const journal = job().add({
      type: 'coursePartLaid',
      body: { slopeId: 'south', course: 2, from: 'left', piles: [], note: 'short batten' }
    });
    expect(groundOf(journal.view).partLaid).toMatchObject([{ pieces: 0, note: 'short batten' }]);
    expect(leftOf(journal)).toEqual(leftOf(job()));
  });

  it('lies whole where its slope grew so short that nothing of it is left', () => {
    const narrow: NewEvent = {
      type: 'slopeSet',
      body: {
        ...(SET_UP[1].body as Extract<NewEvent, { type: 'slopeSet' }>['body']),
        eaveWidthMm: 1000
      }
    };
    const ground = groundOf(job().add(part(9), narrow).view);
    expect(ground.laid).toMatchObject([{ course: 1 }]);
    expect(ground.partLaid).toEqual([]);
  });

  it('of a slope that is gone still took its slates', () => {
    const journal = job().add(part(6), {
      type: 'slopeSet',
      body: { ...SLOPE.body, slopeId: 'north', name: 'North' }
    });
    journal.add({ type: 'slopeRemoved', body: { slopeId: 'south' } });
    const ground = groundOf(journal.view);
    expect(ground.strayCourses).toBe(1);
    expect(ground.left[0].slates).toBe(80 - 6);
  });

  it('keeps the book right however parts, courses, losses and counts follow each other', () => {
    // An independent book: slates that stand there, piece by piece, and counts that tell the truth.
    const act = fc.oneof(
      fc.record({
        kind: fc.constant('lay' as const),
        pile: fc.constantFrom(1, 2, 3),
        pieces: fc.integer({ min: 1, max: OF })
      }),
      fc.record({
        kind: fc.constantFrom('lose' as const, 'count' as const),
        pile: fc.constantFrom(1, 2, 3)
      })
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 14 }), (acts) => {
        const journal = job();
        const stands = [80, 80, 80];
        const lying = DEMAND.map((): { pile: number; pieces: number }[] => []);
        const piecesIn = (course: number) =>
          lying[course].reduce((sum, one) => sum + one.pieces, 0);
        let course = 0;
        for (const one of acts) {
          if (one.kind === 'lay') {
            if (course >= DEMAND.length) continue;
            const from = piecesIn(course);
            const upTo = Math.min(from + one.pieces, OF);
            const { runs } = DEMAND[course];
            for (let piece = from; piece < upTo; piece++) {
              const isWide =
                (piece === 0 && runs[0].startsWithSlateAndAHalf) ||
                (piece === OF - 1 && runs[0].endsWithSlateAndAHalf);
              if (!isWide) stands[one.pile - 1]--;
            }
            const last = lying[course].at(-1);
            if (last?.pile === one.pile) last.pieces += upTo - from;
            else lying[course].push({ pile: one.pile, pieces: upTo - from });
            const body = {
              slopeId: 'south',
              course: course + 1,
              piles: lying[course].map((p) => ({ ...p }))
            };
            if (body.piles.length > 8) return;
            journal.add(
              upTo === OF
                ? { type: 'courseLaid', body }
                : { type: 'coursePartLaid', body: { ...body, from: 'left' } }
            );
            if (upTo === OF) course++;
          } else if (one.kind === 'lose') {
            stands[one.pile - 1]--;
            journal.add({
              type: 'slatesLost',
              body: { pile: one.pile, gradesId: Journal.id(7), slates: 1, reason: 'broken' }
            });
          } else {
            const ground = groundOf(journal.view);
            const taken =
              ground.before[one.pile - 1].slates - ground.request.piles[one.pile - 1].slates;
            const slates = Math.max(0, stands[one.pile - 1]);
            journal.add({
              type: 'pileCounted',
              body: { ...{ gradesId: Journal.id(7), pile: one.pile, slates }, tallied: 80, taken }
            });
          }
        }
        if (stands.some((n) => n < 0)) return;
        expect(leftOf(journal)).toEqual(stands);
      }),
      { numRuns: rounds(40, 3000) }
    );
  });
});
