import { type ThicknessBins, partOfBins } from '../thickness/index.ts';
import { requireThresholds } from './piles.ts';

/**
 * The chance that the sorter puts a slate on the thicker side of a threshold. Both in mm; must fall
 * as the threshold rises.
 */
export type ChanceAbove = (thicknessMm: number, thresholdMm: number) => number;

/**
 * The chance of each pile for a slate, thickest pile first, summing to 1.
 *
 * @param thicknessMm the slate's true thickness, mm
 * @param thresholdsMm bounds between piles, mm, strictly falling; not modified
 * @throws EngineError `not-finite`, `wrong-order` for such thresholds
 */
export function pileChances(
  thicknessMm: number,
  thresholdsMm: readonly number[],
  chanceAbove: ChanceAbove
): number[] {
  requireThresholds(thresholdsMm);
  const atOrAbove = thresholdsMm.map((thresholdMm) => chanceAbove(thicknessMm, thresholdMm));
  return [...atOrAbove, 1].map((chance, pile) =>
    Math.max(0, chance - (pile > 0 ? atOrAbove[pile - 1] : 0))
  );
}

/**
 * What the piles will really hold when slates near a threshold may land on the wrong side: one
 * spread per pile, thickest first, in fractional slates that sum to the stock.
 *
 * @param bins the spread of true thickness; not modified
 * @param thresholdsMm bounds between piles, mm, strictly falling; not modified
 * @param chanceAbove how slates fall either side of a threshold
 *
 * A slate
 * that lands here with a chance weighs that much of itself. Accuracy: the sum over piles equals each bin's count to rounding. Cost: bins × piles.
 * @throws EngineError `not-finite`, `wrong-order`
 */
export function misgradedPiles(
  bins: ThicknessBins,
  thresholdsMm: readonly number[],
  chanceAbove: ChanceAbove
): ThicknessBins[] {
  requireThresholds(thresholdsMm);
  const { hundredths } = bins;
  const atOrAbove = [
    ...thresholdsMm.map((thresholdMm) =>
      Float64Array.from(hundredths, (thickness) => chanceAbove(thickness / 100, thresholdMm))
    ),
    new Float64Array(hundredths.length).fill(1)
  ];
  return atOrAbove.map((chances, pile) => {
    const thicker = atOrAbove[pile - 1] as Float64Array | undefined;
    const own = chances.map((chance, bin) => Math.max(0, chance - (thicker ? thicker[bin] : 0)));
    return partOfBins(bins, own);
  });
}
