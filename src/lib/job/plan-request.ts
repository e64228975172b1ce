import type { KickSoftness } from '$lib/engine/grading';
import { kickSoftnessOf } from './kick-softness.ts';
import {
  type KickChances,
  type PileStock as PlannerStock,
  type PlanRequest,
  kickChances,
  layingProgress
} from '$lib/engine/courses';
import type { CourseDemand, RoofLayout } from '$lib/engine/roof';
import type { ThicknessBins } from '$lib/engine/thickness';
import { type CourseDone, type CoursePartDone, layingFacts } from './laying-facts.ts';
import { placeOf, planOfParts } from './plan-of-parts.ts';
import { type JobSettings, gradesOf, settingsOf, specOf } from './queries.ts';
import { roofLayoutOf } from './roof-of.ts';
import { undereaveServedAtMost } from './roof-undereave.ts';
import { type Stock, stockOf } from './stock.ts';
import {
  type UndereaveDraw,
  type UndereaveLaid,
  undereaveDraws,
  undereaveOfPiles
} from './undereave-draw.ts';
import { keptShare, reservedOf } from './reserve.ts';
import { type JobView, partOf } from '$lib/journal';

/** What a plan still waits for. */
export type MissingForPlan = 'spec' | 'roof' | 'stock' | 'grades';

/** What a plan needs is not all entered: what comes first, and everything. */
export interface PlanNotReady {
  readonly ok: false;
  readonly missing: MissingForPlan;
  readonly all: readonly MissingForPlan[];
}

/** One pile as it stood before anything was laid. */
export interface PileBefore {
  readonly pile: number;
  /** Full slates, counted or expected. */
  readonly slates: number;
  /** Full slates kept back: breakage and spares. */
  readonly reservedSlates: number;
  /** Of these, spares for repairs, which are kept whatever breaks. */
  readonly sparesForRepairs: number;
  /** Slate-and-a-halves as counted; undefined where they are taken to be enough. */
  readonly slateAndAHalves?: number;
}

/** Everything a plan of the rest of the roof rests on. */
export interface PlanGround {
  readonly ok: true;
  /** What is left to plan: courses not laid, stock not used. The whole roof before laying. */
  readonly request: PlanRequest;
  readonly roof: RoofLayout;
  readonly stock: Stock;
  /**
   * Thickness of each pile if every slate lies on its right pile, pile 1 first; empty where nothing
   * was gauged.
   */
  readonly pileBins: readonly ThicknessBins[];
  /** Thickness of what really stands there, misgraded slates among it: the request's chances. */
  readonly sortedBins: readonly ThicknessBins[];
  readonly before: readonly PileBefore[];
  /** The number that stands on each pile of the request, the thickest first. */
  readonly numbers: readonly number[];
  /** Courses laid, in the order they were laid. */
  readonly laid: readonly CourseDone[];
  /** Courses of which a part lies; the request asks for the rest of each. */
  readonly partLaid: readonly CoursePartDone[];
  /** What is left of each pile; the request's piles are that less what undereave rows take. */
  readonly left: readonly PlannerStock[];
  /** Where the undereave rows still to lay come from. */
  readonly undereave: readonly UndereaveDraw[];
  readonly undereaveLaid: readonly UndereaveLaid[];
  /** Slates lost while laying, by pile. */
  readonly lostOfPile: readonly number[];
  /** Piles that gave more than they were taken to hold. */
  readonly overdrawn: readonly number[];
  /** Slate-and-a-halves that the whole roof takes. */
  readonly slateAndAHalvesNeeded: number;
  /** Laid courses that the roof, changed since, has no more. */
  readonly strayCourses: number;
  /** How far the steps of joints scatter. */
  readonly softness: KickSoftness;
}

