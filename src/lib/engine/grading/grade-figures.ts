import { EngineError, requireFinite } from '../errors.ts';
import { type ThicknessBins, totalCount } from '../thickness/index.ts';
import { type PileEvenness, pileEvenness } from './kick-windows.ts';
import { readingPairs, withUnknownAsOthers } from './kick-probability.ts';
import { type ChanceAbove, misgradedPiles } from './misgraded-piles.ts';
import { perfectOrderKickers } from './perfect-order.ts';
import { requireThresholds } from './piles.ts';
import { cutsAtThresholds } from './threshold-between.ts';
import type { KickSoftness } from './soft-kick.ts';
import { type CourseNeed, type FilledCourses, fillWholeCourses } from './whole-courses.ts';

/** What grades are judged by; everything but the thresholds. */
export interface GradingGround {
  /** The sampled spread. */
  readonly bins: ThicknessBins;
  /** Slates in the whole stock, of the sampled spread. */
  readonly stockSlates: number;
  /** What each course needs, eave first; empty while there is no roof. */
  readonly courses: readonly CourseNeed[];
  /** The step between neighbours that is still accepted, mm. */
  readonly kickAllowanceMm: number;
  /** Share of each pile kept back, 0 to below 1: one figure, or one per pile. */
  readonly reserve?: number | readonly number[];
  /** How slates fall either side of a threshold; sharp if left out. */
  readonly chanceAbove?: ChanceAbove;
  /** How far steps scatter about the difference of two slates; not at all if left out. */
  readonly softness?: KickSoftness;
}

/** Kickers over a number of joints. */
export interface Kickers {
  readonly joints: number;
  readonly expectedKickers: number;
  /** Lower is more even; 0 where there are no joints. */
  readonly expectedKickersPer100Joints: number;
}

/** Thickness within one pile, mm. */
export interface PileThickness {
  readonly meanMm: number;
  /** Sample standard deviation, n − 1; 0 for one slate. */
  readonly sdMm: number;
  readonly minMm: number;
  readonly maxMm: number;
  /** The largest step two neighbours can make: thickest less thinnest. */
  readonly worstStepMm: number;
}

export interface PileFigures {
  /** 1 for the thickest. */
  readonly pile: number;
  /** Share of the stock, 0 to 1. */
  readonly share: number;
  /** Slates of the stock that will land here, not rounded. */
  readonly predictedSlates: number;
  /** Null for an empty pile and, with misgrading, for one that expects a slate at most. */
  readonly thickness: PileThickness | null;
  /** Chance that two different slates of the pile kick. */
  readonly kickProbability: number;
  readonly expectedKickersPer100Joints: number;
  /** Whole courses it lays. */
  readonly courses: number;
  /** Predicted slates that its courses do not use, the reserve included. */
  readonly slatesLeftOver: number;
}

export interface GradeFigures {
  /** Thickest first. */
  readonly piles: readonly PileFigures[];
  /** If all the stock were laid pile by pile: kickers per 100 joints, each pile by its share. */
  readonly expectedKickersPer100Joints: number;
  /** The largest step within any pile, mm; 0 for no slates. */
  readonly worstStepMm: number;
  /** Over the courses that whole piles can lay; null while there is no roof. */
  readonly roof:
    (Kickers & { readonly coursesLaid: number; readonly coursesMissing: number }) | null;
  /** The same roof, or the stock in one course, laid from one mixed pile. */
  readonly unsorted: Kickers;
  /** The same laid in falling order of thickness, every slate measured: no sorting does better. */
  readonly perfectOrder: Kickers;
}

/**
 * Prepares the figures for comparing grades on one stock and one roof: hand over thresholds as often
 * as a handle moves and read what they mean.
 *
 * @returns a function of the thresholds between piles, mm, strictly falling, any number from none.
 * Courses are filled as in {@link fillWholeCourses}
 *
 * Definition: a pile's share is that of the sample; its chance to kick that of the sample's distinct
 * pairs, or where it has none the mean of the other piles. With misgrading every figure is that of what really lands on the pile, and its thinnest and
 * thickest are those beyond which less than half a slate of the stock is expected.
 * Cost: bins + piles × courses; with misgrading bins × piles; with softness also bins² of each pile.
 *
 * @throws EngineError `out-of-range`, `not-finite`, `not-whole`, `wrong-length`; from the returned
 * function also `wrong-order`
 * @example
 * const figuresAt = gradeFigures({ bins, stockSlates: 2000, courses: [], kickAllowanceMm: 1.5 });
 * figuresAt([6.5, 5.2]).piles[0].predictedSlates;
 */
