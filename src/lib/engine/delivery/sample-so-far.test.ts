import { describe, expect, it } from 'vitest';
import { findAll } from './findings.ts';
import type { JudgingPlan } from './judging-plan.ts';
import { findSoFar } from './sample-so-far.ts';
import type { MeasuredSlate } from './slate-conformity.ts';
import { judgeSoFar } from './verdict-so-far.ts';

const plan: JudgingPlan = {
  sampleSize: 80,
  acceptAtMost: 7,
  acceptableShare: 0.04,
  basis: [{ standing: 'set by the order', source: 'the order' }]
};

/** So many slates of one pallet, the first few of them too thick, or else with a dull ring. */
const slates = (count: number, thick: number, marks = false): MeasuredSlate[] =>
  Array.from({ length: count }, (_, index) => ({
    palletId: 'A',
    drawnAs: 'unsorted sample',
    pointsMm: [index < thick && !marks ? 9 : 5 + index / 1000],
    ...(marks && { ring: index < thick ? ('dull' as const) : ('clear' as const) })
  }));

function soFar(
  count: number,
  thick: number,
  { open = 80 - count, marks = false, delivered = 1200 } = {}
) {
  const result = findAll({
    order: {
      lengthMm: 500,
      widthMm: 250,
      nominalThicknessMm: 5,
      thicknessTolerancePercent: 35,
      texture: 'normal',
      slatesOrdered: 1200
    },
    delivered,
    slates: slates(count, thick, marks),
    plan,
    stacks: [{ slates: 100, totalMm: 540 }],
    labelMmPer100: 540,
    need: { slates: 1100, reserve: 50 },
    sorting: { slatesPerHour: 250, costPerHour: 30, acceptableKickersPer100: 10 },
    evenness: { unsortedKickersPer100: 22, sortedKickersPer100: 4, piles: 3 },
    level: 0.95
  });
  if (!result.ok) throw new Error(result.reason);
  return findSoFar(result.findings, open);
}
const judge = (found: ReturnType<typeof soFar>, measured = found.judged, places = 80) =>
  judgeSoFar(found, { places, measured });
const codes = (found: ReturnType<typeof soFar>): string[] =>
  judge(found).reasons.map(({ code, weight }) => `${weight}: ${code}`);

describe('what may be said before a list is finished', () => {
  it('counts, and nothing of the whole delivery', () => {
    const found = soFar(12, 3);
    expect(found).toMatchObject({ judged: 12, outside: 3 });
    expect(found.byCheck[0]).toEqual({
      check: 'thickness',
      measured: 12,
      failed: 3,
      failedForCertain: 3,
      basis: { standing: 'set by the order', source: 'the order' }
    });
    expect(JSON.stringify(found)).not.toMatch(/[iI]nterval|usable|hours|cost|evenness|level/);
  });

  it('12 of 80 with 3 outside: not decided, a query, and finishing is what would change it', () => {
    const found = soFar(12, 3);
    expect(found.attributes).toEqual({ state: 'unfinished', acceptAtMost: 7, toJudge: 68 });
    expect(judge(found)).toMatchObject({
      verdict: 'query',
      reasons: [{ code: 'list-unfinished', figures: { measured: 12, places: 80, open: 68 } }],
      wouldChange: [{ code: 'places-measured', now: 12, limit: 80 }]
    });
  });

  it('7 outside leaves it open, the eighth decides it whatever the rest would show', () => {
    expect(soFar(12, 7).attributes.state).toBe('unfinished');
    const found = soFar(12, 8);
    expect(found.attributesForCertain).toEqual({ state: 'refused', acceptAtMost: 7, toJudge: 68 });
    expect(codes(found)).toEqual(['refuse: outside-order-already', 'note: list-unfinished']);
    expect(judge(found)).toMatchObject({
      verdict: 'refuse',
      wouldChange: [{ code: 'outside-in-sample-at-most', now: 8, limit: 7 }]
    });
  });

  it('by a limit that nobody confirmed it is queried, not refused', () => {
    const found = soFar(12, 8, { marks: true });
    expect(codes(found)).toEqual(['query: outside-order-unconfirmed', 'query: list-unfinished']);
    expect(judge(found).wouldChange.map(({ code }) => code)).toEqual([
      'outside-in-sample-at-most',
      'outside-with-asked-at-most',
      'places-measured'
    ]);
  });

  it('so few outside that the open ones cannot reach the limit: the plan accepts, the query stays', () => {
    expect(soFar(75, 2).attributes.state).toBe('accepted');
    expect(soFar(75, 3).attributes.state).toBe('unfinished');
    expect(judge(soFar(75, 2)).verdict).toBe('query');
  });

  it('holds a list longer than the plan to the number for the whole list', () => {
    const found = soFar(85, 8, { open: 35 });
    expect(found.plan.sampleSize).toBe(120);
    expect(found.plan.acceptAtMost).toBeGreaterThan(8);
    expect(found.attributes).toMatchObject({ state: 'unfinished', toJudge: 35 });
  });

  it('counts the delivery against the order all the same', () => {
    const found = soFar(12, 0, { delivered: 1100 });
    expect(codes(found)).toEqual(['query: list-unfinished', 'query: count-short']);
    expect(judge(found).wouldChange).toContainEqual({
      code: 'slates-delivered-at-least',
      now: 1100,
      limit: 1200
    });
  });

  it('refuses places that are no whole number', () => {
    expect(() => soFar(12, 0, { open: 0.5 })).toThrow('places still open');
  });
});
