import { describe, expect, it } from 'vitest';
import { checkPlan, comparePlans, planCourses } from '$lib/engine/courses';
import { piecesInRun } from '$lib/engine/roof';
import type { NewEvent } from '$lib/journal/events.ts';
import { EMPTY_VIEW, type JobView } from '$lib/journal';
import { nextStep } from './next-step.ts';
import { type PlanGround, planRequestOf } from './plan-request.ts';
import { gradesOf } from './queries.ts';
import { undereaveLaying } from './undereave-draw.ts';
import { wideCount } from './wide-count.ts';
import { adoptedPlanOf, planAdoption, shortfallsOf } from './adopted-plan.ts';
import { TestJournal as Journal } from '../../../tests/support/test-journal.ts';

const SPEC: NewEvent = {
  type: 'slateSpecSet',
  body: {
    lengthMm: 500,
    widthMm: 250,
    nailing: 'centre',
    headlapMm: 100,
    jointMinMm: 3,
    jointMaxMm: 5,
    eaveOverhangMm: 50,
    vergeOverhangMm: 50
  }
};
const SLOPE: NewEvent = {
  type: 'slopeSet',
  body: {
    slopeId: 'south',
    name: 'South',
    rafterLengthMm: 2500,
    eaveWidthMm: 4000,
    pitchDegrees: 35,
    eaveHeightMm: 0,
    left: { kind: 'verge' },
    right: { kind: 'verge' },
    openings: []
  }
};
const GRADES: NewEvent = {
  type: 'gradesSet',
  body: { method: 'byHand', thresholdsMm: [6, 5] }
};

function pallet(slates: number): NewEvent[] {
  const gauge = (hundredths: number): NewEvent => ({
    type: 'slateGauged',
    body: { palletId: 'p1', points: [hundredths], gradesId: null, pile: null }
  });
  const readings = [420, 440, 460, 520, 540, 560, 580, 610, 640, 700, 720, 740];
  return [
    { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates } },
    ...readings.map(gauge)
  ];
}

/** No step kicks: plans are the thickest pile first, whatever the readings. */
const NO_KICKS: NewEvent = { type: 'jobSettingsSet', body: { kickAllowanceMm: 8 } };

function readyJournal(slates = 400): Journal {
  return new Journal().add(NO_KICKS, SPEC, SLOPE, ...pallet(slates), GRADES);
}

function groundOf(view: JobView): PlanGround {
  const ground = planRequestOf(view);
  if (!ground.ok) throw new Error(ground.missing);
  return ground;
}

function planOf(ground: PlanGround) {
  const plan = planCourses(ground.request);
  if (plan.status !== 'optimal') throw new Error(JSON.stringify(plan));
  expect(checkPlan(ground.request, plan)).toEqual([]);
  return plan;
}

/** The journal with the best plan adopted, and the plan. */
function adopted(journal = readyJournal()) {
  const ground = groundOf(journal.view);
  const plan = planOf(ground);
  const body = planAdoption(ground, plan, 'g1', 1.5, 'mostEven');
  return { journal: journal.add({ type: 'planAdopted', body }), plan, body };
}

describe('the next step once laying began', () => {
  it('is done when every course is laid, by the roof as drawn now where that is known', () => {
    const { journal, body } = adopted();
    for (const { slopeId, course, piles } of body.courses) {
      expect(nextStep(journal.view)).not.toBe('done');
      journal.add({ type: 'courseLaid', body: { slopeId, course, piles } });
    }
    expect(nextStep(journal.view)).toBe('done');
    expect(nextStep(journal.view, body.courses.length)).toBe('done');
    expect(nextStep(journal.view, body.courses.length + 1)).toBe('lay');
  });
});

