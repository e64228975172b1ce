import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { type SlateSpec, type Slope, maximumGaugeMm } from '../roof/index.ts';
import { courseNeed, slatedWidths, unitAreaM2 } from './course-need.ts';
import { type SetCourses, toTopBattenMm } from './set-out-sets.ts';
import { type SlateSet, isStepPossible, setsProblems } from './slate-sets.ts';

/** Places on the rafter are whole multiples of this, mm, since lengths are whole tenths of a mm. */
const GRID_MM = 0.05;
const SAME_MM = 1e-6;

/** A set with what there is of it, reserve taken off. */
export interface SetStock {
  readonly set: SlateSet;
  /** Slates of one width, or mm of random widths. */
  readonly stock: number;
  /** Courses that the set must have at least, and at most, as on a roof that is being laid. */
  readonly least?: number;
  readonly most?: number;
}

/** What one set gives to the roof. */
export interface SetUse extends SetCourses {
  readonly used: number;
  readonly stock: number;
}

/** Courses of every set that fill the roof, and whether the stock is enough. */
export interface ChosenSets {
  /** `short`: no choice keeps within the stock; this one lacks the least area of slate. */
  readonly status: 'optimal' | 'short';
  readonly sets: readonly SetUse[];
  /** Square metres: the sum of used² / stock over the sets. The lower, the better. */
  readonly objective: number;
  /** Square metres of slate lacking; 0 when optimal. */
  readonly lackingM2: number;
}

/** The rafter cannot be filled by these sets in any number. */
export interface NoSetsFit {
  readonly status: 'impossible';
}

/**
 * Chooses how many courses each set takes, longest at the eaves.
 *
 * All slopes share the stock and the list of courses; a slope that is full earlier takes fewer. The
 * objective is the sum over the sets of used² / stock, in area: it is low where little slate is used
 * and where the sets are used alike, so waste and disproportion are one figure. No set gives more
 * than its stock. A set may have no course, unless it must; the first batten of a set must be possible
 * after the one below it.
 *
 * @param slopes sound slopes, at least one; not modified
 * @param base headlap, nailing, joints; its length and width are not used
 * @param stocks sets from the eave up, longest first, sound (see `setsProblems`), with what there is
 * of each in whole units, and the courses that it must have
 * @param hasUndereave whether the lowest set gives the undereave row as well: as much as its first course
 * @returns the best choice, proved; `short` with the choice that lacks least; `impossible` where
 * not even an unlimited stock fills the rafter so
 * @throws EngineError `inconsistent` for sets that are not sound, `empty`, `not-finite`, `not-whole`,
 * `out-of-range` where at most is below at least
 *
 * Definition: the width of a course is taken at its tail, where the courses lie at their greatest
 * gauge; filling the rafter whole later moves a tail down by less than one margin.
 * Method: exact dynamic programming over the places on the rafter that courses can reach.
 * Cost: linear in slopes; sets² × places × courses of a set.
 * Source: proved by brute force and by a general solver in the tests.
 */
export function chooseCourses(
  slopes: readonly Slope[],
  base: SlateSpec,
  stocks: readonly SetStock[],
  hasUndereave = false
): ChosenSets | NoSetsFit {
  if (slopes.length === 0) throw new EngineError('empty', 'no slopes; give at least one');
  const problems = setsProblems(
    stocks.map(({ set }) => set),
    base
  ).filter(({ code }) => code !== 'step-too-large');
  if (problems.length > 0) throw new EngineError('inconsistent', JSON.stringify(problems));
  for (const { set, stock, least = 0, most } of stocks) {
    requireFinite(stock, `stock of set ${set.id}`);
    requireWhole(least, 0, `least courses of set ${set.id}`);
    if (most !== undefined) requireWhole(most, least, `most courses of set ${set.id}`);
  }

  const table = new Places(slopes, base, stocks, hasUndereave);
  const within = table.best(true);
  if (within) return { status: 'optimal', ...within };
  const lacking = table.best(false);
  return lacking ? { status: 'short', ...lacking } : { status: 'impossible' };
}

/** No way leads here. */
const NONE = -1;
/** The roof's foot: below it there is no set. */
const FOOT = -1;

