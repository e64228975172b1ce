import type { PlanRequest } from '$lib/engine/courses';
import type { CourseDemand } from '$lib/engine/roof';

/** A piece of the roof that some pile must fill. */
interface Place {
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
 * The planner's optimum by trying every way to lay the roof, piece by piece. Shares no code with
 * the planner. Chances must be whole thousandths. Undefined if nothing fits.
 */
export function bruteForceOptimum(request: PlanRequest): BruteForceOptimum | undefined {
  const { piles, common } = request;
  const { places, fixed, commonNeed } = placesOf(request);
  for (const pile of piles) {
    if (pile.reservedSlates > pile.slates) return undefined;
    if (!common && pile.reservedSlateAndAHalves > pile.slateAndAHalves) return undefined;
  }
  if (common && commonNeed > common.slateAndAHalves - common.reservedSlateAndAHalves)
    return undefined;

  let best: BruteForceOptimum | undefined;
  const laid: number[] = [];
  const slates = piles.map((pile) => pile.slates - pile.reservedSlates);
  const wide = piles.map((pile) =>
    common ? Infinity : pile.slateAndAHalves - pile.reservedSlateAndAHalves
  );
  const lay = () => {
    if (laid.length === places.length) {
      const found = figures(request, places, laid, fixed);
      if (found && (!best || isBetter(found, best))) best = found;
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
  return best;
}

function placesOf(request: PlanRequest): { places: Place[]; fixed: number; commonNeed: number } {
  const places: Place[] = [];
  let fixed = 0;
  let commonNeed = 0;
  let run = 0;
  const ordered = [...request.courses].sort(
    (one, other) => one.heightMm - other.heightMm || (one.slopeId < other.slopeId ? -1 : 1)
  );
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
          mayHold: (pile) => fitsBesideLaid(request, demand, pile)
        });
      }
    }
  return { places, fixed, commonNeed };
}

/** Whether a pile may go on a course, seeing every laid course that binds it. */
export function fitsBesideLaid(
  { laid = [], laidBinds = 'all-slopes' }: PlanRequest,
  course: CourseDemand,
  pile: number
): boolean {
  return laid
    .filter((one) => laidBinds === 'all-slopes' || one.slopeId === course.slopeId)
    .every((one) => {
      const isBelow =
        one.heightMm < course.heightMm ||
        (one.heightMm === course.heightMm && one.slopeId < course.slopeId);
      return isBelow ? pile >= one.thinnestPile : pile <= one.thickestPile;
    });
}

function figures(
  { kicks, piles }: PlanRequest,
  places: readonly Place[],
  laid: readonly number[],
  fixed: number
): BruteForceOptimum | undefined {
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
