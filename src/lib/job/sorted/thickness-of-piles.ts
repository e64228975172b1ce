/**
 * How thick each pile is, for counting it by its height. It needs the statistics: import it with
 * `await import()` only.
 */
import { misgradedPiles, splitIntoPiles } from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import {
  type ThicknessBins,
  type ThicknessOfPile,
  momentsOfBins,
  squaresOf,
  totalCount
} from '$lib/engine/thickness';
import type { JobView } from '$lib/journal';
import { gradesOf } from '../queries.ts';
import { ASSUMED_HAND_SD_MM } from '../slate-judgement.ts';
import { type Stock, stockOf } from '../stock.ts';

/** Fewest readings from which a pile's own spread is told. Ours. */
const ENOUGH_READINGS = 8;

/**
 * Thickness of each pile as it stands, pile 1 first; undefined where too few slates were measured to
 * tell. How it was sorted is not known of slates that nobody logged, so its mean is taken half way
 * between a pile sorted sharply and one sorted by a hand that strays by `ASSUMED_HAND_SD_MM`.
 *
 * @param stock of the same view
 */
export function thicknessOfPiles(
  view: JobView,
  stock: Stock = stockOf(view)
): (ThicknessOfPile | undefined)[] {
  const thresholdsMm = gradesOf(view)?.thresholdsMm;
  if (!thresholdsMm || !stock.isGauged) return stock.piles.map(() => undefined);
  // A pile beside the grades is known by what was put on it.
  const sharp = splitIntoPiles(stock.spread, thresholdsMm);
  const hand = normalMisgrading(ASSUMED_HAND_SD_MM);
  const byHand = misgradedPiles(stock.spread, thresholdsMm, hand);
  return stock.piles.map(({ grade, bins }) =>
    grade ? thicknessBetween(sharp[grade - 1], byHand[grade - 1]) : thicknessBetween(bins, bins)
  );
}

/**
 * The thickness of a pile that was sorted more sharply than one spread and less than another. Either
 * end is as likely as what lies between.
 *
 * @returns undefined below eight readings
 */
export function thicknessBetween(
  sharp: ThicknessBins,
  blurred: ThicknessBins
): ThicknessOfPile | undefined {
  const readings = totalCount(sharp) ** 2 / squaresOf(sharp).reduce((sum, one) => sum + one, 0);
  const own = momentsOfBins(sharp);
  const wide = momentsOfBins(blurred);
  if (!(readings >= ENOUGH_READINGS) || !own.ok || !wide.ok) return undefined;
  const sdMm = Math.max(own.sdMm ?? 0, wide.sdMm ?? 0);
  return {
    meanMm: (own.meanMm + wide.meanMm) / 2,
    meanErrorMm: Math.hypot(
      sdMm / Math.sqrt(readings),
      Math.abs(own.meanMm - wide.meanMm) / Math.sqrt(12)
    ),
    sdMm
  };
}
