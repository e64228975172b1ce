import loadHighs from 'highs';
import { beforeAll, describe, expect, it } from 'vitest';
import { createRandom, randomBelow } from '$lib/engine';

/**
 * The outside solver that the planner is proved against must itself give known answers.
 * HiGHS 1.15 through the `highs` package. The integer programme and its optimum were worked by
 * enumeration; the status words are those that this version of HiGHS prints.
 */
describe('HiGHS as an oracle', () => {
  let highs: Awaited<ReturnType<typeof loadHighs>>;
  const solve = (lp: string) => highs.solve(lp, { mip_rel_gap: 0, output_flag: false });

  beforeAll(async () => {
    highs = await loadHighs();
  });

  it('max 5x + 4y + 3z over three constraints in whole numbers is 13 at (2, 0, 1)', () => {
    const solved = solve(
      [
        'Maximize',
        ' obj: 5 x + 4 y + 3 z',
        'Subject To',
        ' a: 2 x + 3 y + z <= 5',
        ' b: 4 x + y + 2 z <= 11',
        ' c: 3 x + 4 y + 2 z <= 8',
        'General',
        ' x y z',
        'End'
      ].join('\n')
    );
    expect(solved.Status).toBe('Optimal');
    expect(solved.ObjectiveValue).toBe(13);
    const at = ['x', 'y', 'z'].map((name) => (solved.Columns[name] as { Primal: number }).Primal);
    expect(at).toEqual([2, 0, 1]);
  });

  it('says Infeasible, and "Primal infeasible or unbounded" for an unbounded integer programme', () => {
    expect(solve('Minimize\n obj: x\nSubject To\n a: x + y <= -1\nEnd').Status).toBe('Infeasible');
    expect(solve('Maximize\n obj: x\nSubject To\n a: x - y <= 0\nGeneral\n x y\nEnd').Status).toBe(
      'Primal infeasible or unbounded'
    );
  });

  it('shares 4 courses over 3 piles at least cost: 60 random cases equal to trying everything', () => {
    const random = createRandom(43);
    const seen = { equal: 0, infeasible: 0 };
    for (let round = 0; round < 60; round++) {
      const needs = Array.from({ length: 4 }, () => 1 + randomBelow(random, 4));
      const stocks = Array.from({ length: 3 }, () => randomBelow(random, 7));
      const costs = needs.map(() => stocks.map(() => randomBelow(random, 20)));
      const solved = solve(transportProgramme(needs, stocks, costs));
      const best = cheapestSharing(needs, stocks, costs);
      if (best === Infinity) {
        expect(solved.Status).toBe('Infeasible');
        seen.infeasible++;
      } else {
        expect(solved.Status).toBe('Optimal');
        expect(solved.ObjectiveValue).toBeCloseTo(best, 9);
        seen.equal++;
      }
    }
    expect(seen.equal + seen.infeasible).toBe(60);
    expect(Math.min(seen.equal, seen.infeasible)).toBeGreaterThan(5);
  });
});

function transportProgramme(needs: number[], stocks: number[], costs: number[][]): string {
  const name = (course: number, pile: number) => `n_${course}_${pile}`;
  const sum = (terms: string[]) => terms.join(' + ');
  return [
    'Minimize',
    ` obj: ${sum(costs.flatMap((row, course) => row.map((cost, pile) => `${cost} ${name(course, pile)}`)))}`,
    'Subject To',
    ...needs.map(
      (need, course) =>
        ` d${course}: ${sum(stocks.map((_s, pile) => name(course, pile)))} = ${need}`
    ),
    ...stocks.map(
      (stock, pile) =>
        ` s${pile}: ${sum(needs.map((_n, course) => name(course, pile)))} <= ${stock}`
    ),
    'General',
    ...needs.flatMap((_n, course) => stocks.map((_s, pile) => ` ${name(course, pile)}`)),
    'End'
  ].join('\n');
}

function cheapestSharing(needs: number[], stocks: number[], costs: number[][], course = 0): number {
  if (course === needs.length) return 0;
  let best = Infinity;
  for (let first = 0; first <= Math.min(needs[course], stocks[0]); first++)
    for (let second = 0; second <= Math.min(needs[course] - first, stocks[1]); second++) {
      const counts = [first, second, needs[course] - first - second];
      if (counts[2] > stocks[2]) continue;
      const left = stocks.map((stock, pile) => stock - counts[pile]);
      const cost = counts.reduce((sum, count, pile) => sum + count * costs[course][pile], 0);
      best = Math.min(best, cost + cheapestSharing(needs, left, costs, course + 1));
    }
  return best;
}
