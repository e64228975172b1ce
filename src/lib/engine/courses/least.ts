/**
 * The least whole number from `low` to `high` that passes a test which, once passed, stays passed.
 * Undefined if none does. Quick when the answer is near `low`.
 */
export function least(
  low: number,
  high: number,
  passes: (value: number) => boolean
): number | undefined {
  let failing = low - 1;
  let passing = low;
  for (let step = 1; !passes(passing); step *= 2) {
    if (passing >= high) return undefined;
    failing = passing;
    passing = Math.min(high, passing + step);
  }
  while (passing - failing > 1) {
    const middle = Math.floor((passing + failing) / 2);
    if (passes(middle)) passing = middle;
    else failing = middle;
  }
  return passing;
}

/** A number of slates and of slate-and-a-halves. */
export interface Pair {
  readonly slates: number;
  readonly slateAndAHalves: number;
}

/**
 * The least slate-and-a-halves that can pass with slates in plenty, and with them the least slates.
 * For a test that, once passed, stays passed as either grows. Undefined if `high` fails.
 */
export function leastPair(
  low: Pair,
  high: Pair,
  passes: (slates: number, slateAndAHalves: number) => boolean
): Pair | undefined {
  const slateAndAHalves = least(low.slateAndAHalves, high.slateAndAHalves, (wide) =>
    passes(high.slates, wide)
  );
  if (slateAndAHalves === undefined) return undefined;
  const slates = least(low.slates, high.slates, (count) => passes(count, slateAndAHalves));
  return slates === undefined ? undefined : { slates, slateAndAHalves };
}
