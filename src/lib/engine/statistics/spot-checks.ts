import { EngineError } from '../errors.ts';
import type { Hand, UnknownHand } from './hand.ts';

/** Taps between spot checks while a hand is not known, while it is rough, and once it is known well. */
const WHILE_UNKNOWN = 5;
const WHILE_ROUGH = 10;
const WHEN_KNOWN = 20;

/**
 * After how many taps the app should next ask a sorter to gauge the slate in hand.
 *
 * @param hand the sorter's hand, or why it is not known; not modified
 * @param closeEnoughMm standard error of a threshold that is good enough, mm, above 0 (0.1 unless
 * given: a fifteenth of the usual kick allowance; ours, no source)
 * @returns 5 while the hand is not known, 10 while some threshold is known less well than that, 20
 * afterwards
 *
 * @throws EngineError `out-of-range` for `closeEnoughMm`
 * @example tapsBetweenChecks({ ok: false, reason: 'not-by-thickness' }); // 5
 */
export function tapsBetweenChecks(hand: Hand | UnknownHand, closeEnoughMm = 0.1): number {
  if (!(closeEnoughMm > 0))
    throw new EngineError('out-of-range', `close enough is ${closeEnoughMm} mm; give more than 0`);
  if (!hand.ok) return WHILE_UNKNOWN;
  return Math.max(...hand.thresholdStandardErrorsMm) > closeEnoughMm ? WHILE_ROUGH : WHEN_KNOWN;
}
