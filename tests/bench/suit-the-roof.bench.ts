/**
 * Times the thresholds that suit the roof: 600 courses, 3 and 6 piles, a stock with little and with
 * much to spare, sharp, misgraded, and with steps that scatter (taper, gauge, slates below), as the
 * app asks. Prints the ratio to natural breaks on the same bins, which know nothing of the roof, and
 * by how much they are worse.
 */
import {
  type CourseNeed,
  fillWholeCourses,
  kickSoftness,
  naturalBreaks,
  pileEvenness,
  splitIntoPiles,
  suitTheRoof
} from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import { createRandom, randomNormal } from '$lib/engine';
import { type ThicknessBins, binsFromPairs, totalCount } from '$lib/engine/thickness';

const COURSES = 600;
const KICK_ALLOWANCE_MM = 1.5;
let sink = 0;

function sampledSpread(slates: number): ThicknessBins {
  const random = createRandom(11);
  const pairs: [number, number][] = [];
  for (let slate = 0; slate < slates; slate++)
    pairs.push([Math.round(Math.min(950, Math.max(350, 620 + 95 * randomNormal(random)))), 1]);
  return binsFromPairs(pairs);
}

/** A hipped roof: courses of 70 slates at the eaves, 30 at the ridge. */
const courses: CourseNeed[] = Array.from({ length: COURSES }, (_course, index) => {
  const slates = 70 - Math.floor((40 * index) / COURSES);
  return { slates, joints: slates - 1 };
});
const need = courses.reduce((sum, { slates }) => sum + slates, 0);

function timed(run: () => number, rounds: number): { least: number; median: number } {
  sink += run();
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    sink += run();
    times.push(performance.now() - start);
  }
  times.sort((one, other) => one - other);
  return { least: times[0], median: times[times.length >> 1] };
}

const bins = sampledSpread(20_000);
console.log(`${COURSES} courses, ${need} slates needed, ${bins.hundredths.length} occupied bins`);
for (const piles of [3, 6])
  for (const spare of [1.03, 1.3])
    for (const slates of ['sharp', 'misgraded', 'soft'] as const) {
      const misgraded = slates === 'misgraded';
      const stockSlates = Math.ceil(need * spare);
      const chanceAbove = misgraded ? normalMisgrading(0.25) : undefined;
      const softness = slates === 'soft' ? kickSoftness(0.3, 0.05, 0.57) : undefined;
      const roof = {
        bins,
        stockSlates,
        courses,
        piles,
        kickAllowanceMm: KICK_ALLOWANCE_MM,
        softness
      };
      const suited = suitTheRoof({ ...roof, chanceAbove });
      if (!suited.ok) throw new Error(suited.reason);
      const natural = naturalBreaks(bins, piles);
      if (!natural.ok) throw new Error(natural.reason);

      const scale = stockSlates / totalCount(bins);
      const byNature = fillWholeCourses(
        splitIntoPiles(bins, natural.thresholdsMm).map((pile) => {
          const evenness = pileEvenness(pile, KICK_ALLOWANCE_MM, softness);
          return { ...evenness, slates: evenness.slates * scale };
        }),
        courses
      );
      const suiting = timed(() => {
        const result = suitTheRoof({ ...roof, chanceAbove });
        return result.ok ? result.expectedKickers : 0;
      }, 5);
      const breaking = timed(() => {
        const result = naturalBreaks(bins, piles);
        return result.ok ? result.withinSumOfSquares : 0;
      }, 15);
      const ratio = suiting.median / breaking.median;
      console.log(
        `${piles} piles, stock ${spare} × need, ${slates}: ${suited.status}, ` +
          `${suited.expectedKickers.toFixed(2)} kickers` +
          (misgraded
            ? ''
            : ` against ${byNature.expectedKickers.toFixed(2)} over ${byNature.laid} courses by natural breaks`) +
          `; min ${suiting.least.toFixed(1)} ms, median ${suiting.median.toFixed(1)} ms, ` +
          `${ratio.toFixed(0)} × natural breaks; grid ${suited.gridMm} mm`
      );
    }
if (!Number.isFinite(sink)) throw new Error('a figure is not a number');