describe('slate-and-a-halves counted by themselves', () => {
  /** Slates of each pile that are left, kept back and to come. */
  const slatesOf = (ground: PlanGround) =>
    ground.left.map(({ slates, reservedSlates }, index) => [
      slates,
      reservedSlates,
      ground.stock.piles[index].toCome
    ]);
  const count = (journal: Journal, pile: number, wide: number): NewEvent => ({
    type: 'pileCounted',
    body: wideCount(groundOf(journal.view), pile, wide, gradesOf(journal.view)?.gradesId ?? null)
  });

  it('change no full slate, before sorting, part sorted or with courses laid and slates lost', () => {
    const taps = (n: number): NewEvent[] =>
      Array.from({ length: n }, (_, at) => ({
        type: 'slateTapped',
        body: { palletId: 'p1', pile: 1 + (at % 3), gradesId: null }
      }));
    for (const sorted of [0, 150, 400]) {
      const { journal, body } = adopted(readyJournal().add(...taps(sorted)));
      const check = (): void => {
        const was = slatesOf(groundOf(journal.view));
        for (const pile of [1, 2, 3]) journal.add(count(journal, pile, 20 + pile));
        const now = groundOf(journal.view);
        expect(slatesOf(now)).toEqual(was);
        expect(now.left.map((pile) => pile.slateAndAHalves)).toEqual([21, 22, 23]);
      };
      check();
      if (sorted < 400) continue;
      const [first, second] = body.courses;
      for (const { slopeId, course, piles } of [first, second])
        journal.add({ type: 'courseLaid', body: { slopeId, course, piles } });
      journal.add({
        type: 'slatesLost',
        body: { pile: 2, gradesId: null, slates: 4, reason: 'broken' }
      });
      check();
    }
  });

  it('make a plan short that takes more than were counted', () => {
    const journal = readyJournal();
    for (const pile of [1, 2, 3]) journal.add(count(journal, pile, 1));
    const { request } = groundOf(journal.view);
    expect(planCourses(request)).toMatchObject({ status: 'short' });
  });
});

describe('planRequestOf: what is missing', () => {
  it('names everything that a plan waits for, in the order of the work', () => {
    expect(planRequestOf(EMPTY_VIEW)).toEqual({
      ok: false,
      missing: 'spec',
      all: ['spec', 'roof', 'stock']
    });
    expect(planRequestOf(new Journal().add(SPEC).view)).toMatchObject({ missing: 'roof' });
    expect(planRequestOf(new Journal().add(SPEC, SLOPE).view)).toMatchObject({ missing: 'stock' });
    const ungraded = new Journal().add(SPEC, SLOPE, ...pallet(400));
    expect(planRequestOf(ungraded.view)).toMatchObject({ missing: 'grades', all: ['grades'] });
  });

  it('names the roof when its fields cannot stand', () => {
    const wrong = { ...SLOPE, body: { ...SLOPE.body, rafterLengthMm: 1 } } as NewEvent;
    expect(planRequestOf(readyJournal().add(wrong).view)).toMatchObject({ missing: 'roof' });
  });

  it('plans piles that were only told by hand, without millimetres', () => {
    const taps = Array.from({ length: 300 }, (_, n): NewEvent => ({
      type: 'slateTapped',
      body: { palletId: 'p1', pile: 1 + Math.floor(n / 100), gradesId: null }
    }));
    const ground = groundOf(new Journal().add(SPEC, SLOPE, pallet(300)[0], ...taps).view);
    expect(ground.left.map(({ slates }) => slates)).toEqual([100, 100, 100]);
    expect(ground.request.kicks.within).toEqual([0, 0, 0]);
    expect(planOf(ground).kickers).toBe(0);
  });
});

