/**
 * Every fault has a short form for `npm test` and a full one for `npm run faults`; both run the
 * same code.
 */
export const isFull = process.env.FAULTS === 'full';

/** How many rounds to run. */
export function rounds(short: number, full: number): number {
  return isFull ? full : short;
}

/** Prints the figures of a run, so that a log shows that it was not vacuous. */
export function report(what: string, figures: Readonly<Record<string, number | string>>): void {
  const list = Object.entries(figures).map(([name, figure]) => `${name} ${figure}`);
  console.log(`faults: ${what}: ${list.join(', ')}`);
}
