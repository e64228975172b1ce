import { EngineError, requireWhole } from '../errors.ts';
import type { Interval } from './basis.ts';
import { atLeast, atMost, hypergeometric } from './count-distribution.ts';
import { requireProbability } from './requirements.ts';
import { leastWhole } from './root.ts';

/** What a sample of a delivery found. */
export interface LotSample {
  /** Slates with the mark in the sample, 0 to `sampled`. */
  readonly found: number;
  /** Slates looked at, at least 1. */
  readonly sampled: number;
  /** Slates in the delivery. */
  readonly lotSize: number;
}

/** Why a sample cannot be judged against a lot. */
export type LotSampleRefusal = {
  readonly ok: false;
  readonly reason: 'sample-exceeds-lot' | 'nothing-sampled' | 'lot-empty';
};

function refusalOf({ found, sampled, lotSize }: LotSample): LotSampleRefusal | undefined {
  requireWhole(found, 0, 'slates found');
  requireWhole(sampled, 0, 'slates sampled');
  requireWhole(lotSize, 0, 'lot size');
  if (found > sampled)
    throw new EngineError('out-of-range', `${found} found among ${sampled} sampled`);
  if (lotSize === 0) return { ok: false, reason: 'lot-empty' };
  if (sampled === 0) return { ok: false, reason: 'nothing-sampled' };
  if (sampled > lotSize) return { ok: false, reason: 'sample-exceeds-lot' };
  return undefined;
}

/** A tail this near the risk counts as equal to it, so that rounding decides nothing. */
const EQUAL = 1e-12;

/**
 * Exact interval for how many slates of a finite delivery have the mark.
 *
 * @param level confidence, above 0 and below 1
 * @returns whole counts, both included, which hold the true count with at least `level`; the
 *   slates seen are certain, so the range never leaves `found` … lot − (sampled − found).
 *   Refused: sample larger than the lot, nothing sampled, empty lot.
 * @throws EngineError `not-whole`, `out-of-range`
 *
 * Definition: a count stays while each hypergeometric tail at what was found is above half the
 * risk; a tail equal to it stays too, to the safe side. Cost: 2·log₂(lot) distributions.
 * @example countInLot({ found: 2, sampled: 100, lotSize: 300 }, 0.95) // 2 to 18
 */
export function countInLot(
  sample: LotSample,
  level: number
): { readonly ok: true; readonly count: Interval } | LotSampleRefusal {
  requireProbability(level, 'level');
  const refusal = refusalOf(sample);
  if (refusal) return refusal;
  const { found, sampled, lotSize } = sample;
  const risk = ((1 - level) / 2) * (1 - EQUAL);
  const most = lotSize - (sampled - found);
  const low = leastWhole(
    found,
    (bad) => bad >= most || atLeast(hypergeometric(lotSize, bad, sampled), found) >= risk
  );
  const beyond = leastWhole(
    found,
    (bad) => bad > most || atMost(hypergeometric(lotSize, bad, sampled), found) < risk
  );
  return { ok: true, count: { low, high: beyond - 1, level } };
}

/**
 * Standard error of a share, with the correction for a finite lot: √((N − n)/N · pq/(n − 1)).
 *
 * @returns 0 to 1; 0 when the whole lot was looked at. `too-few` below two slates.
 * @throws EngineError `not-whole`, `out-of-range`
 * @example shareStandardError({ found: 45, sampled: 100, lotSize: 300 }) // 0.04082483
 */
export function shareStandardError(
  sample: LotSample
):
  | { readonly ok: true; readonly standardError: number }
  | LotSampleRefusal
  | { readonly ok: false; readonly reason: 'too-few' } {
  const refusal = refusalOf(sample);
  if (refusal) return refusal;
  const { found, sampled, lotSize } = sample;
  if (sampled < 2) return { ok: false, reason: 'too-few' };
  const share = found / sampled;
  const notDrawn = (lotSize - sampled) / lotSize;
  return {
    ok: true,
    standardError: Math.sqrt((notDrawn * share * (1 - share)) / (sampled - 1))
  };
}
