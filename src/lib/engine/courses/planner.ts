import { bestParts } from './best-parts.ts';
import type { CourseStretch } from './follow-costs.ts';
import { type RoofHeights, roofHeights } from './heights.ts';
import { chancesInBillionths } from './kick-chances.ts';
import { layingOrder } from './laying-order.ts';
import { planFromStretches } from './plan-figures.ts';
import type { Plan, PlanRequest, PlanResult } from './plan-types.ts';
import { requireRequest } from './request-check.ts';
import { shortage } from './shortage.ts';
import { hasEnoughCommon, keepsEveryReserve, limitsOf, requireExact } from './stock-limits.ts';

/**
 * The most even roof that the stock can give: which pile each course is laid from, with the fewest
 * expected kickers of all plans that fit. Use it before sorting (expected counts), after sorting
 * (counted piles) and part laid (the remaining courses and what is left).
 *
 * The model. Courses are laid height by height, those of one height in whatever order is best;
 * thickness never rises along the order, so slopes that meet change pile at the same height. Each
 * pile is laid in one unbroken stretch of that order, or left out. A course holds at most two piles; in a
 * changeover course each forms one run from the left, the thicker first, so there is one joint
 * between unlike slates (none if the change falls on an opening). Stock less reserve is never
 * exceeded, neither slates nor slate-and-a-halves. Courses of one height of which some meet at a hip or
 * valley are one unit, all from one pile; only where no such plan fits are they divided after all, and
 * the plan says `changesApart`.
 *
 * Expected kickers. Each joint between two pieces of pile k counts q_k, each joint between piles
 * j and k counts q_jk. A slate-and-a-half is as thick as its pile, unless it comes from a common
 * stock; then it makes a joint of its own chance with its neighbour.
 *
 * Part laid. Courses laid already hold their place: the rest goes below, above, or on either side at
 * their height, as if they had been planned so, and the rest of a plan that was followed stays the
 * best for what is left.
 *
 * Ties, in this order: fewer changeover courses; more of the roof from pile 1, then from pile 2,
 * and so on. The same request always gives the same plan, whatever the order of its courses.
 *
 * Accuracy. Chances are rounded to whole billionths; from there on all sums are exact whole
 * numbers, so `optimal` is a proof for the rounded chances, over every order within every height.
 * Where too many unlike courses share a height for that (`triesEveryOrder` of the roof's heights),
 * the result says `notEveryOrder`: the plan is the best of those tried, and neither it nor a shortage
 * is proved.
 *
 * @returns a plan with `status: 'optimal'`, or `status: 'short'` with how much is missing when no
 * plan fits: too few slates, a reserve above its stock, or piles too small to share courses out two
 * by two. A roof without pieces gives an empty optimal plan.
 * @throws EngineError for misuse: `inconsistent` for contradictory courses or chances,
 * `wrong-length`, `not-whole`, `not-finite`, `out-of-range` (also for a roof so large that
 * joints × piles would pass 9 million)
 *
 * Cost: piles² × slots × the ways to have laid part of a height (2 for every further unlike course of
 * it) for a plan, a few times that for a shortage.
 * @example
 * // two courses of 10; pile 1 holds 12, pile 2 holds 8; chances 0.1, 0.2, between them 0.5
 * planCourses(request).kickers; // 0.1 × 9 + 0.1 × 1 + 0.5 + 0.2 × 7 = 2.9
 */
export function planCourses(request: PlanRequest): PlanResult {
  const plan = planIfAny(request);
  if (plan) return plan;
  const ordered = { ...request, courses: layingOrder(request.courses) };
  const roof = roofHeights(ordered, false);
  const short = shortage(
    ordered,
    roof.total,
    (piles) => stretchesThatFit({ ...ordered, piles }, roof) !== undefined
  );
  return roof.triesEveryOrder ? short : { ...short, notEveryOrder: true };
}

/**
 * The plan for a request, or nothing if it is short.
 *
 * @throws EngineError as {@link planCourses}
 */
export function planIfAny(request: PlanRequest): Plan | undefined {
  requireRequest(request);
  const ordered = { ...request, courses: layingOrder(request.courses) };
  const together = roofHeights(ordered);
  requireExact(together, request.piles.length);
  if (!hasEnoughCommon(ordered)) return undefined;
  const kept = stretchesThatFit(ordered, together);
  // A stock too tight to change together at every hip still lays the roof, which then says so.
  const isLoosened = !kept && together.heights.some(({ isWhole }) => isWhole);
  const roof = isLoosened ? roofHeights(ordered, false) : together;
  const stretches = isLoosened ? stretchesThatFit(ordered, roof) : kept;
  if (!stretches) return undefined;
  return {
    ...planFromStretches(ordered, roof.courses, stretches),
    ...(isLoosened && { changesApart: true as const }),
    ...(!roof.triesEveryOrder && { notEveryOrder: true as const })
  };
}

/** The best stretches for the roof, whatever the common stock; undefined if none fit. */
function stretchesThatFit(request: PlanRequest, roof: RoofHeights): CourseStretch[][] | undefined {
  if (!keepsEveryReserve(request)) return undefined;
  return bestParts(roof, limitsOf(request), chancesInBillionths(request.kicks));
}
