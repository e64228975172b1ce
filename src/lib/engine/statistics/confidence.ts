import { EngineError } from '../errors.ts';

/**
 * Throws unless a confidence level lies strictly between 0 and 1.
 *
 * @throws EngineError `out-of-range`
 */
export function requireConfidence(confidence: number): void {
  if (!(confidence > 0 && confidence < 1))
    throw new EngineError('out-of-range', `confidence is ${confidence}; give more than 0, below 1`);
}
