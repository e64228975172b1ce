import loadHighs from 'highs';
import {
  type Plan,
  type PlanRequest,
  checkPlan,
  planCourses
} from '../../src/lib/engine/courses/index.ts';
import { roofPlans } from '../../src/lib/engine/courses/risk/index.ts';
import { createRandom, randomBelow } from '../../src/lib/engine/index.ts';
import {
  type PlanGround,
  changesOf,
  moveChange,
  ownPartsOf,
  ownPlanOf
} from '../../src/lib/job/index.ts';
import { milpOf } from '../properties/courses-milp.ts';

/** Keeps results alive so that no timed call can be optimised away. */
let sink = 0;

interface Timing {
  readonly min: number;
  readonly median: number;
}

function time(run: () => number, times: number): Timing {
  const taken: number[] = [];
  for (let round = 0; round < times; round++) {
    const start = performance.now();
    sink += run();
    taken.push(performance.now() - start);
  }
  taken.sort((one, other) => one - other);
  return { min: taken[0], median: taken[Math.floor(taken.length / 2)] };
}

/** Hipped and gabled slopes, courses narrowing towards the ridge, stock a twentieth above need. */
function roof(slopes: number, courses: number, slates: number, piles: number): PlanRequest {
  const random = createRandom(600);
  const perSlope = Math.round(courses / slopes);
  const middle = slates / courses;
  const demand = Array.from({ length: slopes }, (_slope, slope) =>
    Array.from({ length: perSlope }, (_course, course) => {
      const narrowing = slope % 3 === 0 ? 0 : 0.4 * (1 - (2 * course) / perSlope);
      return {
        slopeId: `slope ${String(slope).padStart(2, '0')}`,
        course: course + 1,
        heightMm: 300 * (slope % 4) + 160 * course,
        runs: [
          {
            slates: Math.round(middle * (1 + narrowing)) + randomBelow(random, 3) - 1,
            startsWithSlateAndAHalf: course % 2 === 1,
            endsWithSlateAndAHalf: false
          }
        ]
      };
    })
  ).flat();
  const need = demand.reduce((sum, { runs }) => sum + runs[0].slates, 0);
  return {
    courses: demand,
    piles: Array.from({ length: piles }, (_pile, index) => ({
      slates: Math.ceil((need * 1.05) / piles) + ((index * 37) % 50),
      slateAndAHalves: Math.ceil((courses * 0.6) / piles),
      reservedSlates: 20,
      reservedSlateAndAHalves: 0
    })),
    kicks: {
      within: Array.from(
        { length: piles },
        (_pile, index) => [61, 43, 58, 37, 71, 49][index % 6] / 1000
      ),
      between: Array.from({ length: piles }, (_row, one) =>
        Array.from({ length: piles }, (_column, other) =>
          one === other ? 0 : Math.min(1000, 200 * Math.abs(one - other) + 40) / 1000
        )
      )
    }
  };
}

function plan(request: PlanRequest): number {
  const result = planCourses(request);
  if (result.status !== 'optimal') throw new Error('the bench roof must have a plan');
  return result.objective;
}

const ms = (value: number) => `${value.toFixed(2)} ms`;

async function againstHighs(): Promise<void> {
  const request = roof(12, 600, 30_000, 6);
  const result = planCourses(request);
  if (result.status !== 'optimal') throw new Error('the bench roof must have a plan');
  if (checkPlan(request, result).length > 0) throw new Error('the plan is not sound');
  for (let warm = 0; warm < 5; warm++) sink += plan(request);
  const ours = time(() => plan(request), 25);
  const highs = await loadHighs();
  const model = milpOf(request)!;
  const solve = () => {
    const solved = highs.solve(model.lp, { mip_rel_gap: 0, output_flag: false, time_limit: 600 });
    if (solved.Status !== 'Optimal') {
      console.log(`HiGHS stopped with "${solved.Status}"; its time is a lower bound`);
      return 0;
    }
    const theirs = Math.round((solved.ObjectiveValue + model.constant) * 1e3) / 1e3;
    console.log(`objective: planner ${result.objective / 1e6}, HiGHS ${theirs} thousandths`);
    if (Math.abs(theirs - result.objective / 1e6) > 1e-3) throw new Error('objectives differ');
    return theirs;
  };
  const theirs = time(solve, 1);
  console.log(
    `12 slopes, 600 courses, 6 piles, ${result.joints} joints: planner min ${ms(ours.min)}, median ${ms(ours.median)}; ` +
      `HiGHS ${ms(theirs.min)}; ratio ${(theirs.min / ours.median).toFixed(0)}×`
  );
}

