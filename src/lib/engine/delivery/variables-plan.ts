import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { EngineError, requireFinite, requireWhole } from '../errors.ts';
import type { Basis } from './basis.ts';
import { requireProbability } from './requirements.ts';

/** Acceptable quality levels that the variables table here covers, per cent of slates outside. */
export const VARIABLES_AQLS = [1, 1.5, 2.5, 4, 6.5, 10] as const;
export type VariablesAql = (typeof VARIABLES_AQLS)[number];

export type VariablesLetter = 'B' | 'C' | 'D' | 'E' | 'F' | 'G' | 'H' | 'I' | 'J' | 'K' | 'L';

/** A plan by variables: draw, take mean and SD, estimate the share outside, compare. */
export interface VariablesPlan {
  /** Slates to draw and gauge. */
  readonly sampleSize: number;
  /** Accept when the estimated share outside is at most this, 0 to 1 (the table's M / 100). */
  readonly allowedShare: number;
  /** The same rule for one limit: accept when (limit − mean) / SD is at least this (k). */
  readonly acceptability: number;
  readonly letter: VariablesLetter;
  /** The sample would reach the lot, so every slate is gauged. */
  readonly everySlate: boolean;
  readonly basis: Basis;
}

export type VariablesPlanResult =
  | { readonly ok: true; readonly plan: VariablesPlan }
  | {
      readonly ok: false;
      /** `lot-too-small`: fewer than 3. `lot-beyond-table`: letters M to P are not transcribed. */
      readonly reason: 'lot-too-small' | 'lot-beyond-table';
    };

const BASIS: Basis = {
  standing: 'published',
  source:
    'MIL-STD-414 / ANSI Z1.9, standard deviation method, normal inspection, variability unknown'
};

/** Greatest lot of each row of level II, and its letter. */
const LOT_ROWS: readonly (readonly [number, VariablesLetter])[] = [
  [15, 'B'],
  [25, 'C'],
  [50, 'D'],
  [90, 'E'],
  [150, 'F'],
  [280, 'G'],
  [400, 'H'],
  [500, 'I'],
  [1200, 'J'],
  [3200, 'K'],
  [10_000, 'L']
];

/** Sample size, then M in per cent for each AQL of `VARIABLES_AQLS`; 0 is an arrow down to C. */
const MASTER_TABLE: Record<VariablesLetter, readonly [number, readonly number[]]> = {
  B: [3, [0, 0, 7.59, 18.86, 26.94, 33.69]],
  C: [4, [1.49, 5.46, 10.88, 16.41, 22.84, 29.43]],
  D: [5, [3.33, 5.82, 9.8, 14.37, 20.19, 26.55]],
  E: [7, [3.54, 5.34, 8.4, 12.19, 17.34, 23.3]],
  F: [10, [3.27, 4.72, 7.26, 10.53, 15.17, 20.73]],
  G: [15, [3.06, 4.32, 6.55, 9.48, 13.74, 18.97]],
  H: [20, [2.93, 4.1, 6.18, 8.95, 13.01, 18.07]],
  I: [25, [2.86, 3.97, 5.98, 8.65, 12.6, 17.55]],
  J: [35, [2.66, 3.7, 5.58, 8.11, 11.89, 16.67]],
  K: [50, [2.47, 3.44, 5.21, 7.61, 11.23, 15.87]],
  L: [75, [2.27, 3.17, 4.83, 7.1, 10.58, 15.07]]
};

/**
 * The plan by variables for a delivery: level II, normal inspection, variability unknown.
 *
 * @param lotSize slates in the lot, whole, 0 or more
 * @param aql acceptable quality level, per cent of slates outside
 * @returns the plan; where the table shows an arrow (letter B, AQL 1.0 and 1.5) the plan of
 *   letter C. Where the sample would reach the lot every slate is gauged.
 * @throws EngineError `not-whole`, `out-of-range` for a lot that is not a count
 *
 * Source: MIL-STD-414 / ANSI Z1.9, letters of level II and table of M. Not ISO 3951-1, which has
 * other sample sizes. For letter D and AQL 1.0 another printing is remembered as 3.32, here 3.33.
 * @example variablesPlan(5000, 1.5) // 75 slates, allowed share 0.0317, acceptability 1.841
 */
export function variablesPlan(lotSize: number, aql: VariablesAql): VariablesPlanResult {
  requireWhole(lotSize, 0, 'lot size');
  if (lotSize < 3) return { ok: false, reason: 'lot-too-small' };
  const row = LOT_ROWS.find(([end]) => lotSize <= end);
  if (!row) return { ok: false, reason: 'lot-beyond-table' };
  const aqlIndex = VARIABLES_AQLS.indexOf(aql);
  const letter = MASTER_TABLE[row[1]][1][aqlIndex] > 0 ? row[1] : 'C';
  const [sampleSize, allowedPercents] = MASTER_TABLE[letter];
  const allowedShare = allowedPercents[aqlIndex] / 100;
  return {
    ok: true,
    plan: {
      sampleSize: Math.min(sampleSize, lotSize),
      allowedShare,
      acceptability: acceptabilityFrom(allowedShare, sampleSize),
      letter,
      everySlate: sampleSize >= lotSize,
      basis: BASIS
    }
  };
}

/**
 * The acceptability constant k that says for one limit what the allowed share M says for two.
 *
 * @param allowedShare M / 100, above 0 and below 1
 * @param sampleSize at least 3
 * @returns k; negative when more than half may be outside
 *
 * Definition: z = I⁻¹(M; n/2 − 1, n/2 − 1), k = (1 − 2z)(n − 1)/√n.
 * @throws EngineError `not-finite`, `not-whole`, `out-of-range` outside the bounds above
 * @example acceptabilityFrom(0.0317, 75) // 1.84097
 */
export function acceptabilityFrom(allowedShare: number, sampleSize: number): number {
  requireProbability(allowedShare, 'allowed share');
  requireWhole(sampleSize, 3, 'sample size');
  const shape = sampleSize / 2 - 1;
  const z = betaQuantile(allowedShare, shape, shape);
  if (!Number.isFinite(z))
    throw new EngineError('not-finite', `no constant for M ${allowedShare}, n ${sampleSize}`);
  return ((1 - 2 * z) * (sampleSize - 1)) / Math.sqrt(sampleSize);
}

/**
 * A quality index rounded as the standard's worked examples round it.
 *
 * @throws EngineError `not-finite`, `not-whole`, `out-of-range`
 */
export function roundedIndex(index: number, decimals: number): number {
  requireFinite(index, 'quality index');
  requireWhole(decimals, 0, 'decimals');
  return Number(index.toFixed(decimals));
}