describe('planRequestOf: before laying', () => {
  it('asks for every course, from the piles expected, less breakage and spares rounded up', () => {
    const { request, left, undereave, before } = groundOf(readyJournal().view);
    // readings: 5 of 12 at 6 mm and above, 4 from 5 mm, 3 below: of 400 slates 167, 133, 100
    expect(left.map(({ slates }) => slates)).toEqual([167, 133, 100]);
    // The undereave row comes off the thickest pile, which holds it, before anything is planned.
    const [{ slates: under }] = undereave;
    expect(request.piles.map(({ slates }) => slates)).toEqual([167 - under, 133, 100]);
    expect(under).toBeGreaterThan(10);
    expect(request.piles.map(({ reservedSlates }) => reservedSlates)).toEqual([8, 6, 5]); // 4.5 %
    expect(before.map(({ sparesForRepairs }) => sparesForRepairs)).toEqual([4, 3, 2]); // 2 %
  });

  it('takes slate-and-a-halves to be enough until they are counted', () => {
    const journal = readyJournal();
    const { request, slateAndAHalvesNeeded, before } = groundOf(journal.view);
    expect(slateAndAHalvesNeeded).toBeGreaterThan(0);
    expect(request.piles[0]).toMatchObject({
      slateAndAHalves: slateAndAHalvesNeeded,
      reservedSlateAndAHalves: 0
    });
    expect(before[0].slateAndAHalves).toBeUndefined();
    const gradesId = Journal.id(journal.length - 1);
    journal.add({
      type: 'pileCounted',
      body: { gradesId, pile: 1, slates: 150, slateAndAHalves: 3 }
    });
    expect(groundOf(journal.view).before[0].slateAndAHalves).toBe(3);
    expect(groundOf(journal.view).left[0]).toMatchObject({
      slateAndAHalves: 3,
      reservedSlateAndAHalves: 1
    });
  });
});

describe('planRequestOf: laid in part', () => {
  const layFirst = (journal: Journal, courses: number) => {
    const { body } = adopted(journal);
    for (const course of body.courses.slice(0, courses)) {
      const undereave = undereaveLaying(groundOf(journal.view), course);
      journal.add({ type: 'courseLaid', body: { ...course, ...(undereave && { undereave }) } });
    }
    return journal;
  };

  it('leaves the courses and the slates that are not laid, and binds the rest', () => {
    const whole = groundOf(readyJournal().view);
    const journal = layFirst(readyJournal(), 3);
    const ground = groundOf(journal.view);
    expect(ground.laid).toHaveLength(3);
    expect(ground.request.courses).toHaveLength(whole.request.courses.length - 3);
    expect(ground.request.laid).toHaveLength(3);
    const laidSlates = ground.laid
      .flatMap(({ parts }) => parts)
      .reduce((sum, { slates }) => sum + slates, 0);
    const stock = (from: PlanGround) =>
      from.request.piles.reduce((sum, { slates }) => sum + slates, 0);
    expect(stock(ground)).toBe(stock(whole) - laidSlates);
  });

  it('plans the rest as the plan that was followed did', () => {
    const { plan } = adopted();
    const rest = planOf(groundOf(layFirst(readyJournal(), 4).view));
    expect(comparePlans(plan, rest).changedCourses).toBe(0);
  });

  it('takes broken slates off the reserve, down to the spares', () => {
    const journal = layFirst(readyJournal(), 1);
    journal.add({
      type: 'slatesLost',
      body: { pile: 3, gradesId: null, slates: 5, reason: 'broken' }
    });
    const { request, lostOfPile } = groundOf(journal.view);
    expect(request.piles[2]).toMatchObject({ slates: 95, reservedSlates: 2 });
    expect(lostOfPile).toEqual([0, 0, 5]);
  });

  it('keeps nothing back of a pile that ran out', () => {
    const journal = layFirst(readyJournal(), 1);
    journal.add({
      type: 'slatesLost',
      body: { pile: 3, gradesId: null, slates: 100, reason: 'ranOut' }
    });
    const { request } = groundOf(journal.view);
    expect(request.piles[2]).toMatchObject({ slates: 0, reservedSlates: 0 });
  });

  it('counts what was laid after a count by hand, and not what was laid before it', () => {
    const journal = readyJournal();
    const gradesId = Journal.id(journal.length - 1);
    const { body } = adopted(journal);
    const lay = (place: number): NewEvent => ({ type: 'courseLaid', body: body.courses[place] });
    const pieces = body.courses[1].piles[0].pieces;
    journal.add(lay(0), { type: 'pileCounted', body: { gradesId, pile: 1, slates: 100 } });
    // the slates not sorted yet are still to come on top of the count
    const counted = groundOf(journal.view).request.piles[0].slates;
    journal.add(lay(1));
    const { request, laid } = groundOf(journal.view);
    const wide = laid[1].parts[0].slateAndAHalves;
    expect(request.piles[0].slates).toBe(counted - pieces + wide);
  });

  it('says which pile gave more than it held', () => {
    const journal = layFirst(readyJournal(), 1);
    const lost = { pile: 1, gradesId: null, slates: 200, reason: 'broken' } as const;
    expect(groundOf(journal.add({ type: 'slatesLost', body: lost }).view).overdrawn).toEqual([1]);
  });

  it('takes the slates of a course that the roof lost off its piles', () => {
    const journal = layFirst(readyJournal(), 1);
    const before = groundOf(journal.view).request.piles[0].slates;
    const piles = [{ pile: 1, pieces: 16 }];
    journal.add({ type: 'courseLaid', body: { slopeId: 'gone', course: 1, piles } });
    const ground = groundOf(journal.view);
    expect(ground.strayCourses).toBe(1);
    expect(ground.request.piles[0].slates).toBe(before - 16);
  });
});