/** The best way to each place on the rafter that ends with one set. */
class Arrivals {
  readonly cost: Float64Array;
  readonly lacking: Float64Array;
  readonly courses: Int32Array;
  readonly used: Float64Array;
  readonly fromSet: Int32Array;
  readonly fromPlace: Int32Array;

  constructor(places: number) {
    this.cost = new Float64Array(places);
    this.lacking = new Float64Array(places);
    this.courses = new Int32Array(places).fill(NONE);
    this.used = new Float64Array(places);
    this.fromSet = new Int32Array(places);
    this.fromPlace = new Int32Array(places);
  }

  has(place: number): boolean {
    return this.courses[place] !== NONE;
  }

  /** Whether a way would be better: lacks less, or as much and costs less; of equals the first stays. */
  isBeaten(place: number, cost: number, lacking: number): boolean {
    if (!this.has(place)) return true;
    const difference = lacking - this.lacking[place];
    return Math.abs(difference) > 1e-9 ? difference < 0 : cost < this.cost[place] - 1e-12;
  }
}

/** What of a slope tells the width of its courses. */
interface SlopeWidths {
  readonly widthAtMm: (fromEaveMm: number) => number;
  readonly overhangMm: number;
}

class Places {
  readonly #gauge: number[];
  readonly #reach: number[];
  /** Top battens at different distances, and the slopes that end at each. */
  readonly #tops: number[];
  readonly #slopesByTop: SlopeWidths[][];
  readonly #top: number;
  /** Greatest common measure of the gauges, in grid units: places are its multiples. */
  readonly #step: number;
  readonly #count: number;
  /** By set, then by place: what a course there takes of the slopes with each top. */
  readonly #needs: (Float64Array | undefined)[][];

