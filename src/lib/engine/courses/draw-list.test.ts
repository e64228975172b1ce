import { describe, expect, it } from 'vitest';
import { drawList } from './draw-list.ts';
import type { Plan } from './plan-types.ts';
import { planCourses } from './planner.ts';

function plan(widths: readonly number[], stocks: readonly number[], common?: number): Plan {
  const chances = stocks.map(() => 0.1);
  return planCourses({
    courses: widths.map((slates, index) => ({
      slopeId: 'south',
      course: index + 1,
      heightMm: index * 200,
      runs: [{ slates, startsWithSlateAndAHalf: index % 2 === 1, endsWithSlateAndAHalf: false }]
    })),
    piles: stocks.map((slates) => ({
      slates,
      slateAndAHalves: 10,
      reservedSlates: 0,
      reservedSlateAndAHalves: 0
    })),
    kicks: {
      within: chances,
      between: stocks.map(() => chances),
      common: { withPile: chances, within: 0.1 }
    },
    ...(common !== undefined && {
      common: { slateAndAHalves: common, reservedSlateAndAHalves: 0 }
    })
  }) as Plan;
}

const pallet = (palletId: string, ...slates: number[]) =>
  Object.freeze({ palletId, slates, slateAndAHalves: slates.map(() => 4) });

function courses(...asked: Parameters<typeof drawList>) {
  const list = drawList(...asked);
  if (!list.ok) throw new Error(list.reason);
  return list.courses;
}

describe('drawList', () => {
  it('gives an empty list for an empty plan', () => {
    expect(drawList(plan([], [5]), [])).toEqual({ ok: true, courses: [] });
  });

  it('draws in proportion to what pallets hold: 6, 12, 2 from 30, 60, 10', () => {
    const list = courses(plan([20], [100]), [pallet('A', 30), pallet('B', 60), pallet('C', 10)]);
    expect(list[0].draws.map(({ palletId, slates }) => [palletId, slates])).toEqual([
      ['A', 6],
      ['B', 12],
      ['C', 2]
    ]);
  });

  it('touches three pallets even where proportion would leave one out', () => {
    const list = courses(plan([4], [100]), [pallet('A', 97), pallet('B', 1), pallet('C', 2)]);
    expect(list[0].draws.map(({ slates }) => slates)).toEqual([2, 1, 1]);
  });

  it('cannot spread two slates over three pallets', () => {
    const list = courses(plan([2], [90]), [pallet('A', 30), pallet('B', 30), pallet('C', 30)]);
    expect(list[0].draws.map(({ slates }) => slates)).toEqual([1, 1]);
  });

  it('draws both piles of a changeover course, and their slate-and-a-halves', () => {
    const [, changeover] = courses(plan([10, 10], [12, 8]), [
      pallet('A', 4, 3),
      pallet('B', 4, 3),
      pallet('C', 4, 2)
    ]);
    const total = (pile: number, key: 'slates' | 'slateAndAHalves') =>
      changeover.draws
        .filter((draw) => draw.pile === pile)
        .reduce((sum, draw) => sum + draw[key], 0);
    expect([1, 2].map((pile) => total(pile, 'slates'))).toEqual([2, 8]);
    expect([1, 2].map((pile) => total(pile, 'slateAndAHalves'))).toEqual([1, 0]);
  });

  it('draws common slate-and-a-halves without a pile', () => {
    const list = courses(plan([5, 5], [10], 1), [
      { palletId: 'A', slates: [10], commonSlateAndAHalves: 1 }
    ]);
    expect(list[1].draws).toContainEqual({ palletId: 'A', slates: 0, slateAndAHalves: 1 });
  });

  it('names the pile that pallets cannot fill', () => {
    expect(drawList(plan([10], [10]), [pallet('A', 4), pallet('B', 3)])).toEqual({
      ok: false,
      reason: 'pallets-short',
      pile: 1,
      missingSlates: 3,
      missingSlateAndAHalves: 0
    });
    const noWide = { palletId: 'A', slates: [20] };
    expect(drawList(plan([5, 5], [10]), [noWide])).toMatchObject({ missingSlateAndAHalves: 1 });
    expect(drawList(plan([5, 5], [10], 1), [noWide])).not.toHaveProperty('pile');
  });

  it('refuses pallets of one name and pallets for other piles', () => {
    expect(() => drawList(plan([1], [1]), [pallet('A', 1), pallet('A', 1)])).toThrow(/same name/);
    expect(() => drawList(plan([1], [1]), [pallet('A', 1, 1)])).toThrow(/2 piles/);
    expect(() => drawList(plan([1], [1]), [pallet('A', 1.5)])).toThrow(/whole/);
  });
});
