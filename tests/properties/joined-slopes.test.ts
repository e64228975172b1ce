/** Piles at hips and valleys: roofs of joined slopes, planned, and looked at by a checker of their own. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type PlanRequest,
  type PlannedCourse,
  coursesApart,
  planCourses
} from '$lib/engine/courses';
import { type RoofLayout, layOutRoof, makeSlope, slateSpec } from '$lib/engine/roof';
import { rounds } from '../support/rounds.ts';

const spec = slateSpec({ lengthMm: 400, widthMm: 200, headlapMm: 80 });

/** A hipped roof or an L with a valley, rafters measured with the error of a tape. */
const anyRoof = fc.record({
  pitchDegrees: fc.integer({ min: 25, max: 50 }),
  runMm: fc.integer({ min: 1800, max: 3000 }),
  ridgeMm: fc.integer({ min: 1500, max: 3500 }),
  shape: fc.constantFrom('hipped' as const, 'valley' as const),
  tape: fc.array(fc.integer({ min: -8, max: 8 }), { minLength: 4, maxLength: 4 }),
  stock: fc.array(fc.integer({ min: 15, max: 60 }), { minLength: 3, maxLength: 3 }),
  slackPercent: fc.integer({ min: 0, max: 35 }),
  kicks: fc.array(fc.integer({ min: 2, max: 30 }), { minLength: 3, maxLength: 3 })
});

function roofOf(
  {
    pitchDegrees,
    runMm,
    ridgeMm,
    shape,
    tape
  }: {
    pitchDegrees: number;
    runMm: number;
    ridgeMm: number;
    shape: 'hipped' | 'valley';
    tape: readonly number[];
  },
  eaves: readonly number[] = []
): RoofLayout {
  const rafter = runMm / Math.cos((pitchDegrees * Math.PI) / 180);
  const hip = { kind: 'hip', insetAtTopMm: runMm } as const;
  const valley = { kind: 'valley', insetAtTopMm: -runMm } as const;
  const slope = (id: string, eaveWidthMm: number, at: number, sides: object) =>
    makeSlope({
      id,
      pitchDegrees,
      eaveWidthMm,
      rafterLengthMm: Math.round(rafter) + tape[at],
      eaveHeightMm: eaves[at] ?? 0,
      ...sides
    });
  const roof = layOutRoof(
    shape === 'hipped'
      ? [
          slope('front', ridgeMm + 2 * runMm, 0, { left: hip, right: hip }),
          slope('right', 2 * runMm, 1, { left: hip, right: hip }),
          slope('back', ridgeMm + 2 * runMm, 2, { left: hip, right: hip }),
          slope('left', 2 * runMm, 3, { left: hip, right: hip })
        ]
      : [
          slope('main', ridgeMm + runMm, 0, { right: valley }),
          slope('wing', ridgeMm, 1, { left: valley })
        ],
    spec
  );
  if (!roof.ok) throw new Error(JSON.stringify(roof.problems));
  return roof;
}

/**
 * The checker: of two courses that lie side by side along a hip or valley both have the same piles. It
 * finds the neighbours by the middles of their margins, not by the planner's units.
 */
function apart(roof: RoofLayout, courses: readonly PlannedCourse[]): string[] {
  const pilesOf = (slopeId: string, course: number) =>
    courses
      .find((one) => one.slopeId === slopeId && one.course === course)
      ?.parts.map(({ pile }) => pile)
      .join('+');
  const laid = (slopeId: string) => roof.slopes.find(({ slope }) => slope.id === slopeId)!;
  return roof.joins.flatMap(({ kind, one, other }) => {
    if (kind === 'ridge') return [];
    const [mine, theirs] = [laid(one), laid(other)];
    return mine.courses.flatMap(({ course, heightMm }) => {
      const beside = theirs.courses.toSorted(
        (a, b) => Math.abs(a.heightMm - heightMm) - Math.abs(b.heightMm - heightMm)
      )[0];
      const [here, there] = [pilesOf(one, course), pilesOf(other, beside.course)];
      return here === there || here === undefined || there === undefined
        ? []
        : [`${one} ${course}: ${here}, ${other} ${beside.course}: ${there}`];
    });
  });
}

function requestOf(
  roof: RoofLayout,
  {
    stock,
    slackPercent,
    kicks
  }: { stock: readonly number[]; slackPercent: number; kicks: readonly number[] }
): PlanRequest {
  const pieces = (size: 'slates' | 'wide') =>
    roof.demand.reduce(
      (sum, { runs }) =>
        sum +
        runs.reduce(
          (own, run) =>
            own +
            (size === 'slates'
              ? run.slates
              : Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf)),
          0
        ),
      0
    );
  const all = stock.reduce((sum, share) => sum + share, 0);
  const widest = pieces('wide');
  return {
    courses: roof.demand,
    piles: stock.map((share) => ({
      slates: Math.ceil((share / all) * pieces('slates') * (1 + slackPercent / 100)),
      slateAndAHalves: widest,
      reservedSlates: 0,
      reservedSlateAndAHalves: 0
    })),
    kicks: {
      within: kicks.map((percent) => percent / 100),
      between: kicks.map((_, row) => kicks.map((_one, column) => (row === column ? 0 : 0.8)))
    }
  };
}