/**
 * What the planner is asked for a job as it stands: the courses of its roof that are not laid, and
 * its piles less what was laid and lost.
 *
 * Rules. Reserve of a pile: breakage and spares as a share of the pile as it stood before laying,
 * rounded up to whole slates; slates that break come off the reserve, down to the spares; a pile
 * that is used up keeps none. A count by hand holds from its moment on: what was laid and lost
 * before it is in it already. Slate-and-a-halves stand sorted beside their pile; where nobody
 * counted them they are taken to be enough. Chances of kicking come from what really stands on the
 * piles, the job's kick allowance and how far steps scatter; where nothing was gauged they are all 0,
 * since millimetres are unknown. Slates that undereave rows still take are kept back before anything is
 * planned (`undereaveDraws`), unless they come as an article of their own. Of a course that lies in part
 * the rest is asked for, as a shorter course; the joint where it goes on is weighed by no plan.
 *
 * @param asSorted thickness of what stands on each pile of that stock, slates on the wrong pile among
 * it; left out, every slate is taken to lie on its right pile
 * @returns the request with what it rests on, or what is missing; never throws for a journal that
 * was folded
 *
 * Cost: that of the stock and of the roof's layout, which is kept, plus piles² × bins.
 */
export function planRequestOf(
  view: JobView,
  asSorted?: (stock: Stock) => readonly ThicknessBins[]
): PlanGround | PlanNotReady {
  const roof = roofLayoutOf(view);
  const stock = stockOf(view);
  const all = missingFor(view, stock);
  if (!roof.ok || all.length > 0) return { ok: false, missing: all[0] ?? 'roof', all };

  const settings = settingsOf(view);
  const softness = kickSoftnessOf(view);
  const needed = wideNeeded(roof.demand);
  /** Taken to be there where nobody counted: for the courses and for undereave rows. */
  const enough = needed + roof.totals.undereaveSlateAndAHalves;
  const facts = layingFacts(view, roof.demand, stock, enough);
  const before = stock.piles.map(({ pile, slates }, index) =>
    pileBefore(pile, slates + facts.takenBeforeCount[index], facts.wideCounted[index], settings)
  );
  const pileBins = stock.piles.map(({ bins }) => bins);
  const sortedBins = asSorted?.(stock) ?? pileBins;
  const whole: PlanRequest = {
    courses: roof.demand,
    piles: before.map((pile) => plannerStock(pile, enough, settings)),
    kicks: kicksOf(view, sortedBins)
  };
  const partsLaid = new Map(facts.laid.map((course) => [placeOf(course), course.parts]));
  const progress = layingProgress(
    { ...whole, piles: whole.piles.map((pile, index) => less(pile, facts.strayPieces[index])) },
    planOfParts(whole, whole.courses, (place) => partsLaid.get(place)),
    facts.events,
    before.map(({ sparesForRepairs }) => sparesForRepairs)
  );
  const left = progress.remaining.piles;
  const undereave = settings.undereaveOrdered
    ? []
    : undereaveDraws(
        roof,
        progress.remaining.courses,
        new Set(facts.partLaid.filter(isFirstBegun).map(({ slopeId }) => slopeId)),
        left,
        setAsideLeft(view, roof, facts.undereaveLaid)
      );
  const taken = undereaveOfPiles(undereave, left.length);
  const piles = left.map((pile, index) => lessUndereave(pile, taken[index]));
  return {
    ok: true,
    request: {
      ...progress.remaining,
      piles: piles.map(withoutVainReserve),
      reserveShare: keptShare(settings)
    },
    roof,
    stock,
    pileBins,
    sortedBins,
    before,
    numbers: stock.piles.map(({ number }) => number),
    laid: facts.laid,
    partLaid: facts.partLaid,
    left,
    undereave,
    undereaveLaid: facts.undereaveLaid,
    lostOfPile: facts.lostOfPile,
    overdrawn: progress.overdrawn.filter((pile) => pile !== 'common'),
    slateAndAHalvesNeeded: needed,
    strayCourses: facts.strayCourses,
    softness
  };
}

const kicksKnown = new WeakMap<readonly ThicknessBins[], Map<string, KickChances>>();

