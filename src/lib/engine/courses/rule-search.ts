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
  /** Whether one place costs less than another, or as much. */
  isAtMost(one: number, other: number): boolean {
    const order =
      this.broken[one] - this.broken[other] ||
      this.offCourses[one] - this.offCourses[other] ||
      this.kickers[one] - this.kickers[other] ||
      this.offSlates[one] - this.offSlates[other];
    return order <= 0;
  }
  /** Keeps a cost where it is less than what was known; as good leaves the earlier. */
  lower(
    place: number,
    broken: number,
    offCourses: number,
    kickers: number,
    offSlates: number
  ): void {
    const known = this.broken[place];
    if (known !== Infinity) {
      const order =
        broken - known ||
        offCourses - this.offCourses[place] ||
        kickers - this.kickers[place] ||
        offSlates - this.offSlates[place];
      if (order >= 0) return;
    }
    this.broken[place] = broken;
    this.offCourses[place] = offCourses;
    this.kickers[place] = kickers;
    this.offSlates[place] = offSlates;
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

/** What a change at a place breaks by where the place lies. */
function brokenBy({ heightsBegun, heightsBelow, partsMeeting, course }: RoofPlace): number {
  if (heightsBegun === heightsBelow) return 0;
  return INSIDE_HEIGHT + (partsMeeting ? MEETING : 0) + (course >= 0 ? INSIDE_COURSE : 0);
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
  const isCounted = within !== undefined;
  const starts = limits.map(() => new Costs(places.length));
  /** Costs of ending at a place; kickers with the pile's own price from the eaves to there. */
  const ends = limits.map(() => new Costs(places.length));
  const perJoint = kicks.within.map((chance) => (isCounted ? chance : 0));
  const perCommon = limits.map((_limit, pile) =>
    isCounted ? (kicks.common?.withPile[pile] ?? 0) : 0
  );
  const priceUpTo = (pile: number, { joints, isJoint, commonJoints }: RoofPlace): number =>
    perJoint[pile] * (joints - isJoint) + perCommon[pile] * commonJoints;
  const priceBefore = (pile: number, { joints, commonJoints }: RoofPlace): number =>
    perJoint[pile] * joints + perCommon[pile] * commonJoints;

  /**
   * Takes the changes from one pile (−1: none) to each later one (`piles`: none) at a place, what
   * follows included, as far as they may lie there.
   */
  const eachChange = (
    from: number,
    at: number,
    take: (to: number, broken: number, off: number, kickers: number, offSlates: number) => void
  ): void => {
    const place = places[at];
    const { heightsBegun, heightsBelow, slates, course } = place;
    const base = from >= 0 && at < top ? brokenBy(place) : 0;
    let [off, offSlates, leftOut] = [1, 0, 0];
    for (let to = from + 1; to <= piles; to++) {
      const cut = to - 1;
      if (cut >= 0 && cut < piles - 1) {
        const above = heightsBegun - proportion.atMost[cut];
        const below = proportion.atLeast[cut] - heightsBelow;
        off = Math.max(off, above, below);
        if (isCounted && off > within) return;
        offSlates += Math.abs(slates * proportion.all - proportion.changeAt[cut]);
      }
      if (cut > from) leftOut += proportion.isDue[cut];
      if (to === piles) {
        if (at === top) take(to, leftOut * LEFT_OUT, off, 0, offSlates);
        return;
      }
      if (at === top || starts[to].broken[at] === Infinity) continue;
      if (base >= INSIDE_COURSE && course >= 0 && !mayHold(roof.bounds[course], from, to)) continue;
      const atJoint = isCounted && course >= 0 ? kicks.between[from][to] * place.isJoint : 0;
      take(
        to,
        base + leftOut * LEFT_OUT + starts[to].broken[at],
        Math.max(off, starts[to].offCourses[at]),
        atJoint + starts[to].kickers[at],
        offSlates + starts[to].offSlates[at]
      );
    }
  };
  const offOf = (off: number): number => (isCounted ? 0 : off);
  const offSlatesOf = (slates: number): number => (isCounted ? slates : 0);

  for (let pile = piles - 1; pile >= 0; pile--) {
    const own = ends[pile];
    for (let at = 1; at <= top; at++) {
      const price = priceUpTo(pile, places[at]);
      eachChange(pile, at, (_to, broken, off, kickers, offSlates) =>
        own.lower(at, broken, offOf(off), kickers + price, offSlatesOf(offSlates))
      );
    }
    // The least end within reach of each start, as a window that moves down the roof.
    const window = new Int32Array(places.length);
    let [front, back] = [0, 0];
    let added = top + 1;
    for (let from = top - 1; from >= 0; from--) {
      const { courseEnd, course } = places[from];
      const lowest = course >= 0 ? courseEnd : from + 1;
      while (added > lowest) {
        added--;
        if (own.broken[added] === Infinity) continue;
        while (back > front && !own.isAtMost(window[back - 1], added)) back--;
        window[back++] = added;
      }
      while (front < back && window[front] > reach[pile][from]) front++;
      if (front === back) continue;
      const end = window[front];
      starts[pile].lower(
        from,
        own.broken[end],
        own.offCourses[end],
        own.kickers[end] - priceBefore(pile, places[from]),
        own.offSlates[end]
      );
    }
  }

  let best = NOWHERE;
  let pile = -1;
  eachChange(-1, 0, (to, broken, off, kickers, offSlates) => {
    const cost = {
      broken,
      offCourses: offOf(off),
      kickers,
      offSlates: offSlatesOf(offSlates)
    };
    if (compare(cost, best) >= 0) return;
    best = cost;
    pile = to;
  });
  if (best.broken === Infinity || !isCounted) return { stretches: [], cost: best };

  const stretches: RuleStretch[] = [];
  for (let from = 0; from < top;) {
    const sought = starts[pile].at(from);
    const price = priceBefore(pile, places[from]);
    const costOf = (at: number): RuleCost => {
      const cost = ends[pile].at(at);
      return { ...cost, kickers: cost.kickers - price };
    };
    let to = reach[pile][from];
    while (compare(costOf(to), sought) !== 0 || ends[pile].broken[to] === Infinity) to--;
    stretches.push({ pile, from, to });
    if (to === top) break;
    const end = ends[pile].at(to);
    const own = pile;
    const ending = priceUpTo(own, places[to]);
    let next = piles;
    eachChange(own, to, (other, broken, off, kickers, offSlates) => {
      const cost = { broken, offCourses: offOf(off), kickers: kickers + ending, offSlates };
      if (other < next && compare(cost, end) === 0) next = other;
    });
    pile = next;
    from = to;
  }
  return { stretches, cost: { ...best, offCourses: within } };
}
