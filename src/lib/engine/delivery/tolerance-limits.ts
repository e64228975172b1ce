import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { requireWhole } from '../errors.ts';
import { noncentralTQuantile } from './noncentral-t.ts';
import { requireProbability } from './requirements.ts';

/** Sample behind a tolerance limit, and what the limit promises. */
export interface ToleranceClaim {
  /** Readings, at least 2. */
  readonly sampleSize: number;
  /** Share of all slates that the limit is to hold, above 0 and below 1. */
  readonly coverage: number;
  /** How sure that promise is, above 0 and below 1. */
  readonly confidence: number;
}

function requireClaim({ sampleSize, coverage, confidence }: ToleranceClaim): void {
  requireWhole(sampleSize, 2, 'sample size');
  requireProbability(coverage, 'coverage');
  requireProbability(confidence, 'confidence');
}

/**
 * How many SDs either side of the mean hold a share of a normal lot: Howe's two-sided factor.
 *
 * @returns the factor k: limits are mean ± k·SD
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * Definition: z((1 + P)/2)·√(ν(1 + 1/n)/χ²(1 − γ; ν)), ν = n − 1. An approximation: within 0.4 %
 * of the exact factor from 10 readings on. Source: Howe (1969), as in the NIST/SEMATECH handbook.
 * @example
 * twoSidedToleranceFactor({ sampleSize: 43, coverage: 0.9, confidence: 0.99 }) // 2.2173159
 */
export function twoSidedToleranceFactor(claim: ToleranceClaim): number {
  requireClaim(claim);
  const freedom = claim.sampleSize - 1;
  const z = normalQuantile((1 + claim.coverage) / 2, 0, 1);
  const chiSquare = chiSquareQuantile(1 - claim.confidence, freedom);
  return z * Math.sqrt((freedom * (1 + 1 / claim.sampleSize)) / chiSquare);
}

/**
 * How many SDs to one side of the mean hold a share of a normal lot: the exact one-sided factor.
 *
 * @returns the factor k: the limit is mean + k·SD, or mean − k·SD
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * Definition: noncentral t quantile at the confidence, n − 1 degrees of freedom, noncentrality
 * z(P)·√n, divided by √n. Accuracy about 1e-9.
 * @example
 * oneSidedToleranceFactor({ sampleSize: 43, coverage: 0.9, confidence: 0.99 }) // 1.873954
 */
export function oneSidedToleranceFactor(claim: ToleranceClaim): number {
  requireClaim(claim);
  const root = Math.sqrt(claim.sampleSize);
  const noncentrality = normalQuantile(claim.coverage, 0, 1) * root;
  return noncentralTQuantile(claim.confidence, claim.sampleSize - 1, noncentrality) / root;
}
