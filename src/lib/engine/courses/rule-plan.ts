import { type RoofHeights, roofHeights } from './heights.ts';
import { chancesInBillionths } from './kick-chances.ts';
import type { CourseStretch } from './follow-costs.ts';
import { layingOrder } from './laying-order.ts';
import { planFromStretches } from './plan-figures.ts';
import { planCourses } from './planner.ts';
import type { Plan, PlanRequest, PlanResult } from './plan-types.ts';
import { requireRequest } from './request-check.ts';
import { DIVISIONS, type RoofPlaces, roofPlaces } from './rule-places.ts';
import { type RuleStretches, ruleStretches } from './rule-search.ts';
import { hasEnoughCommon, keepsEveryReserve, limitsOf, requireExact } from './stock-limits.ts';

/**
 * The plan by the rule of the trade: thickest at the eaves, thinnest at the ridge, every pile used in
 * proportion to what stands there, and a pile gives way between courses. It is what a slater would lay;
 * {@link planCourses} gives the fewest kickers and may leave a pile out.
 *
 * Definition. A pile may give its stock less its reserve (a pile that no course may hold gives
 * nothing). Its share of the roof's full slates is in proportion to that, so the shares say below how
 * many slates each change should lie. A change is off by w courses at most where the height of courses
 * begun w below it does not begin above its proportion, and the one w above it does not end below.
 * Everything at one height changes together. Among all plans that the stock allows, compared in turn:
 * 1. changes where slopes meet; 2. changes inside a course; 3. changes inside a height, its courses
 * following each other in the laying order; 4. piles left out though their share comes to a course (the
 * mean of the heights); 5. by how many courses the change farthest from proportion is off, one or less
 * being as good; 6. expected kickers; 7. by how many slates all changes together are off; 8. more of the
 * roof from pile 1, then from pile 2, and so on. Less is better in 1 to 7.
 *
 * So where the counts allow, every change lies between two courses and within one course of proportion,
 * and of all those plans it has the fewest kickers. Where no plan fits the courses of a height in
 * their order, it is the most even plan ({@link planCourses}), which tries every order, or `short`.
 *
 * A chance of running out is held by a reserve ({@link reservesWithinRisk}).
 *
 * Accuracy: exact. All that is compared is in whole numbers, chances in billionths.
 *
 * @returns a plan that says how far off its changes are (`rule`), or what is missing
 * @throws EngineError as {@link planCourses}
 *
 * Cost: piles² × heights; piles² × slates where the stock is so tight that courses are divided.
 * @example
 * // 12 courses of 10, two piles that may give 100 and 50: the change lies near 80 slates
 * planByRule(request).piles.map(({ slates }) => slates); // [80, 40], give or take a course
 */
export function planByRule(request: PlanRequest): PlanResult {
  return ruleIfAny(request) ?? planCourses(request);
}

/**
 * The plan by the rule, or nothing where the courses of a height fit in no way in their order.
 *
 * @throws EngineError as {@link planCourses}
 */
export function ruleIfAny(request: PlanRequest): Plan | undefined {
  requireRequest(request);
  const ordered = { ...request, courses: layingOrder(request.courses) };
  const roof = roofHeights(ordered);
  requireExact(roof, request.piles.length);
  if (roof.heights.length === 0 || !keepsEveryReserve(ordered) || !hasEnoughCommon(ordered))
    return undefined;
  const limits = limitsOf(ordered);
  const kicks = chancesInBillionths(request.kicks);
  for (const division of DIVISIONS) {
    const places = roofPlaces(ordered, roof, division);
    const found = ruleStretches({ roof, places, limits, kicks });
    if (!found) continue;
    const { offCourses } = found.cost;
    const plan = planFromStretches(ordered, roof.courses, stretchesOf(roof, places, found));
    const isApart = division === 'where-slopes-meet';
    return { ...plan, rule: { offCourses }, ...(isApart && { changesApart: true as const }) };
  }
  return undefined;
}

/** Shares the piles' stretches out to the courses. */
function stretchesOf(
  roof: RoofHeights,
  { places, order }: RoofPlaces,
  { stretches }: RuleStretches
): CourseStretch[][] {
  const shared: CourseStretch[][] = roof.courses.map(() => []);
  let next = 0;
  for (const { pile, to } of stretches) {
    const end = places[to];
    for (; next < end.coursesBelow; next++) {
      const own = shared[order[next]];
      own.push({ pile, after: own.at(-1)?.last ?? 0, last: roof.courses[order[next]].count });
    }
    if (end.course >= 0) shared[end.course].push({ pile, after: 0, last: end.slot });
  }
  return shared;
}
