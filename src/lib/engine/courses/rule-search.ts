import type { RoofHeights } from './heights.ts';
import { mayHold } from './laid-bounds.ts';
import type { KickChances } from './plan-types.ts';
import type { RoofPlace, RoofPlaces } from './rule-places.ts';
import type { PileLimit } from './search.ts';

/**
 * What speaks against a plan by the rule, the gravest first, in whole numbers. The gravest three are
 * one number: changes where slopes meet, inside a course and inside a height, and piles left out.
 */
export interface RuleCost {
  readonly broken: number;
  /** Courses by which the change farthest from its proportion is off, 1 at least. */
  readonly offCourses: number;
  /** Expected kickers in billionths. */
  readonly kickers: number;
  /** Slates by which all changes together are off, times all slates there are. */
  readonly offSlates: number;
}

/** Worth of one change where slopes meet, inside a course, inside a height, of one pile left out. */
const MEETING = 1_000_000;
const INSIDE_COURSE = 10_000;
const INSIDE_HEIGHT = 100;
const LEFT_OUT = 1;

/** The stretch of one pile, from a place to a place. */
export interface RuleStretch {
  readonly pile: number;
  readonly from: number;
  readonly to: number;
}

/** A plan by the rule in places. */
export interface RuleStretches {
  readonly stretches: readonly RuleStretch[];
  readonly cost: RuleCost;
}

/** The rule's question: places, what each pile may give, chances in billionths. */
export interface RuleSearch {
  readonly roof: RoofHeights;
  readonly places: RoofPlaces;
  readonly limits: readonly PileLimit[];
  readonly kicks: KickChances;
}

const NOWHERE: RuleCost = { broken: Infinity, offCourses: 0, kickers: 0, offSlates: 0 };

/**
 * The exact plan by the rule over given places; undefined if none fits. Two passes from the ridge down:
 * the first finds how little must be broken and how far off the changes must be, the second the
 * fewest kickers among the plans that are no worse. Of equal plans the one with most from pile 1, then
 * from pile 2, and so on.
 *
 * Cost: piles² × places for each pass.
 */
export function ruleStretches(search: RuleSearch): RuleStretches | undefined {
  const proportion = proportionOf(search);
  const reach = search.limits.map((_limit, pile) => reachOf(search, pile));
  const first = pass(search, proportion, reach, undefined);
  if (first.cost.broken === Infinity) return undefined;
  return pass(search, proportion, reach, first.cost.offCourses);
}

/** Where the changes should lie. */
interface Proportion {
  /** For each pile but the last: the highest boundary of heights not above its change, the lowest not below. */
  readonly atMost: readonly number[];
  readonly atLeast: readonly number[];
  /** The same in slates × all slates there are. */
  readonly changeAt: readonly number[];
  readonly all: number;
  /** 1 for a pile whose share comes to a course or more. */
  readonly isDue: readonly number[];
}

function proportionOf({ roof, places, limits }: RuleSearch): Proportion {
  const shares = limits.map(({ slates }, pile) =>
    roof.bounds.some(
      (bounds, index) => roof.courses[index].count > 0 && mayHold(bounds, pile, pile)
    )
      ? slates
      : 0
  );
  const all = shares.reduce((sum, share) => sum + share, 0);
  const below = places.slatesBelowHeight;
  const needed = below[below.length - 1];
  let sum = 0;
  const changeAt = shares.map((share) => needed * (sum += share));
  return {
    all,
    changeAt,
    atMost: changeAt.map((at) => below.findLastIndex((slates) => slates * all <= at)),
    atLeast: changeAt.map((at) => below.findIndex((slates) => slates * all >= at)),
    isDue: shares.map((share) => Number(share > 0 && share * (below.length - 1) >= all))
  };
}

/** For each place the highest one up to which a pile may go from there. */
function reachOf({ roof, places: { places }, limits }: RuleSearch, pile: number): Int32Array {
  const { slates, slateAndAHalves } = limits[pile];
  const reach = new Int32Array(places.length);
  let top = places.length - 1;
  for (let from = places.length - 1; from >= 0; from--) {
    const start = places[from];
    if (start.coursesAfter.some((course) => !mayHold(roof.bounds[course], pile, pile))) top = from;
    while (
      places[top].slates - start.slates > slates ||
      places[top].slateAndAHalves - start.slateAndAHalves > slateAndAHalves
    )
      top--;
    reach[from] = top;
  }
  return reach;
}

/** One table of costs: what lies above a place costs this. */
class Costs {
  readonly broken: Float64Array;
  readonly offCourses: Float64Array;
  readonly kickers: Float64Array;
  readonly offSlates: Float64Array;

  constructor(size: number) {
    this.broken = new Float64Array(size).fill(Infinity);
    this.offCourses = new Float64Array(size);
    this.kickers = new Float64Array(size);
    this.offSlates = new Float64Array(size);
  }
  at(place: number): RuleCost {
    return {
      broken: this.broken[place],
      offCourses: this.offCourses[place],
      kickers: this.kickers[place],
      offSlates: this.offSlates[place]
    };
  }
  /** Keeps a cost where it is less than what was known; as good leaves the earlier. */
  lower(place: number, cost: RuleCost): void {
    if (compare(cost, this.at(place)) >= 0) return;
    this.broken[place] = cost.broken;
    this.offCourses[place] = cost.offCourses;
    this.kickers[place] = cost.kickers;
    this.offSlates[place] = cost.offSlates;
  }
}

function compare(one: RuleCost, other: RuleCost): number {
  if (one.broken === Infinity && other.broken === Infinity) return 0;
  return (
    one.broken - other.broken ||
    one.offCourses - other.offCourses ||
    one.kickers - other.kickers ||
    one.offSlates - other.offSlates
  );
}

