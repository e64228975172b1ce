import { inLayingOrder } from './laying-order.ts';
import type { PlanRequest } from './plan-types.ts';
import type { SlotRow } from './slots.ts';

/** The slots that one pile may cover beside what is laid already. */
export interface PileBounds {
  readonly firstSlot: number;
  readonly lastSlot: number;
}

/**
 * Where each pile may still go when part of the roof is laid: nothing thicker above a laid course
 * than its thinnest pile, nothing thinner below it than its thickest. Laid courses bind all slopes,
 * so that slopes that meet still change pile at the same height, or only their own slope.
 *
 * @param request courses in laying order
 * @returns bounds for each pile; an empty range where it may go nowhere. Sort and two sweeps.
 */
export function pileBounds(request: PlanRequest, row: SlotRow): PileBounds[] {
  const { least, most } = pilesAllowed(request);
  const endBefore = (index: number) => (index > 0 ? row.courseEnds[index - 1] : 0);
  const hasSlots = (index: number) => row.courseEnds[index] > endBefore(index);
  return request.piles.map((_pile, index) => {
    const pile = index + 1;
    const barredAbove = least.findIndex((bound, course) => bound > pile && hasSlots(course));
    const barredBelow = most.findLastIndex((bound, course) => bound < pile && hasSlots(course));
    return {
      firstSlot: barredBelow < 0 ? 1 : row.courseEnds[barredBelow] + 1,
      lastSlot: barredAbove < 0 ? row.count : endBefore(barredAbove)
    };
  });
}

/** For each course still to lay, the least and greatest pile number that it may hold. */
function pilesAllowed({ courses, laid = [], laidBinds = 'all-slopes' }: PlanRequest): {
  least: number[];
  most: number[];
} {
  const least = courses.map(() => 1);
  const most = courses.map(() => Infinity);
  if (laid.length === 0) return { least, most };
  const bindsOn = (course: { slopeId: string }) =>
    laidBinds === 'own-slope' ? course.slopeId : '';
  const steps = inLayingOrder(
    [
      ...courses.map((course, index) => ({ course, index })),
      ...laid.map((course) => ({ course, laid: course }))
    ],
    ({ course }) => course
  );

  const thinnestBelow = new Map<string, number>();
  for (const step of steps) {
    const slope = bindsOn(step.course);
    const bound = thinnestBelow.get(slope) ?? 1;
    if ('laid' in step) thinnestBelow.set(slope, Math.max(bound, step.laid.thinnestPile));
    else least[step.index] = bound;
  }
  const thickestAbove = new Map<string, number>();
  for (const step of steps.reverse()) {
    const slope = bindsOn(step.course);
    const bound = thickestAbove.get(slope) ?? Infinity;
    if ('laid' in step) thickestAbove.set(slope, Math.min(bound, step.laid.thickestPile));
    else most[step.index] = bound;
  }
  return { least, most };
}
