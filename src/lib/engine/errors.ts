/** Everything that can be wrong with what a caller hands to the engine. */
export type EngineErrorCode =
  | 'not-finite'
  | 'out-of-range'
  | 'empty'
  | 'wrong-length'
  | 'wrong-order'
  | 'not-whole'
  | 'inconsistent';

/**
 * Misuse of an engine function: the caller broke what the function's comment asks for.
 *
 * Expected absence (too few readings, a plan that falls short) is not misuse and comes back as a
 * tagged result instead.
 *
 * @example
 * throw new EngineError('out-of-range', 'headlap 300 mm exceeds a third of the slate, 167 mm');
 */
export class EngineError extends Error {
  constructor(
    readonly code: EngineErrorCode,
    readonly detail: string
  ) {
    super(`${code}: ${detail}`);
    this.name = 'EngineError';
  }
}

/**
 * Throws unless `value` is a finite number; `name` says which argument it was.
 *
 * @throws EngineError `not-finite`
 */
export function requireFinite(value: number, name: string): void {
  if (!Number.isFinite(value))
    throw new EngineError('not-finite', `${name} is ${value}; give a finite number`);
}

/**
 * Throws unless `value` is a whole number of at least `least`; `name` says which argument it was.
 *
 * @throws EngineError `not-whole`, `out-of-range`
 */
export function requireWhole(value: number, least: number, name: string): void {
  if (!Number.isInteger(value))
    throw new EngineError('not-whole', `${name} is ${value}; give a whole number`);
  if (value < least)
    throw new EngineError('out-of-range', `${name} is ${value}; give at least ${least}`);
}
