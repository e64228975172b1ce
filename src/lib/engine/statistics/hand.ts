import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import { logNormalInterval } from './links.ts';
import { orderedRegression } from './ordered-regression.ts';

/** A slate that was tapped onto a pile and then gauged. */
export interface SpotCheck {
  /** The pile the sorter put it on, 1 for the thickest. */
  readonly pile: number;
  /** What the gauge then said, mm. */
  readonly thicknessMm: number;
}

/** A sorter's hand: where it cuts, and how widely it strays. */
export interface Hand {
  readonly ok: true;
  /** Thickness at which the hand is in two minds between a pile and the next, mm, falling. */
  readonly thresholdsMm: readonly number[];
  readonly thresholdStandardErrorsMm: readonly number[];
  /** SD of the hand's error for one slate, mm. */
  readonly sdMm: number;
  readonly sdStandardErrorMm: number;
  readonly logLikelihood: number;
  /** Spot checks it was learnt from. */
  readonly checks: number;
}

/** Why the spot checks do not determine a hand, and what would. */
export type UnknownHand =
  | {
      readonly ok: false;
      readonly reason: 'too-few-checks';
      /** Spot checks still to make of slates on each pile, thickest pile first. */
      readonly missing: readonly number[];
    }
  | {
      readonly ok: false;
      /** No slate was misplaced, so the hand's spread may be anything near 0. */
      readonly reason: 'separated';
      /** Between which thicknesses each threshold of the hand lies, mm; ends in rising order. */
      readonly thresholdsBetweenMm: readonly { readonly fromMm: number; readonly toMm: number }[];
    }
  | {
      readonly ok: false;
      /** Thicker slates do not reach the thicker piles more often than chance would have it. */
      readonly reason: 'not-by-thickness';
    };

/** Fewest spot checks of each pile from which a hand is learnt. */
export const FEWEST_CHECKS_A_PILE = 3;

/**
 * Learns a sorter's hand from spot checks: the thresholds the hand really uses and its spread.
 *
 * @param checks slates tapped and then gauged, in any order; not modified. They must be picked
 * without regard to the pile they went on, or a pile that is picked oftener bends the thresholds.
 * @param piles number of piles, at least 2
 * @returns the hand with standard errors, or why it cannot be learnt
 *
 * Definition: maximum likelihood of the ordered probit model P(pile ≤ k | x) = Φ((x − cₖ)/σ), which
 * says that the hand feels x with a normal error of SD σ and cuts at cₖ. Standard errors by the
 * delta method from the observed information. `not-by-thickness` where 1/σ is less than two standard
 * errors above 0. Accuracy: about 1e-9 of a standard error. Cost: checks are first counted by bin
 * and pile, so it grows with the different thicknesses, not with the checks.
 *
 * @throws EngineError `not-whole` or `out-of-range` for a pile, `not-finite`
 * @example
 * learnHand([{ pile: 2, thicknessMm: 5.2 }, { pile: 1, thicknessMm: 6.4 }], 2);
 * // { ok: false, reason: 'too-few-checks', missing: [2, 2] }
 */
export function learnHand(checks: readonly SpotCheck[], piles: number): Hand | UnknownHand {
  requireWhole(piles, 2, 'piles');
  for (const { pile, thicknessMm } of checks) {
    requireWhole(pile, 1, 'pile');
    if (pile > piles) throw new EngineError('out-of-range', `pile ${pile} of ${piles}`);
    requireFinite(thicknessMm, 'thickness');
  }
  const missing = new Array<number>(piles).fill(FEWEST_CHECKS_A_PILE);
  for (const { pile } of checks) missing[pile - 1] = Math.max(0, missing[pile - 1] - 1);
  if (missing.some((count) => count > 0)) return { ok: false, reason: 'too-few-checks', missing };
  const gaps = gapsBetweenPiles(checks, piles);
  if (gaps) return { ok: false, reason: 'separated', thresholdsBetweenMm: gaps };

  // Pile ≤ k has the chance Φ(cut − b·(x − centre)), so that 1/σ = −b and c = centre + cut / b.
  const centreMm = checks.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0) / checks.length;
  const counts = new Map<string, { covariates: [number]; category: number; count: number }>();
  for (const { pile, thicknessMm } of checks) {
    const key = `${pile} ${thicknessMm}`;
    const row = counts.get(key);
    if (row) row.count++;
    else counts.set(key, { covariates: [thicknessMm - centreMm], category: pile, count: 1 });
  }
  const fit = orderedRegression([...counts.values()], piles, 'probit');
  if (!fit.ok) return { ok: false, reason: 'not-by-thickness' };
  const last = piles - 1;
  const slope = fit.coefficients[0];
  const slopeVariance = fit.covariance[last][last];
  if (slope > -2 * Math.sqrt(slopeVariance)) return { ok: false, reason: 'not-by-thickness' };
  return {
    ok: true,
    thresholdsMm: fit.cuts.map((cut) => centreMm + cut / slope),
    thresholdStandardErrorsMm: fit.cuts.map((cut, k) => {
      const offset = cut / slope;
      const variance =
        fit.covariance[k][k] - 2 * offset * fit.covariance[k][last] + offset ** 2 * slopeVariance;
      return Math.sqrt(Math.max(0, variance)) / -slope;
    }),
    sdMm: -1 / slope,
    sdStandardErrorMm: Math.sqrt(slopeVariance) / slope ** 2,
    logLikelihood: fit.logLikelihood,
    checks: checks.length
  };
}

/**
 * The chance that a hand puts a slate of a given thickness on each pile, as logs, thickest pile
 * first. Logs keep their digits where a chance is too small for a double.
 */
export function logPileChances(
  hand: Pick<Hand, 'thresholdsMm' | 'sdMm'>,
  thicknessMm: number
): number[] {
  const { thresholdsMm, sdMm } = hand;
  return [...thresholdsMm, -Infinity].map((lowerMm, index) => {
    const upperMm = index === 0 ? Infinity : thresholdsMm[index - 1];
    return logNormalInterval((lowerMm - thicknessMm) / sdMm, (upperMm - thicknessMm) / sdMm);
  });
}

/**
 * Where no slate on a pile is thicker than any slate on a thicker pile, the gaps in which the
 * thresholds must lie; null as soon as two piles overlap, for then the spread is determined.
 */
function gapsBetweenPiles(
  checks: readonly SpotCheck[],
  piles: number
): { fromMm: number; toMm: number }[] | null {
  const gaps: { fromMm: number; toMm: number }[] = [];
  for (let pile = 1; pile < piles; pile++) {
    let fromMm = -Infinity;
    let toMm = Infinity;
    for (const check of checks)
      if (check.pile <= pile) toMm = Math.min(toMm, check.thicknessMm);
      else fromMm = Math.max(fromMm, check.thicknessMm);
    if (fromMm > toMm) return null;
    gaps.push({ fromMm, toMm });
  }
  return gaps;
}