describe('adoptedPlanOf', () => {
  it('gives the adopted plan back: every course, the same parts, the same kickers', () => {
    const { journal, plan, body } = adopted();
    const back = adoptedPlanOf(journal.view, groundOf(journal.view))!;
    expect(back.whole.courses.map(({ parts }) => parts)).toEqual(
      plan.courses.map(({ parts }) => parts)
    );
    expect(back.whole.kickers).toBeCloseTo(plan.kickers, 6);
    expect(back.whole.joints).toBe(plan.joints);
    expect(back.whole.piles).toEqual(plan.piles);
    expect(body.expectedKickers).toBeCloseTo(plan.kickers, 6);
    expect(back.unknownCourses).toBe(0);
    expect(back.short).toEqual([]);
  });

  it('fills every course of the roof exactly', () => {
    const { journal, body } = adopted();
    const { roof } = groundOf(journal.view);
    const pieces = (runs: (typeof roof.demand)[number]['runs']) =>
      runs.reduce((sum, run) => sum + piecesInRun(run), 0);
    expect(
      body.courses.map(({ piles }) => piles.reduce((sum, part) => sum + part.pieces, 0))
    ).toEqual(roof.demand.map(({ runs }) => pieces(runs)));
  });

  it('says how many courses a changed roof has that the plan does not know', () => {
    const { journal } = adopted();
    const higher = { ...SLOPE, body: { ...SLOPE.body, rafterLengthMm: 2950 } } as NewEvent;
    const view = journal.add(higher).view;
    expect(adoptedPlanOf(view, groundOf(view))!.unknownCourses).toBeGreaterThan(0);
  });

  it('says which pile no longer carries the plan', () => {
    const { journal, plan } = adopted();
    const lost = plan.piles[0].spareSlates + 20;
    journal.add({
      type: 'slatesLost',
      body: { pile: 1, gradesId: null, slates: lost, reason: 'rogue' }
    });
    const view = journal.view;
    // 20 slates short, but for the breakage reserve of 4 that the loss used up
    expect(adoptedPlanOf(view, groundOf(view))!.short).toEqual([
      { pile: 1, toLay: 12, withReserve: 16 }
    ]);
  });

  it('tells what is missing to lay the plan apart from what the reserve lacks', () => {
    const use = (pile: number, slates: number) => ({
      ...{ pile, slates, slateAndAHalves: 0, spareSlates: 0, spareSlateAndAHalves: 0 }
    });
    const stock = (slates: number) => ({ slates, reservedSlates: 12 });
    expect(
      shortfallsOf(
        [use(1, 195), use(2, 195), use(3, 195), use(4, 0)],
        [stock(200), stock(190), stock(207), stock(12)]
      )
    ).toEqual([
      { pile: 1, toLay: 0, withReserve: 7 },
      { pile: 2, toLay: 5, withReserve: 17 }
    ]);
  });

  it('is undefined before a plan was adopted', () => {
    const { view } = readyJournal();
    expect(adoptedPlanOf(view, groundOf(view))).toBeUndefined();
  });
});