function kicksKey(view: JobView): string {
  const { varianceMm2, pileShare } = kickSoftnessOf(view);
  return `${settingsOf(view).kickAllowanceMm}|${varianceMm2}|${pileShare}`;
}

/** Keeps chances of kicking that were worked out elsewhere for the same piles of the same view. */
export function rememberKicks(
  view: JobView,
  piles: readonly ThicknessBins[],
  kicks: KickChances
): void {
  kicksKnown.set(piles, new Map([[kicksKey(view), kicks]]));
}

/** The chances of kicking of some piles of a view; the same piles are asked after every course. */
export function kicksOf(view: JobView, piles: readonly ThicknessBins[]): KickChances {
  const known = kicksKnown.get(piles) ?? new Map<string, KickChances>();
  kicksKnown.set(piles, known);
  const key = kicksKey(view);
  const { kickAllowanceMm } = settingsOf(view);
  const kicks =
    known.get(key) ?? kickChances(piles, kickAllowanceMm, undefined, kickSoftnessOf(view));
  known.set(key, kicks);
  return kicks;
}

function missingFor(view: JobView, stock: Stock): MissingForPlan[] {
  const roof = roofLayoutOf(view);
  const missing: MissingForPlan[] = [];
  if (!specOf(view)) missing.push('spec');
  const hasCourses = roof.ok && roof.demand.length > 0;
  if (!hasCourses && (specOf(view) || Object.keys(partOf(view, 'job').slopes).length === 0))
    missing.push('roof');
  if (stock.delivered === 0) missing.push('stock');
  const isByHandOnly = !stock.isGauged && stock.usable > 0;
  if (!gradesOf(view) && stock.delivered > 0 && !isByHandOnly) missing.push('grades');
  return missing;
}

/** Slate-and-a-halves of some courses. */
export function wideNeeded(courses: readonly CourseDemand[]): number {
  return courses
    .flatMap(({ runs }) => runs)
    .reduce(
      (sum, run) => sum + Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf),
      0
    );
}

function pileBefore(
  pile: number,
  slates: number,
  slateAndAHalves: number | undefined,
  { breakageShare, sparesShare }: JobSettings
): PileBefore {
  return {
    pile,
    slates,
    reservedSlates: reservedOf(slates, breakageShare + sparesShare),
    sparesForRepairs: reservedOf(slates, sparesShare),
    ...(slateAndAHalves !== undefined && { slateAndAHalves })
  };
}

function plannerStock(
  { slates, reservedSlates, slateAndAHalves }: PileBefore,
  needed: number,
  { breakageShare, sparesShare }: JobSettings
): PlannerStock {
  return {
    slates,
    reservedSlates,
    slateAndAHalves: slateAndAHalves ?? needed,
    reservedSlateAndAHalves:
      slateAndAHalves === undefined ? 0 : reservedOf(slateAndAHalves, breakageShare + sparesShare)
  };
}

function less(pile: PlannerStock, pieces: number): PlannerStock {
  return { ...pile, slates: Math.max(0, pile.slates - pieces) };
}

/** A pile less what undereave rows take. */
function lessUndereave(
  pile: PlannerStock,
  taken: { readonly slates: number; readonly slateAndAHalves: number }
): PlannerStock {
  return {
    ...less(pile, taken.slates),
    slateAndAHalves: Math.max(0, pile.slateAndAHalves - taken.slateAndAHalves)
  };
}

function isFirstBegun({ course, pieces }: CoursePartDone): boolean {
  return course === 1 && pieces > 0;
}

/** Slates set aside for the undereave that will do and lie nowhere yet. */
function setAsideLeft(view: JobView, roof: RoofLayout, laid: readonly UndereaveLaid[]): number {
  const used = laid.reduce((sum, { fromSetAside }) => sum + fromSetAside, 0);
  return Math.max(0, undereaveServedAtMost(view, roof) - used);
}

/** A pile that is used up has nothing left to keep back. */
function withoutVainReserve(pile: PlannerStock): PlannerStock {
  return pile.slates > 0 ? pile : { ...pile, reservedSlates: 0 };
}
