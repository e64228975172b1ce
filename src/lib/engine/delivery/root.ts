/**
 * Where a rising function crosses 0, by halving the bracket until it cannot be halved.
 *
 * @param rising finite and not falling on the bracket
 * @param low a place where it is at most 0
 * @param high a place where it is at least 0
 * @returns the crossing, to the last bit or two; where the function is 0 over a stretch, its left end
 */
export function crossingOfRising(rising: (x: number) => number, low: number, high: number): number {
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return high;
    if (rising(middle) < 0) low = middle;
    else high = middle;
  }
}

/**
 * The least whole number from `start` on for which `isEnough` holds, given that once it holds it
 * goes on holding. Doubles its step, then halves the bracket: about 2·log₂ of the answer calls.
 */
export function leastWhole(start: number, isEnough: (n: number) => boolean): number {
  let tooFew = start - 1;
  let step = 1;
  while (!isEnough(tooFew + step)) {
    tooFew += step;
    step *= 2;
  }
  let enough = tooFew + step;
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}
