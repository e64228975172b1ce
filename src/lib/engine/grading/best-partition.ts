import { EngineError, requireWhole } from '../errors.ts';

/** The cost of making one run of the items `first` to `last`, both included. */
export type RunCost = (first: number, last: number) => number;

/**
 * Cuts a row of items into a given number of unbroken, non-empty runs at the least sum of costs.
 *
 * @param items how many items stand in the row
 * @param runs how many runs to make, 1 to `items`
 * @param cost finite cost of a run; must satisfy the quadrangle inequality
 * `cost(a, c) + cost(b, d) ≤ cost(a, d) + cost(b, c)` for a ≤ b ≤ c ≤ d, as within-run sums of
 * squares and squared deviations of run sizes do
 * @returns the first item of each run, rising, beginning with 0. Of several optima the one whose
 * last run begins earliest, then the run before it, and so on
 *
 * Exact dynamic programme; the inequality makes the best cut rise with the end of the row, so each
 * layer is filled by divide and conquer. Accuracy: optimal to the rounding of `cost`.
 * Cost: runs × items × log items calls of `cost`.
 *
 * @throws EngineError `not-whole`, `out-of-range`
 * Source: the quadrangle inequality is F. F. Yao's (1980), from memory.
 */
export function bestPartition(items: number, runs: number, cost: RunCost): number[] {
  requireWhole(items, 1, 'items');
  requireWhole(runs, 1, 'runs');
  if (runs > items)
    throw new EngineError(
      'out-of-range',
      `${runs} runs of ${items} items; at most one run an item`
    );

  let best = Float64Array.from({ length: items }, (_cost, last) => cost(0, last));
  const cutsByLayer: Int32Array[] = [];
  for (let run = 1; run < runs; run++) {
    const before = best;
    const after = new Float64Array(items).fill(Infinity);
    const cuts = new Int32Array(items);

    const fill = (from: number, to: number, earliestCut: number, latestCut: number): void => {
      if (from > to) return;
      const last = (from + to) >> 1;
      for (let cut = Math.max(earliestCut, run); cut <= Math.min(latestCut, last); cut++) {
        const candidate = before[cut - 1] + cost(cut, last);
        if (candidate < after[last]) {
          after[last] = candidate;
          cuts[last] = cut;
        }
      }
      fill(from, last - 1, earliestCut, cuts[last]);
      fill(last + 1, to, cuts[last], latestCut);
    };
    fill(run, items - 1, run, items - 1);
    best = after;
    cutsByLayer.push(cuts);
  }

  const firsts = [0];
  let last = items - 1;
  for (let layer = cutsByLayer.length - 1; layer >= 0; layer--) {
    const cut = cutsByLayer[layer][last];
    firsts.splice(1, 0, cut);
    last = cut - 1;
  }
  return firsts;
}
