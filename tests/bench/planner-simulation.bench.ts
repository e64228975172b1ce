import {
  createSimulation,
  expectedPiles,
  kickChances,
  planCourses
} from '../../src/lib/engine/courses/index.ts';
import { createRandom, randomNormal } from '../../src/lib/engine/index.ts';
import { binsFromPairs } from '../../src/lib/engine/thickness/index.ts';

/** How many slates a second the simulation lays: a 30,000-slate roof, six piles, each way. */
const random = createRandom(9);
const spread = binsFromPairs(
  Array.from({ length: 30_000 }, () => [
    Math.min(1000, Math.max(300, Math.round(600 + 110 * randomNormal(random)))),
    1
  ])
);
const courses = Array.from({ length: 600 }, (_course, index) => ({
  slopeId: `slope ${String(index % 12).padStart(2, '0')}`,
  course: Math.floor(index / 12) + 1,
  heightMm: 160 * Math.floor(index / 12),
  runs: [{ slates: 48, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false }]
}));
const stock = { spread, slates: 30_000, slateAndAHalves: 0, reservedShare: 0.03 };
const piles = expectedPiles(stock, [7.2, 6.5, 6, 5.5, 4.8]);
const plan = planCourses({ courses, piles: piles.stocks, kicks: kickChances(piles.bins, 1.5) });
if (plan.status !== 'optimal') throw new Error('the bench roof must have a plan');

for (const hand of [undefined, { sdMm: 0.6, source: 'assumed' as const }]) {
  const simulation = createSimulation(
    { plan, courses, piles: piles.bins, stocks: piles.stocks, kickAllowanceMm: 1.5, hand },
    createRandom(10)
  );
  simulation.step(5);
  const rates: number[] = [];
  for (let round = 0; round < 11; round++) {
    const start = performance.now();
    simulation.step(10);
    rates.push((10 * (hand ? 3 : 2) * 600 * 48) / (performance.now() - start) / 1000);
  }
  rates.sort((one, other) => one - other);
  const { planned, unsorted, byHand, expectedKickers } = simulation.summary();
  console.log(
    `simulation ${hand ? 'with' : 'without'} grading by hand: median ${rates[5].toFixed(1)}, ` +
      `best ${rates[10].toFixed(1)} million slates a second`
  );
  console.log(
    `  kickers: expected ${expectedKickers.toFixed(1)}, planned ${planned.mean.toFixed(1)} ± ` +
      `${planned.standardError.toFixed(1)}, unsorted ${unsorted.mean.toFixed(1)}` +
      (byHand ? `, by hand ${byHand.mean.toFixed(1)}` : '')
  );
}
