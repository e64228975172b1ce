import { isBorderline } from '$lib/engine/thickness';
import { pileOf } from '$lib/engine/grading';

/**
 * Repeatability SD of a gauge that was never studied, mm. Ours: a starting value, no source; the gauge
 * study on the Grades screen replaces it.
 */
export const UNSTUDIED_GAUGE_SD_MM = 0.05;

/**
 * SD of a hand that no spot checks tell, mm. Ours, no source; said to be assumed wherever it is used.
 */
export const ASSUMED_HAND_SD_MM = 0.5;

/** A range of thickness, both ends included. */
export interface ThicknessRange {
  readonly lowMm: number;
  readonly highMm: number;
}

/** What a slate is judged by. */
export interface JudgingGround {
  /** Thresholds of the grades in force, falling; undefined before any. */
  readonly thresholdsMm: readonly number[] | undefined;
  /** Repeatability SD of the gauge, mm; null where it was never studied. */
  readonly gaugeSdMm: number | null;
  readonly kickAllowanceMm: number;
  /** What was ordered, nominal thickness ± tolerance; undefined where nobody said. */
  readonly orderBand: ThicknessRange | undefined;
  /** What nearly all slates of the job measure; undefined before enough readings. */
  readonly usualRange: ThicknessRange | undefined;
}

/** Why a slate fits no neighbour. */
export type Rogue = { readonly isTooThick: boolean } & (
  | { readonly kind: 'outside-order'; readonly band: ThicknessRange }
  | { readonly kind: 'beyond-spread'; readonly overMm: number }
);

/** Where a slate goes and what to mind. */
export interface SlateJudgement {
  /** The pile's number, 1 for the thickest; null before there are grades. */
  readonly pile: number | null;
  /** The threshold within two SDs of the reading, or null. */
  readonly borderlineMm: number | null;
  readonly rogue: Rogue | null;
}

/**
 * Tells a gauged slate its pile and what to mind about it.
 *
 * A slate is a rogue when it is outside the band that was ordered, or when it lies further than the
 * kick allowance beyond what nearly all slates of the job measure: it would then kick against almost
 * any neighbour, whatever its pile.
 *
 * @param thicknessMm an accepted thickness, mm
 * @example thickness 6.02 with thresholds [6, 5] and SD 0.05 → pile 1, borderline at 6
 */
export function judgeSlate(thicknessMm: number, ground: JudgingGround): SlateJudgement {
  const { thresholdsMm } = ground;
  const sdMm = ground.gaugeSdMm ?? UNSTUDIED_GAUGE_SD_MM;
  const near = thresholdsMm?.filter((threshold) => isBorderline(thicknessMm, [threshold], sdMm));
  return {
    pile: thresholdsMm ? pileOf(thicknessMm, thresholdsMm) : null,
    borderlineMm: nearest(near ?? [], thicknessMm),
    rogue: rogueOf(thicknessMm, ground)
  };
}

/** Nominal thickness ± tolerance, or undefined where the order names either not. */
export function orderBand(
  order: { nominalThicknessMm?: number; tolerancePercent?: number } | undefined
): ThicknessRange | undefined {
  const { nominalThicknessMm, tolerancePercent } = order ?? {};
  if (!nominalThicknessMm || tolerancePercent === undefined) return undefined;
  const spanMm = (nominalThicknessMm * tolerancePercent) / 100;
  return { lowMm: nominalThicknessMm - spanMm, highMm: nominalThicknessMm + spanMm };
}

function rogueOf(thicknessMm: number, ground: JudgingGround): Rogue | null {
  const { orderBand: band, usualRange, kickAllowanceMm } = ground;
  if (band && mmBeyond(thicknessMm, band) > 1e-9)
    return { kind: 'outside-order', band, isTooThick: thicknessMm > band.highMm };
  if (!usualRange) return null;
  const over = mmBeyond(thicknessMm, usualRange);
  if (over <= kickAllowanceMm + 1e-9) return null;
  return { kind: 'beyond-spread', overMm: over, isTooThick: thicknessMm > usualRange.highMm };
}

/**
 * Whether a reading lies so far out that it may be misread: it then counts nowhere before the sorter says
 * what it is. Less would be wrong the other way: a thick pallet sorted after a thin one, or a delivery
 * outside its order, would wait slate by slate and look better than it is.
 *
 * @param likely what a slate of the job may well measure (see `likelyRangeOf`)
 */
export function isWildReading(thicknessMm: number, likely: ThicknessRange | undefined): boolean {
  return likely !== undefined && mmBeyond(thicknessMm, likely) > 0;
}

/** How far outside a range a thickness lies, mm; 0 inside. */
export function mmBeyond(thicknessMm: number, { lowMm, highMm }: ThicknessRange): number {
  return Math.max(0, lowMm - thicknessMm, thicknessMm - highMm);
}

function nearest(thresholdsMm: readonly number[], thicknessMm: number): number | null {
  const away = (threshold: number) => Math.abs(threshold - thicknessMm);
  return thresholdsMm.reduce<number | null>(
    (best, threshold) => (best === null || away(threshold) < away(best) ? threshold : best),
    null
  );
}
