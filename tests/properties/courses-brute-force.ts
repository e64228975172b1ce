import type { PlanRequest } from '$lib/engine/courses';
import type { CourseDemand } from '$lib/engine/roof';

/** A piece of the roof that some pile must fill. */
export interface Place {
  readonly course: number;
  readonly run: number;
  readonly isWide: boolean;
  readonly commonNeighbours: number;
  readonly mayHold: (pile: number) => boolean;
}

/** The figures of the best plan: kickers in thousandths, changeovers, pieces of each pile. */
export interface BruteForceOptimum {
  readonly thousandths: number;
  readonly changeovers: number;
  readonly pieces: readonly number[];
}

/**
 * The planner's optimum by trying every order of the courses of each height, and in each order every
 * way to lay the roof, piece by piece. Shares no code with the planner. Chances must be whole
 * thousandths. Undefined if nothing fits.
 */
export function bruteForceOptimum(request: PlanRequest): BruteForceOptimum | undefined {
  let best: BruteForceOptimum | undefined;
  for (const order of everyOrder(request.courses)) {
    const found = optimumInOrder(request, order);
    if (found && (!best || isBetter(found, best))) best = found;
  }
  return best;
}

/** Every order in which no course comes before a lower one. */
function everyOrder(courses: readonly CourseDemand[]): CourseDemand[][] {
  const heights = [...new Set(courses.map(({ heightMm }) => heightMm))].sort((a, b) => a - b);
  return heights.reduce<CourseDemand[][]>(
    (orders, height) =>
      orders.flatMap((below) =>
        permutations(courses.filter(({ heightMm }) => heightMm === height)).map((here) => [
          ...below,
          ...here
        ])
      ),
    [[]]
  );
}

function permutations<T>(items: readonly T[]): T[][] {
  if (items.length < 2) return [[...items]];
  return items.flatMap((first, index) =>
    permutations(items.toSpliced(index, 1)).map((rest) => [first, ...rest])
  );
}

function optimumInOrder(
  request: PlanRequest,
  ordered: readonly CourseDemand[]
): BruteForceOptimum | undefined {
  let best: BruteForceOptimum | undefined;
  everyLaying(request, ordered, (found) => {
    if (!best || isBetter(found, best)) best = found;
  });
  return best;
}

/**
 * Every way in which the stock lays courses in a given order, no pile thicker than the one before, with
 * its figures: which pile (from 0) each place is laid from.
 */
export function everyLaying(
  request: PlanRequest,
  ordered: readonly CourseDemand[],
  take: (figures: BruteForceOptimum, laid: readonly number[], places: readonly Place[]) => void
): void {
  const { piles, common } = request;
  const { places, fixed, commonNeed } = placesOf(request, ordered);
  for (const pile of piles) {
    if (pile.reservedSlates > pile.slates) return;
    if (!common && pile.reservedSlateAndAHalves > pile.slateAndAHalves) return;
  }
  if (common && commonNeed > common.slateAndAHalves - common.reservedSlateAndAHalves) return;

  const laid: number[] = [];
  const slates = piles.map((pile) => pile.slates - pile.reservedSlates);
  const wide = piles.map((pile) =>
    common ? Infinity : pile.slateAndAHalves - pile.reservedSlateAndAHalves
  );
  const lay = () => {
    if (laid.length === places.length) {
      const found = figures(request, ordered, places, laid, fixed);
      if (found) take(found, laid, places);
      return;
    }
    const place = places[laid.length];
    const stock = place.isWide ? wide : slates;
    for (let pile = laid.at(-1) ?? 0; pile < piles.length; pile++) {
      if (stock[pile] === 0 || !place.mayHold(pile + 1)) continue;
      stock[pile]--;
      laid.push(pile);
      lay();
      laid.pop();
      stock[pile]++;
    }
  };
  lay();
}

function placesOf(
  request: PlanRequest,
  ordered: readonly CourseDemand[]
): { places: Place[]; fixed: number; commonNeed: number } {
  const places: Place[] = [];
  let fixed = 0;
  let commonNeed = 0;
  let run = 0;
  for (const [course, demand] of ordered.entries())
    for (const { slates, startsWithSlateAndAHalf, endsWithSlateAndAHalf } of demand.runs) {
      run++;
      const row = [
        ...(startsWithSlateAndAHalf ? [true] : []),
        ...new Array<boolean>(slates).fill(false),
        ...(endsWithSlateAndAHalf ? [true] : [])
      ];
      for (const [index, isWide] of row.entries()) {
        if (isWide && request.common) {
          commonNeed++;
          if (row[index + 1]) fixed += thousandths(request.kicks.common!.within);
          continue;
        }
        const neighbours = request.common ? [row[index - 1], row[index + 1]] : [];
        places.push({
          course,
          run,
          isWide,
          commonNeighbours: neighbours.filter(Boolean).length,
          mayHold: (pile) => fitsBesideLaid(request, demand, pile, pile)
        });
      }
    }
  return { places, fixed, commonNeed };
}

/**
 * Whether a course may hold these piles, seeing every laid course that binds it: none thicker above a
 * laid one, none thinner below it, and at its height wholly on one side of it.
 */
export function fitsBesideLaid(
  { laid = [], laidBinds = 'all-slopes' }: PlanRequest,
  course: CourseDemand,
  thickest: number,
  thinnest: number
): boolean {
  return laid
    .filter((one) => laidBinds === 'all-slopes' || one.slopeId === course.slopeId)
    .every((one) => {
      const goesAfter = thickest >= one.thinnestPile;
      const goesBefore = thinnest <= one.thickestPile;
      if (one.heightMm === course.heightMm) return goesAfter || goesBefore;
      return one.heightMm < course.heightMm ? goesAfter : goesBefore;
    });
}

function figures(
  request: PlanRequest,
  ordered: readonly CourseDemand[],
  places: readonly Place[],
  laid: readonly number[],
  fixed: number
): BruteForceOptimum | undefined {
  const { kicks, piles } = request;
  let sum = fixed;
  const pieces = piles.map(() => 0);
  const pilesOfCourse = new Map<number, Set<number>>();
  for (const [index, place] of places.entries()) {
    const pile = laid[index];
    pieces[pile]++;
    const used = pilesOfCourse.get(place.course) ?? new Set();
    pilesOfCourse.set(place.course, used.add(pile));
    if (place.commonNeighbours > 0)
      sum += place.commonNeighbours * thousandths(kicks.common!.withPile[pile]);
    if (index === 0 || places[index - 1].run !== place.run) continue;
    const before = laid[index - 1];
    sum += thousandths(before === pile ? kicks.within[pile] : kicks.between[before][pile]);
  }
  const counts = [...pilesOfCourse.values()].map((used) => used.size);
  if (counts.some((count) => count > 2)) return undefined;
  for (const [course, used] of pilesOfCourse) {
    const numbers = [...used].map((pile) => pile + 1);
    if (!fitsBesideLaid(request, ordered[course], Math.min(...numbers), Math.max(...numbers)))
      return undefined;
  }
  return { thousandths: sum, changeovers: counts.filter((count) => count === 2).length, pieces };
}

function isBetter(one: BruteForceOptimum, other: BruteForceOptimum): boolean {
  const order = [
    one.thousandths - other.thousandths,
    one.changeovers - other.changeovers,
    ...one.pieces.map((count, pile) => other.pieces[pile] - count)
  ];
  return (order.find((difference) => difference !== 0) ?? 0) < 0;
}

function thousandths(chance: number): number {
  return Math.round(chance * 1000);
}
