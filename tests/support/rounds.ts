/**
 * Sizes of what is tried many times. `npm test` runs the short size, `npm run test:long` (LONG=1)
 * the full one; both run the same code.
 */
export const isLong = process.env.LONG === '1';

/** How many rounds to run. */
export function rounds(short: number, full: number): number {
  return isLong ? full : short;
}

/**
 * What a share counted in `tried` rounds must reach at least, where `bound` holds for `full` rounds:
 * lower by what two standard errors (√(p(1 − p)/n), p the bound) are wider with fewer rounds. In the
 * full size it is the bound itself.
 */
export function leastShare(bound: number, tried: number, full: number): number {
  return bound - 2 * (errorOf(bound, tried) - errorOf(bound, full));
}

/** The same for what a share must stay under. */
export function mostShare(bound: number, tried: number, full: number): number {
  return bound + 2 * (errorOf(bound, tried) - errorOf(bound, full));
}

function errorOf(share: number, tried: number): number {
  return Math.sqrt((share * (1 - share)) / tried);
}

/** Prints the figures of a run, so that a log shows that it was not vacuous. */
export function report(what: string, figures: Readonly<Record<string, number | string>>): void {
  const list = Object.entries(figures).map(([name, figure]) => `${name} ${figure}`);
  console.log(`long run: ${what}: ${list.join(', ')}`);
}
