import { EngineError, requireWhole } from './errors.ts';

/** A source of numbers evenly spread over [0, 1). Always an argument, never global. */
export type Random = () => number;

/**
 * A seeded generator: the same seed always gives the same run of numbers, on every device.
 *
 * Small Fast Counter generator (sfc32), 128 bits of state, period at least 2^32; passes the usual
 * batteries and is ample for simulation and sampling lists. Not for secrets.
 *
 * @param seed any whole number; taken modulo 2^32
 * @throws EngineError `not-whole`
 * @example
 * const random = createRandom(7);
 * random() === createRandom(7)(); // true
 */
export function createRandom(seed: number): Random {
  if (!Number.isInteger(seed))
    throw new EngineError('not-whole', `seed is ${seed}; give a whole number`);
  let a = 0x9e3779b9;
  let b = 0x243f6a88;
  let c = seed >>> 0;
  let counter = 1;
  const next = (): number => {
    const mixed = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + mixed) | 0;
    return (mixed >>> 0) / 4294967296;
  };
  for (let warmUp = 0; warmUp < 20; warmUp++) next();
  return next;
}

/**
 * A whole number evenly drawn from 0 to `bound` − 1. `bound` at least 1.
 *
 * @throws EngineError `not-whole`, `out-of-range`
 */
export function randomBelow(random: Random, bound: number): number {
  requireWhole(bound, 1, 'bound');
  return Math.floor(random() * bound);
}

/** A draw from the normal distribution of mean 0 and SD 1 (polar method). */
export function randomNormal(random: Random): number {
  for (;;) {
    const x = 2 * random() - 1;
    const y = 2 * random() - 1;
    const radius = x * x + y * y;
    if (radius > 0 && radius < 1) return x * Math.sqrt((-2 * Math.log(radius)) / radius);
  }
}

/** A new array with the same items in random order (Fisher–Yates); the input is not modified. */
export function shuffled<T>(items: readonly T[], random: Random): T[] {
  const result = [...items];
  for (let last = result.length - 1; last > 0; last--) {
    const other = randomBelow(random, last + 1);
    [result[last], result[other]] = [result[other], result[last]];
  }
  return result;
}
