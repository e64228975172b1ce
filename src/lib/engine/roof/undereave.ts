import { undereaveLengthMm } from './gauge.ts';
import type { PieceCounts } from './demand.ts';
import type { SlateSpec } from './slate-spec.ts';

/** The short slate under the first course, as a pattern to cut and hole by. */
export interface UndereavePattern {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly holeFromTailMm: number;
  readonly holeFromHeadMm: number;
}

/** A slope's undereave row. */
export interface UndereaveRow extends UndereavePattern {
  readonly counts: PieceCounts;
}

/**
 * Length and hole of the undereave slate at a gauge.
 *
 * @returns mm; length = slate's length − gauge. The hole is near the head: on the nail line when the
 * roof is head-nailed, else at the slate's own setting (20 mm), in the lower half of a batten of
 * 50 mm whose centre line is at its head
 * Source: length from Modern Buildings, vol. 1, ch. XXI; hole is common practice, no source.
 * @example undereavePattern(slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 }), 200).lengthMm // 300
 */
export function undereavePattern(spec: SlateSpec, gaugeMm: number): UndereavePattern {
  const lengthMm = undereaveLengthMm(spec.lengthMm, gaugeMm);
  const holeFromHeadMm =
    spec.nailing === 'head' ? spec.headNailLineMm : spec.undereaveHoleFromHeadMm;
  return {
    lengthMm,
    widthMm: spec.widthMm,
    holeFromTailMm: lengthMm - holeFromHeadMm,
    holeFromHeadMm
  };
}

/** Why a slate was set aside. */
export type FaultOfSlate =
  'broken' | 'dull-ring' | 'twisted' | 'tapered' | 'wrong-size' | 'inclusion' | 'colour' | 'other';

/** Whether a slate set aside will do as an undereave slate. */
export type UndereaveUse =
  | { readonly use: 'yes' }
  | { readonly use: 'no'; readonly because: 'unsound' | 'bends' | 'too-short' | 'too-narrow' }
  | { readonly use: 'look'; readonly because: 'measure' | 'inclusion' | 'thickness' | 'unknown' };

/**
 * Whether a set-aside slate will do for the undereave row, where only its tail edge is seen.
 *
 * @param reason why it was set aside
 * @param sound what of it is sound, mm, where it has been measured
 * @returns `yes`; `no` with the reason (a dull ring is a hidden crack; a twisted slate lifts the
 * first course); or `look` where a hand must decide. A slate that is broken or of the wrong size
 * must be measured first
 * Source: common practice, no source.
 * @example
 * usableForUndereave('broken', { lengthMm: 320, widthMm: 250 }, { lengthMm: 300, widthMm: 250 }) // yes
 */
export function usableForUndereave(
  reason: FaultOfSlate,
  sound: { readonly lengthMm: number; readonly widthMm: number } | undefined,
  pattern: Pick<UndereavePattern, 'lengthMm' | 'widthMm'>
): UndereaveUse {
  if (reason === 'dull-ring') return { use: 'no', because: 'unsound' };
  if (reason === 'twisted') return { use: 'no', because: 'bends' };
  if (sound && sound.lengthMm < pattern.lengthMm) return { use: 'no', because: 'too-short' };
  if (sound && sound.widthMm < pattern.widthMm) return { use: 'no', because: 'too-narrow' };
  switch (reason) {
    case 'broken':
    case 'wrong-size':
      return sound ? { use: 'yes' } : { use: 'look', because: 'measure' };
    case 'colour':
      return { use: 'yes' };
    case 'inclusion':
      return { use: 'look', because: 'inclusion' };
    case 'tapered':
      return { use: 'look', because: 'thickness' };
    case 'other':
      return { use: 'look', because: 'unknown' };
  }
}
