import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { type ThicknessBins, totalCount } from '../thickness/index.ts';
import { candidateCuts } from './candidate-cuts.ts';
import type { ChanceAbove } from './misgraded-piles.ts';
import type { TooFewThicknesses } from './natural-breaks.ts';
import {
  type CourseNeed,
  type CourseSums,
  farthestCourse,
  jointPrice,
  layOnePile,
  reserveShares,
  sumCourses,
  usableSlates
} from './whole-courses.ts';
import type { KickSoftness } from './soft-kick.ts';
import { type WindowTable, windowTable } from './window-table.ts';

export interface RoofToSuit {
  /** The sampled spread. */
  readonly bins: ThicknessBins;
  /** Slates in the whole stock, of the sampled spread. */
  readonly stockSlates: number;
  /** What each course needs, eave first. */
  readonly courses: readonly CourseNeed[];
  /** How many piles to make, 1 or more. */
  readonly piles: number;
  /** The step between neighbours that is still accepted, mm, 0 or more; see `suitTheRoof`. */
  readonly kickAllowanceMm: number;
  /** Share of each pile kept back, 0 to below 1: one figure, or one per pile. */
  readonly reserve?: number | readonly number[];
  /** How slates fall either side of a threshold; sharp if left out. */
  readonly chanceAbove?: ChanceAbove;
  /** How far steps scatter about the difference of two slates; not at all if left out. */
  readonly softness?: KickSoftness;
}

export interface SuitedThresholds {
  readonly ok: true;
  /** `short`: whole courses from this many piles need a larger stock of the same spread. */
  readonly status: 'optimal' | 'short';
  /** Bounds between piles, mm, strictly falling; when short, the best for the topped-up stock. */
  readonly thresholdsMm: readonly number[];
  /** Courses each pile lays, thickest first, once nothing is missing; a pile may lay none. */
  readonly coursesPerPile: readonly number[];
  /** Expected kickers on the roof, once nothing is missing. */
  readonly expectedKickers: number;
  /** Slates of the same spread missing; 0 when optimal. */
  readonly missingSlates: number;
  /** Most courses, eave first, that the stock lays as it stands. */
  readonly coursesInStock: number;
  /** Step of the grid of tried thresholds, mm; null where every gap in the spread was tried. */
  readonly gridMm: number | null;
}

export interface NothingToLay {
  readonly ok: false;
  readonly reason: 'no-courses';
}

/**
 * Boundaries that suit the roof: the thresholds that make expected kickers least over the courses
 * the roof needs, when the piles follow each other from eave to ridge, thickest first, and each lays
 * whole courses.
 *
 * @returns the optimum, or `short` with the least number of slates of the same spread that must be
 * added and the optimum for that stock; `too-few-thicknesses` or `no-courses` where there is nothing
 * to choose. Slates a pile holds beyond its courses stay over, so with stock to spare the optimum
 * may leave thick or thin slates out
 *
 * Definition: thresholds are tried at {@link candidateCuts}; every pile holds at least one of the
 * windows between them, its slates scale from the sample to the stock, and its chance to kick is
 * that of the sample's distinct pairs, which a window of one reading does not tell: it counts as 0 here,
 * and the figures give it the mean of the other piles. The kick allowance is first rounded to 0.01 mm, the grid
 * that thicknesses lie on, halves up. A pile lays at most its slates less its reserve, rounded
 * down. Optimal among all choices of candidates and courses: exact dynamic programme over (courses
 * laid, edge reached), one layer a pile. Ties: choices that agree within a billionth of a kicker a
 * joint are settled by the least mean squared step between neighbours. Planning with changeover
 * courses can do without some of the missing slates.
 * Cost: piles × edges² × courses at worst; stock and demand leave far fewer states when they are
 * close. With misgrading also edges² × bins, with softness edges × bins².
 *
 * @throws EngineError `out-of-range`, `not-whole`, `not-finite`, `wrong-length`
 * @example
 * suitTheRoof({
 *   bins: binsFromPairs([[400, 20], [500, 20], [600, 20]]), stockSlates: 60, piles: 2,
 *   courses: [{ slates: 20, joints: 19 }, { slates: 20, joints: 19 }, { slates: 20, joints: 19 }],
 *   kickAllowanceMm: 0.5
 * }); // threshold 5.5 mm or 4.5 mm: 2 × 19 × 20/39 = 19.49 expected kickers
 */
