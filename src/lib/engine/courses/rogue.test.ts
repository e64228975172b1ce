import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { rogueCheck } from './rogue.ts';
import { aCourse, aPile, aRequest, planOf } from '../../../../tests/support/course-requests.ts';

const plan = planOf(aRequest([aCourse(1, 4), aCourse(2, 4), aCourse(3, 4)], [aPile(6), aPile(6)]));
const bins = [
  binsFromPairs([[800, 1]]),
  binsFromPairs([
    [500, 1],
    [520, 1],
    [540, 1],
    [700, 1]
  ])
];

describe('rogueCheck', () => {
  it('tells the chance of kicking in each pile: 6.8 mm kicks with 5.0 and 5.2 of four', () => {
    const { piles } = rogueCheck(plan, bins, 6.8, 1.5, 0.1);
    expect(piles).toEqual([
      { pile: 1, kickChance: 0, mayLie: true },
      { pile: 2, kickChance: 0.5, mayLie: false }
    ]);
  });

  it('names the courses where it may lie, and the part of a changeover course', () => {
    expect(rogueCheck(plan, bins, 6.8, 1.5, 0.1).places).toEqual([
      { slopeId: 'south', course: 1, pile: 1 },
      { slopeId: 'south', course: 2, pile: 1 }
    ]);
    expect(rogueCheck(plan, bins, 5.5, 1.5, 0.1).places).toEqual([
      { slopeId: 'south', course: 2, pile: 2 },
      { slopeId: 'south', course: 3, pile: 2 }
    ]);
  });

  it('accepts a step of exactly the allowance, and refuses one a hundredth above', () => {
    expect(rogueCheck(plan, bins, 9.5, 1.5, 0).piles[0].mayLie).toBe(true);
    expect(rogueCheck(plan, bins, 9.51, 1.5, 0).piles[0].mayLie).toBe(false);
  });

  it('puts no rogue on a pile without slates, and none on a roof that is laid', () => {
    expect(rogueCheck(plan, [bins[0], binsFromPairs([])], 5, 1.5, 1).piles[1].mayLie).toBe(false);
    expect(rogueCheck(planOf(aRequest([], [aPile(1)])), [bins[0]], 8, 1.5, 1).places).toEqual([]);
  });

  it('refuses other piles and impossible chances', () => {
    expect(() => rogueCheck(plan, [bins[0]], 8, 1.5, 0.1)).toThrow(/1 spreads/);
    expect(() => rogueCheck(plan, bins, 8, 1.5, 1.1)).toThrow(/0 to 1/);
    expect(() => rogueCheck(plan, bins, Number.NaN, 1.5, 0.1)).toThrow(/finite/);
  });
});
