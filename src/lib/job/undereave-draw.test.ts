import { describe, expect, it } from 'vitest';
import { type Plan, drawList } from '$lib/engine/courses';
import type { RoofLayout } from '$lib/engine/roof';
import { undereaveDraws, undereaveLaying, withUndereave } from './undereave-draw.ts';

const none = { joints: 0, kickers: 0, per100Joints: 0, commonSlateAndAHalves: 0 };
const course = (slopeId: string, number: number, pile: number, slates: number) => ({
  ...{ slopeId, course: number, heightMm: number * 200 },
  ...{ parts: [{ pile, slates, slateAndAHalves: 0 }], ...none }
});
const totals = (undereaveSlates: number, undereaveSlateAndAHalves: number) => ({
  undereaveSlates,
  undereaveSlateAndAHalves
});

/** Two slopes, the north one with 20 undereave slates and a wide one, the south one with 10. */
const roof = {
  slopes: [
    { slope: { id: 'north' }, totals: totals(20, 1) },
    { slope: { id: 'south' }, totals: totals(10, 0) }
  ]
} as unknown as RoofLayout;
const courses = [course('north', 1, 1, 20), course('south', 1, 1, 10), course('north', 2, 2, 20)];
const rest = {
  courses,
  piles: [
    { pile: 1, slates: 30, slateAndAHalves: 0 },
    { pile: 2, slates: 20, slateAndAHalves: 0 }
  ]
} as unknown as Plan;

/** Where the rows come from if so many slates are left of each pile, 5 of them kept back. */
const draws = (
  left: readonly number[],
  setAside = 0,
  begun: readonly string[] = [],
  toLay = courses
) =>
  undereaveDraws(
    roof,
    toLay,
    new Set(begun),
    left.map((slates) => ({
      ...{ slates, reservedSlates: 5, slateAndAHalves: 9, reservedSlateAndAHalves: 0 }
    })),
    setAside
  );
const partsOf = (rows: ReturnType<typeof draws>) =>
  rows.map(({ parts }) => parts.map(({ pile, slates }) => [pile, slates]));

describe('undereaveDraws', () => {
  it('takes from the thickest pile that holds the row beyond its reserve', () => {
    expect(draws([65, 25])).toMatchObject([
      {
        ...{ slopeId: 'north', slates: 20, slateAndAHalves: 1, lacking: 0 },
        parts: [{ pile: 1, slates: 20, slateAndAHalves: 1 }]
      },
      { slopeId: 'south', slates: 10, parts: [{ pile: 1, slates: 10 }], lacking: 0 }
    ]);
    // 24 − 5 is one too few for the north row, and enough for the south one.
    expect(partsOf(draws([24, 60]))).toEqual([[[2, 20]], [[1, 10]]]);
  });

  it('takes what was set aside first, the first slope first', () => {
    const rows = draws([65, 25], 24);
    expect(rows.map(({ fromSetAside }) => fromSetAside)).toEqual([20, 4]);
    expect(rows[0].parts).toEqual([{ pile: 1, slates: 0, slateAndAHalves: 1 }]);
    expect(partsOf(rows)[1]).toEqual([[1, 6]]);
  });

  it('takes the rest from the others where no pile holds a row, and says what is lacking', () => {
    expect(partsOf(draws([17, 21, 9]))).toEqual([
      [
        [1, 4],
        [2, 16]
      ],
      [
        [1, 8],
        [3, 2]
      ]
    ]);
    expect(draws([17, 8]).map(({ lacking }) => lacking)).toEqual([5, 10]);
    expect(draws([5, 3])).toMatchObject([
      { lacking: 20, parts: [{ slates: 0, slateAndAHalves: 1 }] },
      { lacking: 10, parts: [] }
    ]);
  });

  it('leaves out a slope whose first course is laid or begun', () => {
    const ids = (rows: ReturnType<typeof draws>) => rows.map(({ slopeId }) => slopeId);
    expect(ids(draws([65, 25], 0, ['north']))).toEqual(['south']);
    expect(ids(draws([65, 25], 0, [], courses.slice(1)))).toEqual(['south']);
  });
});

describe('withUndereave', () => {
  it('puts it below the first course of its slope, and the draw list takes it from the pallets', () => {
    const all = withUndereave(rest, draws([65, 25]));
    expect(all.courses.map(({ slopeId, course: number }) => [slopeId, number])).toEqual([
      ['north', 0],
      ['north', 1],
      ['south', 0],
      ['south', 1],
      ['north', 2]
    ]);
    expect(all.piles.map(({ slates, slateAndAHalves }) => [slates, slateAndAHalves])).toEqual([
      [60, 1],
      [20, 0]
    ]);
    const list = drawList(all, [
      { palletId: 'a', slates: [40, 20], slateAndAHalves: [1, 0] },
      { palletId: 'b', slates: [25, 5], slateAndAHalves: [0, 0] }
    ]);
    if (!list.ok) throw new Error(list.reason);
    const drawn = list.courses.flatMap(({ draws: own }) => own);
    expect(drawn.reduce((sum, { slates }) => sum + slates, 0)).toBe(80);
    expect(drawn.reduce((sum, { slateAndAHalves }) => sum + slateAndAHalves, 0)).toBe(1);
  });

  it('changes nothing where no row is left to lay', () => {
    expect(withUndereave(rest, [])).toEqual(rest);
  });
});

describe('undereaveLaying', () => {
  const ground = { undereave: draws([65, 25], 4), undereaveLaid: [], numbers: [7, 2] };

  it('says of the first course of a slope what its row takes, by the numbers on the piles', () => {
    expect(undereaveLaying(ground, { slopeId: 'north', course: 1 })).toEqual({
      setAside: 4,
      piles: [{ pile: 7, slates: 16, slateAndAHalves: 1 }]
    });
    expect(undereaveLaying(ground, { slopeId: 'north', course: 2 })).toBeUndefined();
  });

  it('says again what lies, whatever is drawn now', () => {
    const lies = { slopeId: 'north', fromSetAside: 0, parts: [] };
    const again = undereaveLaying(
      { ...ground, undereaveLaid: [lies] },
      { slopeId: 'north', course: 1 }
    );
    expect(again).toEqual({ setAside: 0, piles: [] });
  });
});
