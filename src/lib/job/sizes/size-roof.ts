import { type RoofLayout, type SlateSpec, type Slope, slopeAsLaid } from '$lib/engine/roof';
import {
  type ChosenSets,
  type SetCourses,
  type SetStock,
  type SetsProblem,
  chooseCourses,
  layOutSets,
  meanWidthMm,
  setRoofProblems,
  unitAreaM2
} from '$lib/engine/sizes';
import { type JobPart, type JobView, current, partOf } from '$lib/journal';
import { EngineError } from '$lib/engine';
import { settingsOf, sizesOf } from '../queries.ts';
import { type RoofOfJob, rememberRoof, slateSpecOf, slopesForEngine } from '../roof-of.ts';
import { coursesHeld, laidOfSizes } from './laid-sizes.ts';
import { placeOf } from '../plan-of-parts.ts';
import { basicViewOfSize, setOfSize, sizeProblemsOf } from './size-view.ts';
import { stockOf } from '../stock.ts';

/** Courses of the sizes of a job, and where they come from. */
export interface SizesLaidOut {
  readonly ok: true;
  /** Each size with its courses, what it gives and what there is of it. */
  readonly sets: ChosenSets['sets'];
  /** `chosen` by somebody; `proposed` by the app, and moving with the stock. */
  readonly standing: 'chosen' | 'proposed';
  /** Whether courses were chosen that fill the roof no more, as after a change of a slope. */
  readonly isChoiceStale: boolean;
  /** Square metres of slate lacking; 0 where the stock is enough. */
  readonly lackingM2: number;
  /** Whether anything is in stock: before, the sizes are taken to be there in equal parts. */
  readonly isStockKnown: boolean;
  readonly roofs: Readonly<Record<string, RoofLayout>>;
}

/** Why the sizes of a job are not laid out. */
export type SizesNotLaidOut =
  | { readonly ok: false; readonly reason: 'no-slate' | 'no-slopes' | 'impossible' }
  | { readonly ok: false; readonly reason: 'sizes'; readonly problems: readonly SetsProblem[] }
  | {
      readonly ok: false;
      readonly reason: 'problems';
      readonly problems: ReturnType<typeof setRoofProblems>;
    };

const known = new WeakMap<
  JobPart,
  { readonly key: string; readonly laid: SizesLaidOut | SizesNotLaidOut }
>();

/**
 * The roof of a job of several sizes, size by size: by the courses that somebody chose, else by those
 * that suit the stock best. The same object as long as nothing changes that it rests on.
 */
export function sizesLaidOut(view: JobView): SizesLaidOut | SizesNotLaidOut {
  const job = partOf(view, 'job');
  const stocks = stocksOf(view);
  const key = JSON.stringify(stocks.map(({ set: _set, ...rest }) => rest));
  const before = known.get(job);
  if (before?.key === key) return before.laid;
  const laid = workOut(view, stocks);
  known.set(job, { key, laid });
  return laid;
}

/**
 * What there is of each size, breakage and spares taken off: slates, or mm of random widths. Slates
 * that broke or ran out count as breakage, and beyond it where they are more. With it the courses that
 * must stay, since they lie.
 */
function stocksOf(view: JobView): SetStock[] {
  const { breakageShare, sparesShare } = settingsOf(view);
  const held = coursesHeld(view);
  return sizesOf(view).map((size) => {
    const set = setOfSize(size);
    const seen = basicViewOfSize(view, size.sizeId);
    const { usable } = stockOf(seen);
    const lost = partOf(seen, 'laying').lost.reduce((sum, { value }) => sum + value.slates, 0);
    const broken = Math.max(usable * breakageShare, lost);
    const kept = Math.floor(Number((usable * (1 - sparesShare) - broken).toFixed(6)));
    const unit = set.widths.kind === 'one' ? 1 : meanWidthMm(set.widths);
    return { set, stock: Math.max(0, Math.floor(kept * unit)), ...held.get(size.sizeId) };
  });
}

function workOut(view: JobView, stocks: readonly SetStock[]): SizesLaidOut | SizesNotLaidOut {
  const base = slateSpecOf(view);
  if (!base) return { ok: false, reason: 'no-slate' };
  const sizeProblems = sizeProblemsOf(view);
  if (sizeProblems.length > 0) return { ok: false, reason: 'sizes', problems: sizeProblems };
  const slopes = slopesForEngine(view);
  if (slopes.length === 0) return { ok: false, reason: 'no-slopes' };
  const problems = setRoofProblems(
    slopes,
    base,
    stocks.map(({ set }) => set)
  );
  if (problems.length > 0) return { ok: false, reason: 'problems', problems };

  const isStockKnown = stocks.some(({ stock }) => stock > 0);
  const asked = isStockKnown ? stocks : inEqualParts(slopes, stocks);
  const hasUndereave = !settingsOf(view).undereaveOrdered;
  const proposed = proposalOf(slopes.map(slopeAsLaid), base, asked, hasUndereave);
  const chosen = current(partOf(view, 'job').setCourses)?.courses ?? [];
  const courses = chosen.length > 0 ? chosen : undefined;
  const byChoice =
    courses &&
    roofsOf(
      slopes,
      base,
      stocks.map(({ set }) => ({
        set,
        courses: courses.find(({ sizeId }) => sizeId === set.id)?.courses ?? 0
      }))
    );
  if (byChoice) {
    const sets = byChoice.chosen.map((each, index) => ({
      ...each,
      used: usedOf(byChoice.roofs[each.set.id], stocks[index], hasUndereave),
      stock: stocks[index].stock
    }));
    const lackingM2 = sets.reduce(
      (sum, { set, used, stock }) => sum + unitAreaM2(set) * Math.max(0, used - stock),
      0
    );
    const { roofs } = byChoice;
    return {
      ok: true,
      sets,
      standing: 'chosen',
      isChoiceStale: false,
      lackingM2,
      isStockKnown,
      roofs
    };
  }
  if (proposed.status === 'impossible') return { ok: false, reason: 'impossible' };
  const laid = roofsOf(slopes, base, proposed.sets);
  if (!laid) return { ok: false, reason: 'impossible' };
  const sets = proposed.sets.map((use, index) => ({ ...use, stock: stocks[index].stock }));
  const { lackingM2 } = proposed;
  const isChoiceStale = courses !== undefined;
  const { roofs } = laid;
  return { ok: true, sets, standing: 'proposed', isChoiceStale, lackingM2, isStockKnown, roofs };
}