export function suitTheRoof(roof: RoofToSuit): SuitedThresholds | TooFewThicknesses | NothingToLay {
  requireWhole(roof.piles, 1, 'number of piles');
  requireFinite(roof.stockSlates, 'stock');
  if (roof.stockSlates < 0)
    throw new EngineError('out-of-range', `stock is ${roof.stockSlates} slates; give 0 or more`);
  const reserves = reserveShares(roof.reserve, roof.piles);
  const sums = sumCourses(roof.courses);
  if (sums.courses === 0) return { ok: false, reason: 'no-courses' };
  const { cuts, gridMm } = candidateCuts(roof.bins);
  const distinct = roof.bins.hundredths.length > 0 ? cuts.length + 1 : 0;
  if (distinct < roof.piles) return { ok: false, reason: 'too-few-thicknesses', distinct };

  const windows = tabulate(
    windowTable(roof.bins, cuts, roof.kickAllowanceMm, roof.chanceAbove, roof.softness),
    totalCount(roof.bins)
  );
  const coursesInStock = mostCourses(windows, sums, reserves, roof.stockSlates);
  const enough = coursesInStock === sums.courses;
  const stock = enough ? roof.stockSlates : leastStock(windows, sums, reserves, roof.stockSlates);
  return {
    ok: true,
    status: enough ? 'optimal' : 'short',
    ...cheapestPiles(windows, sums, reserves, stock),
    missingSlates: enough ? 0 : stock - roof.stockSlates,
    coursesInStock,
    gridMm
  };
}

/** The window table unrolled into arrays: entry `thick × edges + thin`. */
interface Windows {
  readonly edges: number;
  readonly thresholdsMm: readonly number[];
  readonly sample: Float64Array;
  readonly sampleTotal: number;
  readonly price: Float64Array;
  readonly kickProbability: Float64Array;
}

function tabulate(table: WindowTable, sampleTotal: number): Windows {
  const { edges, thresholdsMm } = table;
  const sample = new Float64Array(edges * edges);
  const price = new Float64Array(edges * edges);
  const kickProbability = new Float64Array(edges * edges);
  for (let thick = 0; thick < edges; thick++)
    for (let thin = thick + 1; thin < edges; thin++) {
      const pile = table.at(thick, thin);
      sample[thick * edges + thin] = pile.slates;
      price[thick * edges + thin] = jointPrice(pile);
      kickProbability[thick * edges + thin] = pile.kickProbability;
    }
  return { edges, thresholdsMm, sample, sampleTotal, price, kickProbability };
}

function usableOfWindow(windows: Windows, window: number, stock: number, reserve: number): number {
  return usableSlates((windows.sample[window] * stock) / windows.sampleTotal, reserve);
}

/** Most courses that any thresholds lay from a stock: laying as far as one can is never worse. */
function mostCourses(
  windows: Windows,
  sums: CourseSums,
  reserves: readonly number[],
  stock: number
): number {
  const { edges } = windows;
  let reached = new Int32Array(edges).fill(-1);
  reached[0] = 0;
  for (const [pile, reserve] of reserves.entries()) {
    const next = new Int32Array(edges).fill(-1);
    const lastEdge = edges - reserves.length + pile;
    for (let thick = pile; thick < lastEdge; thick++) {
      if (reached[thick] < 0) continue;
      for (let thin = thick + 1; thin <= lastEdge; thin++) {
        const usable = usableOfWindow(windows, thick * edges + thin, stock, reserve);
        next[thin] = Math.max(next[thin], farthestCourse(sums, reached[thick], usable));
      }
    }
    reached = next;
  }
  return reached[edges - 1];
}

