import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { expectedPiles, planBeforeSorting } from './expected-piles.ts';
import { aCourse } from '../../../../tests/support/course-requests.ts';
import { whatIf } from './what-if.ts';

const spread = binsFromPairs([
  [500, 20],
  [600, 5],
  [700, 75]
]);
const stock = { spread, slates: 1000, slateAndAHalves: 10, reservedShare: 0 };

describe('expectedPiles', () => {
  it('shares the stock out as the spread is, with a slate on the threshold on the thicker pile', () => {
    const { stocks, bins } = expectedPiles(stock, [6]);
    expect(stocks.map((pile) => [pile.slates, pile.slateAndAHalves])).toEqual([
      [800, 8],
      [200, 2]
    ]);
    expect([...bins[1].hundredths]).toEqual([500]);
  });

  it('sums to the stock exactly, and rounds reserves up', () => {
    const { stocks } = expectedPiles({ ...stock, slates: 7, reservedShare: 0.05 }, [6.5, 5.5]);
    expect(stocks.map((pile) => pile.slates)).toEqual([5, 0, 2]);
    expect(stocks.map((pile) => pile.reservedSlates)).toEqual([1, 0, 1]);
    expect(expectedPiles({ ...stock, reservedShare: 0.05 }, [6]).stocks[0].reservedSlates).toBe(40);
  });

  it('refuses a stock without a spread and shares that are none', () => {
    expect(() => expectedPiles({ ...stock, spread: binsFromPairs([]) }, [6])).toThrow(/empty/);
    expect(() => expectedPiles({ ...stock, reservedShare: 1.1 }, [6])).toThrow(/0 to 1/);
    expect(() => expectedPiles(stock, [5, 6])).toThrow(/below/);
  });
});

describe('planBeforeSorting', () => {
  const courses = [1, 2, 3, 4].map((number) => aCourse(number, 200));

  it('finds the thresholds that make the roof most even', () => {
    const { plans, best } = planBeforeSorting(courses, stock, 0.5, [[6], [6.5, 5.5], [6.5]]);
    expect(plans).toHaveLength(3);
    expect(best?.thresholdsMm).toEqual([6.5, 5.5]);
    expect(best?.result).toMatchObject({ kickers: 0, changeovers: 0 });
  });

  it('has no best where every way is short', () => {
    const { plans, best } = planBeforeSorting(courses, { ...stock, slates: 700 }, 1.5, [
      [6.5],
      [6]
    ]);
    expect(plans.map(({ result }) => result.status)).toEqual(['short', 'short']);
    expect(best).toBeUndefined();
    expect(planBeforeSorting(courses, stock, 1.5, []).best).toBeUndefined();
  });
});

describe('whatIf', () => {
  it('gives a row for every allowance, reserve and number of piles', () => {
    const rows = whatIf(
      [1, 2, 3, 4].map((number) => aCourse(number, 225)),
      stock,
      {
        thresholdsMm: [[], [6]],
        kickAllowancesMm: [1.5, 2],
        reservedShares: [0.05, 0.2]
      }
    );
    expect(rows).toHaveLength(8);
    expect(
      rows.map(({ piles, kickAllowanceMm, reservedShare, status }) => [
        piles,
        kickAllowanceMm,
        reservedShare,
        status
      ])
    ).toEqual([
      [1, 1.5, 0.05, 'optimal'],
      [2, 1.5, 0.05, 'optimal'],
      [1, 1.5, 0.2, 'short'],
      [2, 1.5, 0.2, 'short'],
      [1, 2, 0.05, 'optimal'],
      [2, 2, 0.05, 'optimal'],
      [1, 2, 0.2, 'short'],
      [2, 2, 0.2, 'short']
    ]);
    expect(rows[1]).toMatchObject({ changeovers: 1, spareSlates: 50, missingSlates: 0 });
    expect(rows[1].kickers!).toBeLessThan(rows[0].kickers!);
    expect(rows[2]).toMatchObject({ missingSlates: 100 });
    expect(rows[4].kickers).toBe(0);
  });
});