export function gradeFigures(
  ground: GradingGround
): (thresholdsMm: readonly number[]) => GradeFigures {
  const { bins, stockSlates, courses, kickAllowanceMm, softness } = ground;
  requireFinite(stockSlates, 'stock');
  if (stockSlates < 0)
    throw new EngineError('out-of-range', `stock is ${stockSlates} slates; give 0 or more`);
  const sampled = totalCount(bins);
  const scale = sampled > 0 ? stockSlates / sampled : 0;
  const row = courses.length > 0 ? courses : stockInOneCourse(sampled > 0 ? stockSlates : 0);
  const joints = jointsOf(row);
  const mixed = pileEvenness(bins, kickAllowanceMm, softness);
  const unsorted = kickers(joints, joints * mixed.kickProbability);
  const perfectOrder = kickers(joints, perfectOrderKickers(bins, row, kickAllowanceMm, softness));

  return (thresholdsMm) => {
    const spreads = ground.chanceAbove
      ? misgradedPiles(bins, thresholdsMm, ground.chanceAbove)
      : sharpPiles(bins, thresholdsMm);
    const evenness = evennessOfPiles(spreads, ground, scale);
    const filled = fillWholeCourses(evenness, courses, ground.reserve);
    const trimmed = ground.chanceAbove && scale > 0 ? 0.5 / scale : 0;
    const piles = describePiles(spreads, evenness, filled, courses, stockSlates, trimmed);
    const roofKickers = kickers(jointsOf(courses.slice(0, filled.laid)), filled.expectedKickers);
    return {
      piles,
      expectedKickersPer100Joints: piles.reduce(
        (sum, pile) => sum + pile.share * pile.expectedKickersPer100Joints,
        0
      ),
      worstStepMm: Math.max(0, ...piles.map(({ thickness }) => thickness?.worstStepMm ?? 0)),
      roof:
        courses.length === 0
          ? null
          : {
              ...roofKickers,
              coursesLaid: filled.laid,
              coursesMissing: courses.length - filled.laid
            },
      unsorted,
      perfectOrder
    };
  };
}

/** Evenness of each pile, in slates of the stock; one known by a single reading kicks as the others. */
function evennessOfPiles(
  spreads: readonly ThicknessBins[],
  { kickAllowanceMm, softness }: Pick<GradingGround, 'kickAllowanceMm' | 'softness'>,
  scale: number
): PileEvenness[] {
  const evenness = spreads.map((spread) => {
    const inSample = pileEvenness(spread, kickAllowanceMm, softness);
    return { ...inSample, slates: inSample.slates * scale };
  });
  const chances = withUnknownAsOthers(
    evenness.map(({ kickProbability }) => kickProbability),
    evenness.map(({ slates }) => slates),
    spreads.map((spread, pile) => readingPairs(spread) > 0 || evenness[pile].slates <= 1)
  );
  return evenness.map((pile, at) => ({ ...pile, kickProbability: chances[at] }));
}

function describePiles(
  spreads: readonly ThicknessBins[],
  evenness: readonly PileEvenness[],
  filled: FilledCourses,
  courses: readonly CourseNeed[],
  stockSlates: number,
  trimmed: number
): PileFigures[] {
  let next = 0;
  return spreads.map((spread, index) => {
    const { slates, kickProbability, meanSquaredStepMm2 } = evenness[index];
    const own = courses.slice(next, next + filled.coursesPerPile[index]);
    next += own.length;
    return {
      pile: index + 1,
      share: stockSlates > 0 ? slates / stockSlates : 0,
      predictedSlates: slates,
      thickness: describeThickness(spread, Math.sqrt(meanSquaredStepMm2 / 2), trimmed),
      kickProbability,
      expectedKickersPer100Joints: 100 * kickProbability,
      courses: own.length,
      slatesLeftOver: slates - own.reduce((sum, course) => sum + course.slates, 0)
    };
  });
}

/** `trimmed` slates of the sample are left out at either end for the thinnest and the thickest. */
function describeThickness(
  { hundredths, counts }: ThicknessBins,
  sdMm: number,
  trimmed: number
): PileThickness | null {
  let slates = 0;
  let sum = 0;
  for (let bin = 0; bin < counts.length; bin++) {
    slates += counts[bin];
    sum += counts[bin] * hundredths[bin];
  }
  if (slates <= 2 * trimmed) return null;
  let thinnest = 0;
  let thickest = counts.length - 1;
  for (let left = trimmed - counts[thinnest]; left > 0; left -= counts[thinnest]) thinnest++;
  for (let left = trimmed - counts[thickest]; left > 0; left -= counts[thickest]) thickest--;
  return {
    meanMm: sum / slates / 100,
    sdMm,
    minMm: hundredths[thinnest] / 100,
    maxMm: hundredths[thickest] / 100,
    worstStepMm: (hundredths[thickest] - hundredths[thinnest]) / 100
  };
}

/** The same as splitting slate by slate, but by bin numbers: quick enough for a moving handle. */
function sharpPiles(bins: ThicknessBins, thresholdsMm: readonly number[]): ThicknessBins[] {
  requireThresholds(thresholdsMm);
  const cuts = [bins.hundredths.length, ...cutsAtThresholds(bins, thresholdsMm), 0];
  return cuts.slice(1).map((first, pile) => ({
    hundredths: bins.hundredths.subarray(first, cuts[pile]),
    counts: bins.counts.subarray(first, cuts[pile]),
    ...(bins.squares && { squares: bins.squares.subarray(first, cuts[pile]) })
  }));
}

function stockInOneCourse(stockSlates: number): CourseNeed[] {
  const slates = Math.round(stockSlates);
  return [{ slates, joints: Math.max(0, slates - 1) }];
}

function jointsOf(courses: readonly CourseNeed[]): number {
  return courses.reduce((sum, { joints }) => sum + joints, 0);
}

function kickers(joints: number, expectedKickers: number): Kickers {
  const expectedKickersPer100Joints = joints > 0 ? (100 * expectedKickers) / joints : 0;
  return { joints, expectedKickers, expectedKickersPer100Joints };
}
