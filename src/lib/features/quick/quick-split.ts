import { type Plan, planBeforeSorting } from '$lib/engine/courses';
import {
  equalShares,
  kickProbabilityWithin,
  naturalBreaks,
  splitIntoPiles,
  suitTheRoof
} from '$lib/engine/grading';
import { type CourseDemand, type FieldProblem, layOutRoof, piecesInRun } from '$lib/engine/roof';
import { binsFromPairs, momentsOfBins } from '$lib/engine/thickness';
import { ASSUMED_SOFTNESS, DEFAULT_SETTINGS, slateForEngine, slopeForEngine } from '$lib/job';
import type { BoundaryMethod, SlateSpecBody, SlopeBody } from '$lib/journal';

/** Readings from which a split is shown; twenty are asked for. Ours. */
export const FEWEST_READINGS = 6;
/** Readings that are asked for. */
export const READINGS_ASKED = 20;

/** What is split: a stock, and the roof by its courses or by its size. */
export interface QuickNumbers {
  readonly slates: number;
  readonly roof:
    | { readonly kind: 'courses'; readonly courses: number }
    | { readonly kind: 'size'; readonly spec: SlateSpecBody; readonly slope: SlopeBody };
}

/** One pile of the split. */
export interface QuickPile {
  readonly pile: number;
  /** Slates expected on it. */
  readonly slates: number;
  /** Courses laid mostly from it. */
  readonly courses: number;
  readonly meanMm: number | undefined;
}

/** A split from few readings. */
export interface QuickSplit {
  readonly ok: true;
  readonly method: BoundaryMethod;
  /** Bounds between piles, mm, falling. */
  readonly thresholdsMm: readonly number[];
  /** Thickest first. */
  readonly piles: readonly QuickPile[];
  /** The pile of each course, eave first; empty where slates are missing. */
  readonly courses: readonly number[];
  /** Joints that will show, in 100: sorted so, and unsorted. Undefined where slates are missing. */
  readonly kickersPer100: number | undefined;
  readonly unsortedPer100: number;
  /** Slates the roof needs beyond the stock and what is kept back; 0 where there are enough. */
  readonly missingSlates: number;
}

export type NoQuickSplit =
  | { readonly ok: false; readonly reason: 'too-few-readings'; readonly readings: number }
  | { readonly ok: false; readonly reason: 'all-equal'; readonly thicknessMm: number }
  | { readonly ok: false; readonly reason: 'more-courses-than-slates' }
  | { readonly ok: false; readonly reason: 'roof'; readonly problem: FieldProblem | undefined };

/**
 * Splits a stock from a few readings, by the planner and the boundaries that a job uses: of the
 * splits best for the roof, at the gaps and into equal shares, the one whose plan has the fewest
 * kickers. Three piles, or two where the readings have only two thicknesses. Breakage and spares as
 * in a new job; a slate-and-a-half counts as a slate.
 *
 * Where only the number of courses is known, all courses are taken to be alike and to use the whole
 * stock less breakage and spares.
 *
 * @param readingsMm accepted readings, mm; order does not matter; not modified
 * @returns the split, also where the roof needs more slates than there are; or why there is none
 */
export function quickSplit(
  numbers: QuickNumbers,
  readingsMm: readonly number[]
): QuickSplit | NoQuickSplit {
  if (readingsMm.length < FEWEST_READINGS)
    return { ok: false, reason: 'too-few-readings', readings: readingsMm.length };
  const bins = binsFromPairs(readingsMm.map((mm) => [Math.round(mm * 100), 1] as const));
  const distinct = bins.hundredths.length;
  if (distinct < 2) return { ok: false, reason: 'all-equal', thicknessMm: readingsMm[0] };
  const demand = demandOf(numbers);
  if (!Array.isArray(demand)) return demand;

  const piles = Math.min(DEFAULT_SETTINGS.piles, distinct);
  const { kickAllowanceMm } = DEFAULT_SETTINGS;
  const stock = {
    spread: bins,
    slates: numbers.slates,
    slateAndAHalves: 0,
    reservedShare: RESERVED_SHARE,
    softness: ASSUMED_SOFTNESS
  };
  const ways = waysToCut(demand, numbers.slates, bins, piles);
  const { plans, best } = planBeforeSorting(
    demand,
    stock,
    kickAllowanceMm,
    ways.map(({ thresholdsMm }) => thresholdsMm)
  );
  const shown = best ?? plans[0];
  const { result, request, thresholdsMm } = shown;
  const courses = result.status === 'optimal' ? pilesOfCourses(result) : [];
  const split = splitIntoPiles(bins, thresholdsMm);
  return {
    ok: true,
    method: ways[plans.indexOf(shown)].method,
    thresholdsMm,
    piles: split.map((part, index) => {
      const moments = momentsOfBins(part);
      return {
        pile: index + 1,
        slates: request.piles[index].slates,
        courses: courses.filter((pile) => pile === index + 1).length,
        meanMm: moments.ok ? moments.meanMm : undefined
      };
    }),
    courses,
    kickersPer100: result.status === 'optimal' ? result.per100Joints : undefined,
    unsortedPer100: 100 * kickProbabilityWithin(bins, kickAllowanceMm, ASSUMED_SOFTNESS),
    missingSlates: result.status === 'optimal' ? 0 : result.missingSlates
  };
}

