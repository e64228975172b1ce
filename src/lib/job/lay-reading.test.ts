import { describe, expect, it } from 'vitest';
import type { Plan, PlannedCourse } from '$lib/engine/courses';
import { type JobView, emptyPart } from '$lib/journal';
import type { PlanGround } from './plan-request.ts';
import {
  drawOf,
  coursesLaidTwice,
  lastLaidAct,
  lowerElsewhere,
  rogueStretches,
  slopeProgress
} from './lay-reading.ts';

const course = (slopeId: string, number: number, heightMm = number * 200): PlannedCourse => ({
  slopeId,
  course: number,
  heightMm,
  parts: [{ pile: 1, slates: 10, slateAndAHalves: 0 }],
  commonSlateAndAHalves: 0,
  joints: 9,
  kickers: 0,
  per100Joints: 0
});

describe('slopeProgress', () => {
  it('tells laid, all and the lowest course that is left of each slope', () => {
    const ground = {
      roof: {
        slopes: [{ slope: { id: 'south' } }, { slope: { id: 'north' } }],
        demand: [course('south', 1), course('north', 1), course('south', 2)]
      },
      laid: [{ slopeId: 'north', course: 1, parts: [] }],
      partLaid: [{ slopeId: 'south', course: 1, parts: [], pieces: 4, of: 10, from: 'left' }]
    } as unknown as PlanGround;
    const rest = { courses: [course('south', 1), course('south', 2)] } as unknown as Plan;
    expect(slopeProgress(ground, rest)).toMatchObject([
      { slopeId: 'south', laid: 0, all: 2, next: { course: 1 }, begun: { pieces: 4 } },
      { slopeId: 'north', laid: 1, all: 1 }
    ]);
    expect(slopeProgress(ground, rest)[1].next).toBeUndefined();
  });
});

describe('lowerElsewhere', () => {
  it('counts lower courses of other slopes only', () => {
    const rest = {
      courses: [course('south', 1), course('north', 1), course('north', 2), course('north', 3)]
    } as unknown as Plan;
    expect(lowerElsewhere(rest, course('south', 3))).toBe(2);
    expect(lowerElsewhere(rest, course('south', 1))).toBe(0);
  });
});

describe('drawOf', () => {
  const ground = (slatesOfPile: number[][], left: number[]) =>
    ({
      stock: {
        pallets: slatesOfPile.map((own, index) => ({ palletId: `p${index}`, slatesOfPile: own }))
      },
      left: left.map((slates) => ({ slates }))
    }) as unknown as PlanGround;
  const rest = { courses: [], piles: [{ pile: 1 }, { pile: 2 }] } as unknown as Plan;

  it('draws the next course from every pallet in proportion to what is left there', () => {
    const pallets = [
      [30, 0],
      [60, 9],
      [10, 9]
    ];
    expect(drawOf(ground(pallets, [100, 18]), rest, course('south', 1))?.draws).toMatchObject([
      { palletId: 'p0', pile: 1, slates: 3 },
      { palletId: 'p1', pile: 1, slates: 6 },
      { palletId: 'p2', pile: 1, slates: 1 }
    ]);
  });

  it('is undefined where the pallets do not hold the course', () => {
    expect(drawOf(ground([[0, 5]], [100, 5]), rest, course('south', 1))).toBeUndefined();
  });
});

describe('rogueStretches', () => {
  it('draws neighbouring courses of one slope and pile together', () => {
    const places = [
      { slopeId: 'south', course: 1, pile: 1 },
      { slopeId: 'north', course: 1, pile: 1 },
      { slopeId: 'south', course: 2, pile: 1 },
      { slopeId: 'south', course: 2, pile: 2 },
      { slopeId: 'south', course: 4, pile: 1 }
    ];
    expect(rogueStretches(places)).toEqual([
      { slopeId: 'south', pile: 1, fromCourse: 1, toCourse: 2 },
      { slopeId: 'north', pile: 1, fromCourse: 1, toCourse: 1 },
      { slopeId: 'south', pile: 2, fromCourse: 2, toCourse: 2 },
      { slopeId: 'south', pile: 1, fromCourse: 4, toCourse: 4 }
    ]);
    expect(rogueStretches([])).toEqual([]);
  });
});

describe('lastLaidAct', () => {
  const at = '';
  const view = (laying: Partial<ReturnType<typeof emptyPart<'laying'>>>): JobView =>
    new Map([['laying', { ...emptyPart('laying'), ...laying }]]);
  const laid = (id: string, number: number) => ({
    [`south|${number}`]: [
      { id, at, value: { slopeId: 'south', course: number, piles: [{ pile: 1, pieces: 10 }] } }
    ]
  });
  const lost = (id: string) => [
    { id, at, value: { pile: 2, gradesId: null, slates: 5, reason: 'broken' as const } }
  ];

  it('is undefined before anything was done', () => {
    expect(lastLaidAct(new Map())).toBeUndefined();
  });

  it('is the newest of courses, losses and counts', () => {
    expect(
      lastLaidAct(view({ laid: { ...laid('b', 1), ...laid('d', 2) }, lost: lost('c') }))
    ).toEqual({ kind: 'course', id: 'd', slopeId: 'south', course: 2 });
    expect(lastLaidAct(view({ laid: laid('b', 1), lost: lost('c') }))).toEqual({
      kind: 'lost',
      id: 'c',
      pile: 2,
      slates: 5
    });
    const counted = {
      '|1': [{ id: 'e', at, value: { gradesId: null, pile: 1, slates: 40 } }]
    };
    expect(lastLaidAct(view({ laid: laid('b', 1), counted }))).toEqual({
      kind: 'counted',
      id: 'e',
      pile: 1,
      slates: 40
    });
  });
});

describe('coursesLaidTwice', () => {
  it('finds the courses that were entered more than once', () => {
    const value = (course: number) => ({ slopeId: 'south', course, piles: [] });
    const laid = {
      'south|1': [{ id: 'a', at: '', value: value(1) }],
      'south|2': [
        { id: 'b', at: '', value: value(2) },
        { id: 'c', at: '', value: value(2) }
      ]
    };
    const view = new Map([['laying', { ...emptyPart('laying'), laid }]]) as JobView;
    expect(coursesLaidTwice(view)).toEqual([{ slopeId: 'south', course: 2 }]);
    expect(coursesLaidTwice(new Map())).toEqual([]);
  });
});