/** The least stock, `stock` and a whole number of slates more, from which the roof can be laid. */
function leastStock(
  windows: Windows,
  sums: CourseSums,
  reserves: readonly number[],
  stock: number
): number {
  const isEnough = (missing: number) =>
    mostCourses(windows, sums, reserves, stock + missing) === sums.courses;
  let enough = 1;
  while (!isEnough(enough)) enough *= 2;
  let tooFew = enough >> 1;
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return stock + enough;
}

/** The dynamic programme proper, for a stock known to be enough. */
function cheapestPiles(
  windows: Windows,
  sums: CourseSums,
  reserves: readonly number[],
  stock: number
): Pick<SuitedThresholds, 'thresholdsMm' | 'coursesPerPile' | 'expectedKickers'> {
  const { edges } = windows;
  const piles = reserves.length;
  const heights = sums.courses + 1;
  const needed = leastLaidAtEdges(windows, sums, reserves, stock);
  const queue = new Int32Array(heights);
  let before = new Float64Array(edges * heights).fill(Infinity);
  before[0] = 0;
  const origins: Int32Array[] = [];
  for (const [pile, reserve] of reserves.entries()) {
    const after = new Float64Array(edges * heights).fill(Infinity);
    const origin = new Int32Array(edges * heights);
    const lastEdge = edges - piles + pile;
    const firstThin = pile === piles - 1 ? lastEdge : pile + 1;
    for (let thick = pile; thick < (pile === 0 ? 1 : lastEdge); thick++)
      for (let thin = Math.max(firstThin, thick + 1); thin <= lastEdge; thin++)
        layOnePile(sums, {
          before: before.subarray(thick * heights, (thick + 1) * heights),
          after: after.subarray(thin * heights, (thin + 1) * heights),
          origin: origin.subarray(thin * heights, (thin + 1) * heights),
          mark: thick * heights,
          usable: usableOfWindow(windows, thick * edges + thin, stock, reserve),
          price: windows.price[thick * edges + thin],
          leastLaid: needed[thin],
          queue
        });
    before = after;
    origins.push(origin);
  }
  return traceBack(windows, sums, origins);
}

/** For every edge, the fewest courses laid above it that leave no more than the rest can lay. */
function leastLaidAtEdges(
  windows: Windows,
  sums: CourseSums,
  reserves: readonly number[],
  stock: number
): Int32Array {
  const { edges } = windows;
  const leastReserve = Math.min(...reserves);
  return Int32Array.from({ length: edges }, (_courses, edge) => {
    const rest =
      edge === edges - 1
        ? 0
        : usableOfWindow(windows, edge * edges + edges - 1, stock, leastReserve) + reserves.length;
    let laid = sums.courses;
    while (laid > 0 && sums.slates[sums.courses] - sums.slates[laid - 1] <= rest) laid--;
    return laid;
  });
}

function traceBack(
  windows: Windows,
  sums: CourseSums,
  origins: readonly Int32Array[]
): Pick<SuitedThresholds, 'thresholdsMm' | 'coursesPerPile' | 'expectedKickers'> {
  const { edges } = windows;
  const heights = sums.courses + 1;
  const thresholdsMm: number[] = [];
  const coursesPerPile: number[] = [];
  let expectedKickers = 0;
  let thin = edges - 1;
  let end = sums.courses;
  for (const origin of [...origins].reverse()) {
    const state = origin[thin * heights + end];
    const thick = Math.floor(state / heights);
    const start = state % heights;
    coursesPerPile.unshift(end - start);
    expectedKickers +=
      windows.kickProbability[thick * edges + thin] * (sums.joints[end] - sums.joints[start]);
    if (thick > 0) thresholdsMm.unshift(windows.thresholdsMm[thick]);
    thin = thick;
    end = start;
  }
  return { thresholdsMm, coursesPerPile, expectedKickers };
}