/** The best courses that keep what lies; where none does, as after a change of the roof, the best. */
function proposalOf(
  slopes: readonly Slope[],
  base: SlateSpec,
  stocks: readonly SetStock[],
  hasUndereave: boolean
) {
  const keeping = chooseCourses(slopes, base, stocks, hasUndereave);
  if (keeping.status !== 'impossible') return keeping;
  const free = stocks.map(({ set, stock }) => ({ set, stock }));
  return chooseCourses(slopes, base, free, hasUndereave);
}

/** The sizes in equal areas, more than the roof takes. */
function inEqualParts(slopes: readonly Slope[], stocks: readonly SetStock[]): SetStock[] {
  const roofM2 = slopes.reduce(
    (sum, slope) => sum + (slope.rafterLengthMm * (slope.eaveWidthMm + 1000)) / 1e6,
    0
  );
  return stocks.map((one) => ({ ...one, stock: Math.ceil((20 * roofM2) / unitAreaM2(one.set)) }));
}

/** The roofs by some courses; undefined where they do not fill it. */
function roofsOf(slopes: readonly Slope[], base: SlateSpec, chosen: readonly SetCourses[]) {
  try {
    const laid = layOutSets(slopes, base, chosen);
    return laid.ok ? { roofs: laid.roofs, chosen } : undefined;
  } catch (error) {
    if (error instanceof EngineError) return undefined;
    throw error;
  }
}

/** What a set's courses take of its stock, as laid out, with the undereave row unless it is ordered. */
function usedOf({ totals }: RoofLayout, { set }: SetStock, hasUndereave: boolean): number {
  const row = hasUndereave ? totals.undereaveSlates + totals.undereaveSlateAndAHalves : 0;
  const slates = totals.slates + totals.slateAndAHalves + row;
  return set.widths.kind === 'one' ? slates : Math.ceil(slates * meanWidthMm(set.widths));
}

const views = new WeakMap<JobView, Map<string, JobView>>();
const jobParts = new WeakMap<JobPart, { readonly roof: RoofOfJob; readonly part: JobPart }>();

/**
 * A job seen for one of its sizes: its slate, grades, plans and pallets, and of the roof and of what
 * was laid the courses of this size. The view itself where the job has no several sizes.
 */
export function viewOfSize(view: JobView, sizeId: string): JobView {
  const bySize = views.get(view) ?? new Map<string, JobView>();
  views.set(view, bySize);
  let seen = bySize.get(sizeId);
  if (!seen) {
    seen = seenOnRoof(view, sizeId);
    bySize.set(sizeId, seen);
  }
  return seen;
}

function seenOnRoof(view: JobView, sizeId: string): JobView {
  if (!sizesOf(view).some((size) => size.sizeId === sizeId)) return view;
  const basic = basicViewOfSize(view, sizeId);
  const roof = roofOfSize(view, sizeId);
  const seen = new Map(basic);
  seen.set('job', jobWithRoof(partOf(basic, 'job'), roof));
  const places = new Set(roof.ok ? roof.demand.map(placeOf) : []);
  // What lies came off the piles of the size that it was laid of, whatever is to lie there now.
  const laidOf = new Map(laidOfSizes(view).map((one) => [placeOf(one), one.sizeId]));
  const isHere = (place: string): boolean =>
    laidOf.has(place) ? laidOf.get(place) === sizeId : places.has(place);
  const laying = partOf(basic, 'laying');
  const here = <T>(byPlace: Record<string, T>): Record<string, T> =>
    Object.fromEntries(Object.entries(byPlace).filter(([place]) => isHere(place)));
  seen.set('laying', { ...laying, laid: here(laying.laid), partLaid: here(laying.partLaid) });
  return seen;
}

function roofOfSize(view: JobView, sizeId: string): RoofOfJob {
  const laid = sizesLaidOut(view);
  if (laid.ok) {
    const roof = laid.roofs[sizeId];
    return roof.slopes.length > 0 ? roof : { ok: false, reason: 'no-slopes' };
  }
  if (laid.reason === 'problems') return { ok: false, reason: 'problems', problems: laid.problems };
  return { ok: false, reason: laid.reason === 'no-slate' ? 'no-slate' : 'no-slopes' };
}

/** A size's job part with its roof, the same object as long as the roof is. */
function jobWithRoof(job: JobPart, roof: RoofOfJob): JobPart {
  const before = jobParts.get(job);
  if (before && (before.roof === roof || (!before.roof.ok && !roof.ok))) return before.part;
  const part = { ...job };
  rememberRoof(new Map([['job', part]]), roof);
  jobParts.set(job, { roof, part });
  return part;
}