  constructor(
    slopes: readonly Slope[],
    readonly base: SlateSpec,
    readonly stocks: readonly SetStock[],
    readonly hasUndereave: boolean
  ) {
    const aboveMm = base.nailing === 'head' ? base.headNailLineMm : 0;
    const gauges = stocks.map(({ set }) =>
      Math.round(maximumGaugeMm({ ...base, lengthMm: set.lengthMm }) / GRID_MM)
    );
    this.#step = gauges.reduce(greatestCommonDivisor);
    this.#gauge = gauges.map((gauge) => gauge / this.#step);
    this.#reach = stocks.map(({ set }) => set.lengthMm - aboveMm);
    this.#tops = [...new Set(slopes.map(toTopBattenMm))];
    this.#slopesByTop = this.#tops.map((top) =>
      slopes
        .filter((slope) => toTopBattenMm(slope) === top)
        .map((slope) => ({ widthAtMm: slatedWidths(slope), overhangMm: slope.eaveOverhangMm }))
    );
    this.#top = Math.max(...this.#tops);
    const stepMm = this.#step * GRID_MM;
    this.#count = Math.max(1, Math.ceil(this.#top / stepMm)) + Math.max(...this.#gauge) + 1;
    this.#needs = stocks.map(() => []);
  }

  /** The best choice within the stock, or the one that lacks least where stock is no limit. */
  best(isWithinStock: boolean): Omit<ChosenSets, 'status'> | undefined {
    const sets = this.stocks.length;
    const arrivals = this.stocks.map(() => new Arrivals(this.#count));
    /** One place for the full roof, by the set that ends it. */
    const ends = this.stocks.map(() => new Arrivals(1));
    const must = this.stocks.map(({ least = 0 }) => least > 0);
    for (let set = 0; set < sets; set++) {
      if (!must.slice(0, set).includes(true))
        this.#walk(set, 0, FOOT, 0, 0, isWithinStock, arrivals[set], ends[set]);
      for (let below = 0; below < set; below++) {
        if (must.slice(below + 1, set).includes(true) || !this.#canFollow(below, set)) continue;
        const { cost, lacking, courses } = arrivals[below];
        for (let place = 0; place < this.#count; place++)
          if (courses[place] !== NONE)
            this.#walk(
              set,
              place,
              below,
              cost[place],
              lacking[place],
              isWithinStock,
              arrivals[set],
              ends[set]
            );
      }
    }
    let best = NONE;
    for (const [set, end] of ends.entries())
      if (end.has(0) && (best === NONE || ends[best].isBeaten(0, end.cost[0], end.lacking[0])))
        best = set;
    return best === NONE ? undefined : this.#traced(best, ends[best], arrivals);
  }

  /** Adds course after course of a set from a place on, until the roof is full or the stock is out. */
  #walk(
    set: number,
    place: number,
    below: number,
    costSoFar: number,
    lackingSoFar: number,
    isWithinStock: boolean,
    arrivals: Arrivals,
    full: Arrivals
  ): void {
    const { stock, least = 0, most = Infinity } = this.stocks[set];
    const mustFollow = this.stocks.slice(set + 1).some((one) => (one.least ?? 0) > 0);
    const unitM2 = unitAreaM2(this.stocks[set].set);
    const each = this.#gauge[set];
    const isLowest = below === FOOT;
    // The head of the course below decides on which slopes there is a course at all.
    let headBelowMm = isLowest
      ? -Infinity
      : this.#mm(place - this.#gauge[below]) + this.#reach[below];
    let used = isLowest && this.hasUndereave ? sumOf(this.#needsAt(set, 0)) : 0;
    for (let courses = 1; courses <= most; courses++) {
      const at = place + (courses - 1) * each;
      const headMm = this.#mm(at) + this.#reach[set];
      const needs = this.#needsAt(set, at);
      for (let end = 0; end < this.#tops.length; end++) {
        const topMm = this.#tops[end] - SAME_MM;
        if (headBelowMm >= topMm) continue;
        used += needs[end];
        // Slopes that this course fills take the short top course of the same set as well.
        if (headMm >= topMm) used += this.#needsAt(set, at + each)[end];
      }
      if (isWithinStock && used > stock) return;
      const isFull = headMm >= this.#top - SAME_MM;
      const cost = costSoFar + (unitM2 * used * used) / Math.max(stock, 1);
      const lacking = lackingSoFar + unitM2 * Math.max(0, used - stock);
      const into = isFull ? full : arrivals;
      const next = isFull ? 0 : at + each;
      const isAllowed = courses >= least && !(isFull && mustFollow);
      if (isAllowed && into.isBeaten(next, cost, lacking)) {
        into.cost[next] = cost;
        into.lacking[next] = lacking;
        into.courses[next] = courses;
        into.used[next] = used;
        into.fromSet[next] = below;
        into.fromPlace[next] = place;
      }
      if (isFull) return;
      headBelowMm = headMm;
    }
  }

  #mm(place: number): number {
    return place * this.#step * GRID_MM;
  }

  #canFollow(below: number, set: number): boolean {
    const lengthOf = (index: number) => this.stocks[index].set.lengthMm;
    return isStepPossible(lengthOf(below), lengthOf(set), this.base);
  }

  #needsAt(set: number, place: number): Float64Array {
    return (this.#needs[set][place] ??= this.#needsOf(set, this.#mm(place)));
  }

  #needsOf(set: number, tailMm: number): Float64Array {
    const needs = new Float64Array(this.#tops.length);
    for (const [end, slopes] of this.#slopesByTop.entries())
      for (const { widthAtMm, overhangMm } of slopes)
        needs[end] += courseNeed(widthAtMm(tailMm - overhangMm), this.stocks[set].set, this.base);
    return needs;
  }

  #traced(last: number, end: Arrivals, arrivals: readonly Arrivals[]): Omit<ChosenSets, 'status'> {
    const uses = this.stocks.map(({ set, stock }): SetUse => ({ set, stock, courses: 0, used: 0 }));
    let [set, place, way] = [last, 0, end];
    while (set !== FOOT) {
      uses[set] = { ...uses[set], courses: way.courses[place], used: way.used[place] };
      [set, place] = [way.fromSet[place], way.fromPlace[place]];
      way = arrivals[set];
    }
    return { sets: uses, objective: end.cost[0], lackingM2: end.lacking[0] };
  }
}

function sumOf(needs: Float64Array): number {
  return needs.reduce((sum, need) => sum + need, 0);
}

function greatestCommonDivisor(one: number, other: number): number {
  return other === 0 ? one : greatestCommonDivisor(other, one % other);
}
