import { EngineError } from '../errors.ts';
import { requireThresholds } from './piles.ts';

/** One boundary as the hand feels it: "calls medium from 5.4; the grade starts at 5.8". */
export interface HandBias {
  /** The pile on the thicker side of the boundary, 1 for the thickest. */
  readonly pile: number;
  /** From what thickness the sorter calls that pile, mm. */
  readonly handMm: number;
  /** From what thickness the grade starts, mm. */
  readonly gradeMm: number;
  /** Hand less grade, mm: below 0 where slates go too readily on the thicker pile. */
  readonly biasMm: number;
}

/**
 * How far a sorter's felt boundaries lie from those of the grades.
 *
 * @param handThresholdsMm the sorter's estimated thresholds, mm, strictly falling; not modified
 * @param thresholdsMm the thresholds of the grades, mm, strictly falling, as many; not modified
 * @returns one bias per boundary, the thickest first, rounded to no figure
 * @throws EngineError `wrong-length`, `wrong-order`, `not-finite`
 * @example handBias([5.4], [5.8])[0].biasMm // −0.4 to rounding
 */
export function handBias(
  handThresholdsMm: readonly number[],
  thresholdsMm: readonly number[]
): HandBias[] {
  requireThresholds(handThresholdsMm);
  requireThresholds(thresholdsMm);
  if (handThresholdsMm.length !== thresholdsMm.length)
    throw new EngineError(
      'wrong-length',
      `${handThresholdsMm.length} thresholds of the hand for ${thresholdsMm.length} of the grades`
    );
  return thresholdsMm.map((gradeMm, index) => {
    const handMm = handThresholdsMm[index];
    return { pile: index + 1, handMm, gradeMm, biasMm: handMm - gradeMm };
  });
}