describe('courses that meet at a hip or valley', () => {
  it('of an eave that lies higher meet once it is raised by what is told', () => {
    const at = (eaveHeightMm: number) =>
      roofOf(
        { pitchDegrees: 35, runMm: 2500, ridgeMm: 2500, shape: 'valley', tape: [0, 0, 0, 0] },
        [eaveHeightMm, 0]
      ).meetings[0];
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 900 }), (highMm) => {
        const { raiseOtherMm, apartMm } = at(highMm);
        expect(Math.abs(raiseOtherMm)).toBeLessThan(160);
        expect(apartMm).toBeCloseTo(Math.abs(raiseOtherMm), 6);
        expect(at(highMm - raiseOtherMm).apartMm).toBeLessThan(1e-6);
      }),
      { seed: 182, numRuns: rounds(40, 400) }
    );
  });

  it('change pile together on 1,000 roofs, or the plan says that the stock is too tight', () => {
    const roofs = rounds(150, 1000);
    let [together, tight, told, changes] = [0, 0, 0, 0];
    fc.assert(
      fc.property(anyRoof, (given) => {
        const roof = roofOf(given);
        expect(roof.meetings.every(({ isLevel }) => isLevel)).toBe(true);
        expect(roof.meetings.length).toBe(given.shape === 'hipped' ? 4 : 1);
        const plan = planCourses(requestOf(roof, given));
        if (plan.status === 'short') return;
        const seen = coursesApart(roof.meetings, plan.courses);
        expect(seen.length > 0).toBe(apart(roof, plan.courses).length > 0);
        if (plan.changesApart) {
          tight++;
          told += Number(seen.length > 0);
          return;
        }
        together++;
        expect(seen).toEqual([]);
        changes +=
          new Set(plan.courses.flatMap(({ parts }) => parts.map(({ pile }) => pile))).size - 1;
      }),
      { seed: 18, numRuns: roofs }
    );
    expect(told).toBeGreaterThan(tight / 2);
    expect(together).toBeGreaterThan(roofs / 3);
    expect(tight).toBeGreaterThan(0);
    expect(changes).toBeGreaterThan(together);
  });

  it('are the best such plan: against every way of giving whole courses to piles', () => {
    let compared = 0;
    fc.assert(
      fc.property(anyRoof, (given) => {
        const roof = roofOf({ ...given, runMm: 1300, ridgeMm: 900, tape: [0, 0, 0, 0] });
        const request = requestOf(roof, given);
        const plan = planCourses(request);
        const best = bestByTrying(request);
        if (best === undefined) {
          expect(plan.status === 'short' || plan.changesApart).toBeTruthy();
          return;
        }
        compared++;
        if (plan.status === 'short') throw new Error('a plan was missed');
        expect(plan.changesApart).toBeUndefined();
        expect(plan.kickers).toBeCloseTo(best, 6);
      }),
      { seed: 181, numRuns: rounds(60, 300) }
    );
    expect(compared).toBeGreaterThan(rounds(60, 300) / 4);
  });

  it('that miss each other by more than half a course keep their own heights', () => {
    const hip = (planAngleDegrees: number) => ({ kind: 'hip', planAngleDegrees }) as const;
    const roof = layOutRoof(
      [
        makeSlope({
          id: 'flat',
          pitchDegrees: 30,
          rafterLengthMm: 3464,
          eaveWidthMm: 9000,
          right: hip(60)
        }),
        makeSlope({
          id: 'steep',
          pitchDegrees: 45,
          rafterLengthMm: 2449,
          eaveWidthMm: 6000,
          left: hip(30)
        })
      ],
      spec
    );
    if (!roof.ok) throw new Error('refused');
    expect(roof.joins).toHaveLength(1);
    expect(roof.meetings[0].isLevel).toBe(false);
    expect(roof.meetings[0].missMm).toBeGreaterThan(50);
    // by hand: 160 mm × sin 30° = 80 mm and 160 × sin 45° = 113 mm at most; no course is further off than half
    expect(roof.meetings[0].apartMm).toBeGreaterThan(15);
    expect(roof.meetings[0].apartMm).toBeLessThanOrEqual(113 / 2);
    expect(roof.meetings[0].raiseOtherMm).toBe(0);
    expect(roof.demand.some(({ meets }) => meets)).toBe(false);
  });
});

/** The least expected kickers over every division of the units among the piles in order. */
function bestByTrying({ courses, piles, kicks }: PlanRequest): number | undefined {
  const units: { slates: number; joints: number }[] = [];
  const levels = [...new Set(courses.map(({ heightMm }) => Math.round(heightMm * 100)))];
  for (const level of levels.sort((a, b) => a - b)) {
    let [slates, joints] = [0, 0];
    for (const { heightMm, runs } of courses)
      if (Math.round(heightMm * 100) === level)
        for (const run of runs) {
          const wide = Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf);
          slates += run.slates;
          joints += run.slates + wide - 1;
        }
    units.push({ slates, joints });
  }
  let best: number | undefined;
  const tryFrom = (unit: number, pile: number, left: readonly number[], cost: number): void => {
    if (unit === units.length) {
      if (best === undefined || cost < best) best = cost;
      return;
    }
    for (let next = pile; next < piles.length; next++) {
      if (left[next] < units[unit].slates) continue;
      const rest = left.map((own, index) => own - (index === next ? units[unit].slates : 0));
      tryFrom(unit + 1, next, rest, cost + kicks.within[next] * units[unit].joints);
    }
  };
  tryFrom(
    0,
    0,
    piles.map(({ slates }) => slates),
    0
  );
  return best;
}