function growth(): void {
  console.log('growth with courses (6 piles, 50 slates a course)');
  for (const courses of [75, 150, 300, 600, 1200]) {
    const request = roof(12, Math.max(12, courses), courses * 50, 6);
    const timing = time(() => plan(request), 15);
    console.log(`  ${courses} courses: min ${ms(timing.min)}, median ${ms(timing.median)}`);
  }
  console.log('growth with piles (600 courses, 30,000 slates)');
  for (const piles of [2, 3, 4, 6, 8]) {
    const request = roof(12, 600, 30_000, piles);
    const timing = time(() => plan(request), 15);
    console.log(`  ${piles} piles: min ${ms(timing.min)}, median ${ms(timing.median)}`);
  }
}

/** Slopes that share every height, no two of them alike: every order of each height is in play. */
function sharedHeights(): void {
  console.log('slopes at the same heights, all unlike (6 piles, 50 slates a course)');
  const random = createRandom(41);
  for (const [slopes, heights] of [
    [4, 60],
    [8, 30],
    [40, 15]
  ]) {
    const request = roof(slopes, slopes * heights, slopes * heights * 50, 6);
    const courses = request.courses.map((course) => ({
      ...course,
      heightMm: 160 * course.course,
      runs: [{ ...course.runs[0], slates: 36 + randomBelow(random, 25) }]
    }));
    const result = planCourses({ ...request, courses });
    if (result.status !== 'optimal') throw new Error('the bench roof must have a plan');
    const timing = time(() => plan({ ...request, courses }), 9);
    console.log(
      `  ${slopes} slopes × ${heights} courses: min ${ms(timing.min)}, median ${ms(timing.median)}; ` +
        `${result.notEveryOrder ? 'not every order tried' : 'proved'}`
    );
  }
}

/**
 * The three plans that stand side by side on Courses, on a roof of uneven slopes: by the rule, held to
 * the chance of running out, and most even, as the worker makes them; and an own plan, begun as the one
 * by the rule and moved one step, as it is while a change is dragged.
 */
function sideBySide(): void {
  const request = roof(12, 600, 30_000, 6);
  const ground = { request, left: request.piles, undereave: [] } as unknown as PlanGround;
  const risk = {
    estimates: request.piles.map(({ slates }) => ({ meanSlates: slates, sdSlates: 40 })),
    mostChance: 0.1,
    breakages: request.piles.map(() => 10)
  };
  const made = (): Plan => {
    const { byRule, mostEven, heldUnder } = roofPlans(request, risk);
    if (byRule.status !== 'optimal' || mostEven.status !== 'optimal')
      throw new Error('the bench roof must have both plans');
    if (heldUnder === undefined) throw new Error('the bench roof must hold the chance');
    return byRule;
  };
  const begun = ownPartsOf(made());
  const [change] = changesOf(made(), 'slope 00');
  let steps = 0;
  const step = (): number => {
    const upTo = change.upTo + (steps++ % 2 === 0 ? -1 : 1);
    return ownPlanOf(ground, moveChange(ground, begun, change, upTo)).kickers;
  };
  for (let warm = 0; warm < 5; warm++) sink += made().kickers + step();
  const two = time(() => made().kickers, 25);
  const own = time(step, 25);
  const three = time(() => made().kickers + step(), 25);
  console.log(
    `side by side, 12 slopes, 600 courses, 6 piles: by the rule and most even min ${ms(two.min)}, ` +
      `median ${ms(two.median)}; a step of an own plan min ${ms(own.min)}, median ` +
      `${ms(own.median)}; all three min ${ms(three.min)}, median ${ms(three.median)}`
  );
}

growth();
sharedHeights();
sideBySide();
if (!process.argv.includes('--growth')) await againstHighs();
console.log(`sink ${sink}`);
