import { EngineError, requireFinite } from '../errors.ts';

/**
 * Throws unless `value` is from 0 to 1, both included.
 *
 * @throws EngineError `not-finite`, `out-of-range`
 */
export function requireShare(value: number, name: string): void {
  requireFinite(value, name);
  if (value < 0 || value > 1)
    throw new EngineError('out-of-range', `${name} is ${value}; give 0 to 1`);
}

/**
 * Throws unless `value` is strictly between 0 and 1, as a confidence or a risk must be.
 *
 * @throws EngineError `not-finite`, `out-of-range`
 */
export function requireProbability(value: number, name: string): void {
  requireFinite(value, name);
  if (value <= 0 || value >= 1)
    throw new EngineError('out-of-range', `${name} is ${value}; give more than 0 and less than 1`);
}

/**
 * Throws unless `value` is above 0.
 *
 * @throws EngineError `not-finite`, `out-of-range`
 */
export function requirePositive(value: number, name: string): void {
  requireFinite(value, name);
  if (value <= 0) throw new EngineError('out-of-range', `${name} is ${value}; give more than 0`);
}