/**
 * @param within courses by which changes may be off, and kickers are counted; undefined to find it, and
 * they are not
 */
function pass(
  search: RuleSearch,
  proportion: Proportion,
  reach: readonly Int32Array[],
  within: number | undefined
): RuleStretches {
  const { limits, kicks, roof } = search;
  const { places } = search.places;
  const piles = limits.length;
  const top = places.length - 1;
  const starts = limits.map(() => new Costs(places.length));
  const ends = limits.map(() => new Costs(places.length));
  const perJoint = kicks.within.map((chance) => (within === undefined ? 0 : chance));
  const perCommon = limits.map((_limit, pile) =>
    within === undefined ? 0 : (kicks.common?.withPile[pile] ?? 0)
  );
  const priceUpTo = (pile: number, { joints, isJoint, commonJoints }: RoofPlace): number =>
    perJoint[pile] * (joints - isJoint) + perCommon[pile] * commonJoints;
  const priceBefore = (pile: number, { joints, commonJoints }: RoofPlace): number =>
    perJoint[pile] * joints + perCommon[pile] * commonJoints;

  /** What it costs to change from one pile (−1: none) to a later one (`piles`: none) at a place. */
  const changeCost = (from: number, to: number, at: number): RuleCost => {
    const place = places[at];
    let offCourses = 1;
    let offSlates = 0;
    let leftOut = 0;
    for (let cut = Math.max(0, from); cut < Math.min(to, piles - 1); cut++) {
      const off = Math.max(
        1,
        place.heightsBegun - proportion.atMost[cut],
        proportion.atLeast[cut] - place.heightsBelow
      );
      if (within !== undefined && off > within) return NOWHERE;
      offCourses = Math.max(offCourses, off);
      offSlates += Math.abs(place.slates * proportion.all - proportion.changeAt[cut]);
    }
    for (let pile = from + 1; pile < to; pile++) leftOut += proportion.isDue[pile];
    let broken = leftOut * LEFT_OUT;
    let kickers = 0;
    if (from >= 0 && to < piles && place.heightsBegun > place.heightsBelow) {
      broken += INSIDE_HEIGHT;
      if (place.partsMeeting) broken += MEETING;
      if (place.course >= 0) {
        if (!mayHold(roof.bounds[place.course], from, to)) return NOWHERE;
        broken += INSIDE_COURSE;
        if (within !== undefined) kickers = kicks.between[from][to] * place.isJoint;
      }
    }
    return within === undefined
      ? { broken, offCourses, kickers: 0, offSlates: 0 }
      : { broken, offCourses: 0, kickers, offSlates };
  };
  const plus = (one: RuleCost, other: RuleCost): RuleCost => ({
    broken: one.broken + other.broken,
    offCourses: Math.max(one.offCourses, other.offCourses),
    kickers: one.kickers + other.kickers,
    offSlates: one.offSlates + other.offSlates
  });
  /** The cost from an end of a pile's stretch on, its own price from the eaves included. */
  const endAt = (pile: number, at: number): RuleCost => {
    const cost = ends[pile].at(at);
    return { ...cost, kickers: cost.kickers + priceUpTo(pile, places[at]) };
  };

  for (let pile = piles - 1; pile >= 0; pile--) {
    ends[pile].lower(top, changeCost(pile, piles, top));
    for (let at = 1; at < top; at++)
      for (let next = pile + 1; next < piles; next++)
        if (starts[next].broken[at] < Infinity)
          ends[pile].lower(at, plus(changeCost(pile, next, at), starts[next].at(at)));
    // The least end within reach of each start, as a window that moves down the roof.
    const window: number[] = [];
    let front = 0;
    const add = (at: number): void => {
      const cost = endAt(pile, at);
      if (cost.broken === Infinity) return;
      while (window.length > front && compare(cost, endAt(pile, window[window.length - 1])) < 0)
        window.pop();
      window.push(at);
    };
    let added = top + 1;
    for (let from = top - 1; from >= 0; from--) {
      const { courseEnd, course } = places[from];
      const lowest = course >= 0 ? courseEnd : from + 1;
      while (added > lowest) add(--added);
      while (front < window.length && window[front] > reach[pile][from]) front++;
      if (front === window.length) continue;
      const cost = endAt(pile, window[front]);
      const kickers = cost.kickers - priceBefore(pile, places[from]);
      starts[pile].lower(from, { ...cost, kickers });
    }
  }

  let best = NOWHERE;
  const open = (pile: number): RuleCost => plus(changeCost(-1, pile, 0), starts[pile].at(0));
  for (let pile = 0; pile < piles; pile++) if (compare(open(pile), best) < 0) best = open(pile);
  if (best.broken === Infinity || within === undefined) return { stretches: [], cost: best };

  const stretches: RuleStretch[] = [];
  let pile = limits.findIndex((_limit, own) => compare(open(own), best) === 0);
  for (let from = 0; from < top;) {
    const sought = starts[pile].at(from);
    const lowest = places[from].course >= 0 ? places[from].courseEnd : from + 1;
    let to = reach[pile][from];
    const price = priceBefore(pile, places[from]);
    for (; to > lowest; to--) {
      const cost = endAt(pile, to);
      if (compare({ ...cost, kickers: cost.kickers - price }, sought) === 0) break;
    }
    stretches.push({ pile, from, to });
    if (to === top) break;
    const end = ends[pile].at(to);
    const own = pile;
    const next = limits.findIndex(
      (_limit, other) =>
        other > own && compare(plus(changeCost(own, other, to), starts[other].at(to)), end) === 0
    );
    pile = next;
    from = to;
  }
  return { stretches, cost: { ...best, offCourses: within } };
}
