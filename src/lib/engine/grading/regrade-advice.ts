import { EngineError } from '../errors.ts';
import type { ThicknessBins } from '../thickness/index.ts';
import type { GradeFigures, Kickers } from './grade-figures.ts';
import { requireThresholds } from './piles.ts';
import { cutsAtThresholds } from './threshold-between.ts';

/** Slates of one pallet that lie on one pile. */
export interface SlatesOnPile {
  readonly palletId: string;
  /** The pile they lie on, 1 for the thickest. */
  readonly pile: number;
  /** Their thickness, as gauged or as estimated from taps; not modified. */
  readonly bins: ThicknessBins;
}

/** Slates to look at again: they lie on the right pile, and a threshold moves past them. */
export interface SlatesToRecheck {
  readonly palletId: string;
  /** The pile they lie on, 1 for the thickest. */
  readonly fromPile: number;
  /** The pile they belong on under the new ones. */
  readonly toPile: number;
  /** How many; fractional where taps are spread over thicknesses. */
  readonly slates: number;
  /** Thinnest and thickest of them, mm. */
  readonly thinnestMm: number;
  readonly thickestMm: number;
}

export interface RegradeAdvice {
  /** On the roof, or the stock in one row while there is no roof: as the piles stand now. */
  readonly before: Kickers & { readonly coursesMissing: number };
  /** With the new thresholds, all slates regraded. */
  readonly after: Kickers & { readonly coursesMissing: number };
  /** Kickers saved per 100 joints; below 0 where the new thresholds are worse. */
  readonly gainPer100Joints: number;
  /** By pallet and pile in the order given, then from thick to thin. */
  readonly recheck: readonly SlatesToRecheck[];
  /** Slates to look at again in all. */
  readonly slatesToRecheck: number;
}

/**
 * What it would bring, and what it would cost, to move the boundaries after sorting began: the gain
 * in kickers under the spread as it is known now, and the sorted slates that would change pile.
 *
 * @param figuresAt the figures of the spread, stock and roof as known now, from `gradeFigures`
 * @param oldThresholdsMm thresholds the piles were sorted under, mm, strictly falling
 * @param newThresholdsMm thresholds they might be sorted under, mm, strictly falling, as many
 * @param sorted what lies on the piles, by pallet and pile
 * @returns both sides' kickers, the gain, and the slates to look at again: those that lie on the pile
 * of their old grade and have another under the new thresholds. A slate that was tapped on to a wrong
 * pile is not made wrong by them, and to find it every slate would have to be gauged. A slate exactly
 * on a threshold belongs to its thicker pile under both
 *
 * Cost: that of the figures under both, and the bins of the sorted slates.
 * @throws EngineError `wrong-length`, `wrong-order`, `not-finite` and those of `gradeFigures`
 */
export function regradeAdvice(
  figuresAt: (thresholdsMm: readonly number[]) => GradeFigures,
  oldThresholdsMm: readonly number[],
  newThresholdsMm: readonly number[],
  sorted: readonly SlatesOnPile[]
): RegradeAdvice {
  requireThresholds(oldThresholdsMm);
  requireThresholds(newThresholdsMm);
  if (oldThresholdsMm.length !== newThresholdsMm.length)
    throw new EngineError(
      'wrong-length',
      `${newThresholdsMm.length} new thresholds for ${oldThresholdsMm.length} old ones`
    );
  const kickersAt = (thresholdsMm: readonly number[]) => {
    const { roof, expectedKickersPer100Joints, unsorted } = figuresAt(thresholdsMm);
    if (roof) return roof;
    const { joints } = unsorted;
    const expectedKickers = (expectedKickersPer100Joints * joints) / 100;
    return { joints, expectedKickers, expectedKickersPer100Joints, coursesMissing: 0 };
  };
  const before = kickersAt(oldThresholdsMm);
  const after = kickersAt(newThresholdsMm);
  const recheck = sorted.flatMap((slates) =>
    slatesThatMove(slates, oldThresholdsMm, newThresholdsMm)
  );
  return {
    before,
    after,
    gainPer100Joints: before.expectedKickersPer100Joints - after.expectedKickersPer100Joints,
    recheck,
    slatesToRecheck: recheck.reduce((sum, { slates }) => sum + slates, 0)
  };
}

function slatesThatMove(
  { palletId, pile, bins }: SlatesOnPile,
  oldThresholdsMm: readonly number[],
  newThresholdsMm: readonly number[]
): SlatesToRecheck[] {
  const newCuts = cutsAtThresholds(bins, newThresholdsMm);
  // Between two of these, from the thickest slate down, lies what its old grade leaves on each pile.
  const oldEdges = [bins.counts.length, ...cutsAtThresholds(bins, oldThresholdsMm), 0];
  const moves: SlatesToRecheck[] = [];
  let toPile = 1;
  for (let bin = oldEdges[pile - 1] - 1; bin >= oldEdges[pile]; bin--) {
    while (toPile <= newCuts.length && bin < newCuts[toPile - 1]) toPile++;
    if (toPile === pile) continue;
    const thicknessMm = bins.hundredths[bin] / 100;
    const last = moves.at(-1);
    if (last?.toPile === toPile)
      moves[moves.length - 1] = {
        ...last,
        slates: last.slates + bins.counts[bin],
        thinnestMm: thicknessMm
      };
    else
      moves.push({
        palletId,
        fromPile: pile,
        toPile,
        slates: bins.counts[bin],
        thinnestMm: thicknessMm,
        thickestMm: thicknessMm
      });
  }
  return moves;
}