/** Kept back of each pile, as in a new job. */
const RESERVED_SHARE = DEFAULT_SETTINGS.breakageShare + DEFAULT_SETTINGS.sparesShare;

function demandOf({ slates, roof }: QuickNumbers): CourseDemand[] | NoQuickSplit {
  if (roof.kind === 'courses') {
    // Each pile keeps back whole slates, rounded up.
    const usable = Math.floor(slates * (1 - RESERVED_SHARE)) - DEFAULT_SETTINGS.piles;
    const perCourse = Math.floor(usable / roof.courses);
    if (perCourse < 1) return { ok: false, reason: 'more-courses-than-slates' };
    return Array.from({ length: roof.courses }, (_, index) =>
      courseOf('roof', index + 1, index, perCourse)
    );
  }
  const { spec, slope } = roof;
  // The pitch changes no course: any will do where it is not known.
  const pitched = { ...slope, pitchDegrees: slope.pitchDegrees ?? 40 };
  const laid = layOutRoof([slopeForEngine(pitched, spec)], slateForEngine(spec));
  if (!laid.ok) return { ok: false, reason: 'roof', problem: laid.problems[0] };
  return laid.demand.map(({ slopeId, course, heightMm, runs }) => ({
    ...{ slopeId, course, heightMm },
    runs: runs.map((run) => ({ ...PLAIN, slates: piecesInRun(run) }))
  }));
}

const PLAIN = { startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false };

function courseOf(slopeId: string, course: number, heightMm: number, slates: number): CourseDemand {
  return { slopeId, course, heightMm, runs: [{ ...PLAIN, slates }] };
}

interface WayToCut {
  readonly method: BoundaryMethod;
  readonly thresholdsMm: readonly number[];
}

function waysToCut(
  demand: readonly CourseDemand[],
  stockSlates: number,
  bins: ReturnType<typeof binsFromPairs>,
  piles: number
): WayToCut[] {
  const courses = demand.map(({ runs }) => ({
    slates: runs.reduce((sum, { slates }) => sum + slates, 0),
    joints: runs.reduce((sum, { slates }) => sum + Math.max(0, slates - 1), 0)
  }));
  const { kickAllowanceMm } = DEFAULT_SETTINGS;
  const suited = suitTheRoof({
    ...{ bins, stockSlates, courses, piles, kickAllowanceMm },
    reserve: RESERVED_SHARE,
    softness: ASSUMED_SOFTNESS
  });
  const natural = naturalBreaks(bins, piles);
  const equal = equalShares(bins, piles);
  return [
    ...(natural.ok ? [{ method: 'naturalBreaks' as const, ...natural }] : []),
    ...(suited.ok ? [{ method: 'suitTheRoof' as const, ...suited }] : []),
    ...(equal.ok ? [{ method: 'equalShares' as const, ...equal }] : [])
  ].map(({ method, thresholdsMm }) => ({ method, thresholdsMm }));
}

/** The pile that gives most of each course, in laying order; of two that give the same, the thicker. */
function pilesOfCourses({ courses }: Plan): number[] {
  return courses.flatMap(({ parts }) => {
    const [first, second] = parts;
    if (!first) return [];
    return [second && second.slates > first.slates ? second.pile : first.pile];
  });
}
