import { binsFromPairs } from '../../src/lib/engine/thickness/index.ts';
import type { Hand } from '../../src/lib/engine/statistics/hand.ts';

/** For tests: a hand that is known without error, from so many checks that none matters. */
export function knownHand(thresholdsMm: number[], sdMm: number): Hand {
  return {
    ok: true,
    thresholdsMm: Object.freeze(thresholdsMm),
    thresholdStandardErrorsMm: thresholdsMm.map(() => 0),
    sdMm,
    sdStandardErrorMm: 0,
    logLikelihood: 0,
    checks: 100
  };
}

/** For tests: one slate of 5 mm and one of 7 mm. */
export const TWO_SLATES = binsFromPairs([
  [500, 1],
  [700, 1]
]);
