import type { PlanRequest } from '$lib/engine/courses';
import type { CourseDemand } from '$lib/engine/roof';
import {
  type BruteForceOptimum,
  type Place,
  everyLaying,
  fitsBesideLaid
} from './courses-brute-force.ts';

/** The best plan by the rule, in the order in which its figures are compared; less is better. */
export interface RuleOptimum {
  readonly changesWhereSlopesMeet: number;
  readonly changesInCourses: number;
  readonly changesInHeights: number;
  readonly pilesLeftOut: number;
  readonly offCourses: number;
  readonly thousandths: number;
  /** Slates by which all changes are off, times all slates that the piles may give. */
  readonly offSlates: number;
  /** Pieces of each pile; more of a thicker one is better. */
  readonly pieces: readonly number[];
}

/**
 * The plan by the rule by laying the roof in every way the stock allows, piece by piece, the courses of a
 * height in the order of their slopes. Shares no code with the planner. Chances must be whole
 * thousandths. Undefined if nothing fits.
 */
export function ruleOptimum(request: PlanRequest): RuleOptimum | undefined {
  const ordered = request.courses.toSorted(
    (one, other) =>
      one.heightMm - other.heightMm ||
      (one.slopeId < other.slopeId ? -1 : one.slopeId > other.slopeId ? 1 : 0) ||
      one.course - other.course
  );
  let best: RuleOptimum | undefined;
  everyLaying(request, ordered, (figures, laid, places) => {
    const found = ruleFigures(request, ordered, figures, laid, places);
    if (!best || isBetter(found, best)) best = found;
  });
  return best;
}

function ruleFigures(
  request: PlanRequest,
  ordered: readonly CourseDemand[],
  { thousandths, pieces }: BruteForceOptimum,
  laid: readonly number[],
  places: readonly Place[]
): RuleOptimum {
  const heightOf = (place: Place): number => ordered[place.course].heightMm;
  const heights = [...new Set(places.map(heightOf))];
  const withMeeting = new Set(
    ordered.filter(({ meets }) => meets).map((course) => course.heightMm)
  );
  /** Full slates below the start of each height, and of the whole roof. */
  const below = [...heights, Infinity].map(
    (height) => places.filter((place) => !place.isWide && heightOf(place) < height).length
  );
  const needed = below[below.length - 1];
  const given = request.piles.map(({ slates, reservedSlates }, pile) =>
    ordered.some(
      (course) =>
        places.some((place) => ordered[place.course] === course) &&
        fitsBesideLaid(request, course, pile + 1, pile + 1)
    )
      ? slates - reservedSlates
      : 0
  );
  const all = given.reduce((sum, slates) => sum + slates, 0);

  let [changesWhereSlopesMeet, changesInCourses, changesInHeights] = [0, 0, 0];
  for (let piece = 1; piece < laid.length; piece++) {
    if (laid[piece] === laid[piece - 1]) continue;
    const [lower, upper] = [places[piece - 1], places[piece]];
    if (heightOf(lower) !== heightOf(upper)) continue;
    changesInHeights++;
    if (withMeeting.has(heightOf(lower))) changesWhereSlopesMeet++;
    if (lower.course === upper.course) changesInCourses++;
  }
  let offCourses = 1;
  let offSlates = 0;
  let due = 0;
  for (let pile = 0; pile < request.piles.length - 1; pile++) {
    due += given[pile];
    const laidBelow = places.filter((_place, piece) => laid[piece] <= pile);
    const begun = new Set(laidBelow.map(heightOf)).size;
    const next = places[laidBelow.length];
    const isInside =
      next !== undefined && laidBelow.length > 0 && heightOf(next) === heights[begun - 1];
    const done = isInside ? begun - 1 : begun;
    let off = 1;
    while (
      (below[Math.max(0, begun - off)] as number) * all > needed * due ||
      (below[Math.min(heights.length, done + off)] as number) * all < needed * due
    )
      off++;
    offCourses = Math.max(offCourses, off);
    offSlates += Math.abs(laidBelow.filter(({ isWide }) => !isWide).length * all - needed * due);
  }
  const pilesLeftOut = request.piles.filter(
    (_pile, index) =>
      pieces[index] === 0 && given[index] > 0 && given[index] * heights.length >= all
  ).length;
  return {
    ...{ changesWhereSlopesMeet, changesInCourses, changesInHeights, pilesLeftOut },
    ...{ offCourses, thousandths, offSlates, pieces }
  };
}

function isBetter(one: RuleOptimum, other: RuleOptimum): boolean {
  const order = [
    one.changesWhereSlopesMeet - other.changesWhereSlopesMeet,
    one.changesInCourses - other.changesInCourses,
    one.changesInHeights - other.changesInHeights,
    one.pilesLeftOut - other.pilesLeftOut,
    one.offCourses - other.offCourses,
    one.thousandths - other.thousandths,
    one.offSlates - other.offSlates,
    ...one.pieces.map((count, pile) => other.pieces[pile] - count)
  ];
  return (order.find((difference) => difference !== 0) ?? 0) < 0;
}
