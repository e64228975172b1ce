import type loadHighs from 'highs';
import type { PlanRequest } from '$lib/engine/courses';
import { piecesInRun } from '$lib/engine/roof';
import { fitsBesideLaid } from './courses-brute-force.ts';

type Highs = Awaited<ReturnType<typeof loadHighs>>;

/** What a general solver finds of the best plan by the rule in which every height is of one pile. */
export interface SolvedRule {
  readonly pilesLeftOut: number;
  readonly offCourses: number;
  readonly thousandths: number;
}

/**
 * The plan by the rule as mixed-integer programmes for a general solver, where every height may be of
 * one pile: first what must be broken, then the fewest kickers with no more broken. For each height u
 * and pile k: `y` is 1 if u is of pile k or a thicker one, and `b` if the change after pile k lies below
 * u. It shares no code with the planner. Chances must be whole thousandths, and there is no common
 * stock. Undefined if nothing fits.
 */
export function solveRule(request: PlanRequest, highs: Highs): SolvedRule | undefined {
  const courses = request.courses.filter(({ runs }) => runs.some((run) => piecesInRun(run) > 0));
  const levels = [...new Set(courses.map(({ heightMm }) => heightMm))].sort((a, b) => a - b);
  const heights = levels.map((height) => courses.filter(({ heightMm }) => heightMm === height));
  const K = request.piles.length;
  if (heights.length === 0 || request.piles.some((pile) => pile.reservedSlates > pile.slates))
    return undefined;
  if (request.piles.some((pile) => pile.reservedSlateAndAHalves > pile.slateAndAHalves))
    return undefined;
  const runsOf = (height: number) => heights[height].flatMap(({ runs }) => runs);
  const sumOf = (
    height: number,
    count: (run: (typeof courses)[number]['runs'][number]) => number
  ) => runsOf(height).reduce((sum, run) => sum + count(run), 0);
  const slates = heights.map((_, height) => sumOf(height, (run) => run.slates));
  const wide = heights.map((_, height) => sumOf(height, (run) => piecesInRun(run) - run.slates));
  const joints = heights.map((_, height) =>
    sumOf(height, (run) => Math.max(0, piecesInRun(run) - 1))
  );
  const below = [...slates, 0].map((_n, height) => total(slates.slice(0, height)));
  const mayLay = (height: number, pile: number) =>
    heights[height].every((course) => fitsBesideLaid(request, course, pile + 1, pile + 1));
  const given = request.piles.map(({ slates: has, reservedSlates }, pile) =>
    courses.some((course) => fitsBesideLaid(request, course, pile + 1, pile + 1))
      ? has - reservedSlates
      : 0
  );
  const all = total(given);
  const needed = total(slates);

  const rows: string[] = [];
  const binaries: string[] = [];
  /** 1 if a height is of a pile: the difference of two y. */
  const lays = (height: number, pile: number, factor: number) =>
    `${signed(factor)} y_${height}_${pile}${pile > 0 ? ` ${signed(-factor)} y_${height}_${pile - 1}` : ''}`;
  for (const height of heights.keys()) {
    rows.push(`y_${height}_${K - 1} = 1`);
    for (let pile = 0; pile < K; pile++) {
      binaries.push(`y_${height}_${pile}`);
      if (pile > 0) rows.push(`y_${height}_${pile} - y_${height}_${pile - 1} >= 0`);
      if (height > 0) rows.push(`y_${height - 1}_${pile} - y_${height}_${pile} >= 0`);
      if (!mayLay(height, pile)) rows.push(`${lays(height, pile, 1)} = 0`);
    }
  }
  for (const [pile, stock] of request.piles.entries()) {
    const use = (counts: readonly number[]) =>
      counts.map((count, height) => lays(height, pile, count)).join(' ');
    rows.push(`${use(slates)} <= ${stock.slates - stock.reservedSlates}`);
    rows.push(`${use(wide)} <= ${stock.slateAndAHalves - stock.reservedSlateAndAHalves}`);
    binaries.push(`out_${pile}`);
    const ofPile = heights.map((_, height) => lays(height, pile, 1)).join(' ');
    const isDue = given[pile] > 0 && given[pile] * heights.length >= all;
    rows.push(isDue ? `out_${pile} ${ofPile} >= 1` : `out_${pile} = 0`);
  }
  for (let pile = 0; pile < K - 1; pile++) {
    const due = needed * total(given.slice(0, pile + 1));
    const lies = heights.map((_, height) => height).concat(heights.length);
    const off = lies.map((place) => {
      let courseCount = 1;
      while (
        below[Math.max(0, place - courseCount)] * all > due ||
        below[Math.min(heights.length, place + courseCount)] * all < due
      )
        courseCount++;
      return courseCount;
    });
    rows.push(`${lies.map((place) => `+ b_${place}_${pile}`).join(' ')} = 1`);
    rows.push(
      `${lies.map((place) => `+ ${place} b_${place}_${pile}`).join(' ')} ${heights.map((_, height) => `- y_${height}_${pile}`).join(' ')} = 0`
    );
    rows.push(`w ${off.map((count, place) => `- ${count} b_${place}_${pile}`).join(' ')} >= 0`);
    for (const place of lies) binaries.push(`b_${place}_${pile}`);
  }
  rows.push('w >= 1');
  const leftOut = request.piles.map((_pile, pile) => `+ out_${pile}`).join(' ');
  const chances = request.kicks.within.map((chance) => Math.round(chance * 1000));
  const kickers = request.piles
    .flatMap((_pile, pile) =>
      joints.map(
        (count, height) =>
          `${signed(count * (chances[pile] - (chances[pile + 1] ?? 0)))} y_${height}_${pile}`
      )
    )
    .join(' ');
  const solve = (objective: string, more: readonly string[]) => {
    const lp = [
      'Minimize',
      ` obj: ${objective}`,
      'Subject To',
      ...[...rows, ...more].map((row, index) => ` r${index}: ${row}`),
      'General',
      ' w',
      'Binary',
      ` ${binaries.join('\n ')}`,
      'End'
    ].join('\n');
    const solved = highs.solve(lp, { mip_rel_gap: 0, output_flag: false });
    return solved.Status === 'Optimal' ? Math.round(solved.ObjectiveValue) : undefined;
  };
  const pilesLeftOut = solve(leftOut, []);
  if (pilesLeftOut === undefined) return undefined;
  const noneMore = [`${leftOut} <= ${pilesLeftOut}`];
  const offCourses = solve('w', noneMore);
  const thousandths = solve(`${kickers} + 0 w`, [...noneMore, `w <= ${offCourses}`]);
  if (offCourses === undefined || thousandths === undefined) throw new Error('the solver gave up');
  return { pilesLeftOut, offCourses, thousandths };
}

function signed(factor: number): string {
  return factor < 0 ? `- ${-factor}` : `+ ${factor}`;
}

function total(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}
