import {
  type CourseStretch,
  type Start,
  farthestStarts,
  mayFinish,
  stretchesOf
} from './follow-costs.ts';
import { type HeightCosts, heightCosts, reachOfHeight } from './height-costs.ts';
import type { RoofHeights } from './heights.ts';
import { type PileLimit, barsAt, createSearch, priceOf } from './search.ts';
import type { KickChances } from './plan-types.ts';

/**
 * Lays the roof from one stretch per pile (or none), thickest pile lowest, with the least expected
 * kickers: the exact optimum of the planner's model. Courses of one height may follow each other in
 * any order.
 *
 * Let J be the joints below a place, C those beside a common slate-and-a-half, q the chances. A
 * stretch of pile k from x to y costs q_k (J(y) − J(x)) + c_k (C(y) − C(x)), less the joint at y
 * itself; where the next pile m follows inside a run that joint costs q_km. So a stretch costs a term
 * in y less a term in x. Heights are worked through from the ridge down and piles from the thinnest.
 * Above its own height a stretch from x reaches every place up to the height where its stock runs
 * out, and there those that are not too many slates above that height's start; within its own height
 * it reaches what can be laid after x.
 *
 * Compared in turn: expected kickers; changeover courses; slots of pile 1, then of pile 2, and so
 * on, more being better. The first two are one whole number, kickers × piles + changeovers (there
 * are fewer changeovers than piles), exact below 2^53.
 *
 * @param kicks chances in whole billionths
 * @returns for each course its stretches from the left; undefined if no plan fits
 * @throws Error if a plan has a price and no stretches, which no request can bring about
 *
 * Cost: time piles² × states (see {@link RoofHeights}), memory piles × slates.
 */
export function bestParts(
  roof: RoofHeights,
  limits: readonly PileLimit[],
  kicks: KickChances
): CourseStretch[][] | undefined {
  const none: CourseStretch[][] = roof.courses.map(() => []);
  if (roof.heights.length === 0) return none;
  if (limits.length === 0) return undefined;
  const search = createSearch(roof, limits, kicks);
  const bars = barsAt(search);
  const top = roof.heights.length;
  const { joints, commonJoints } = roof.total;
  const reach = limits.map((_limit, pile) => {
    const tables: Float64Array[] = [];
    tables[top] = Float64Array.of(priceOf(search, pile, joints, commonJoints));
    return tables;
  });
  const known = new Map<number, HeightCosts>();
  const costsOf = (at: number): HeightCosts => {
    const costs = known.get(at) ?? heightCosts(search, at, reach, bars);
    known.set(at, costs);
    return costs;
  };
  for (let at = top - 1; at >= 0; at--) {
    const { ends } = costsOf(at);
    for (const pile of limits.keys())
      reach[pile][at] = reachOfHeight(search, roof.heights[at], pile, ends[pile]);
    if (at > 0) known.delete(at);
  }

  const { starts } = costsOf(0);
  const least = Math.min(...starts.map((costs) => costs[0]));
  if (least === Infinity) return undefined;
  let open: Start[] = starts.flatMap((costs, pile) =>
    costs[0] === least ? [{ height: 0, state: 0, pile }] : []
  );
  for (const pile of limits.keys()) {
    const own = open.filter((start) => start.pile === pile);
    if (own.length === 0) continue;
    const last = own.find((start) => mayFinish(search, start, costsOf, bars));
    if (last) return stretchesOf(roof, last);
    open = farthestStarts(search, own, reach, costsOf, bars);
  }
  throw new Error('a plan with a price must have its stretches');
}
