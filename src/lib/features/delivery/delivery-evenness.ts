import { expectedPiles, kickChances, planCourses } from '$lib/engine/courses';
import type { PredictedEvenness } from '$lib/engine/delivery';
import { gradeFigures, naturalBreaks } from '$lib/engine/grading';
import type { ThicknessBins } from '$lib/engine/thickness';
import {
  type JobSettings,
  kickSoftnessOf,
  pilesOf,
  roofLayoutOf,
  settingsOf,
  wideNeeded
} from '$lib/job';
import type { JobView } from '$lib/journal';

/** Share of the slates kept back, at most nine in ten. */
export function keptShare({ breakageShare, sparesShare }: JobSettings): number {
  return Math.min(0.9, breakageShare + sparesShare);
}

/**
 * Kickers per 100 joints unsorted and sorted into the job's piles, foretold from the sample alone:
 * over the roof's courses where its plan is known, else over the stock.
 */
export function predictEvenness(
  view: JobView,
  bins: ThicknessBins,
  slates: number
): PredictedEvenness | undefined {
  const piles = pilesOf(view);
  const cut = bins.counts.length > 1 ? naturalBreaks(bins, piles) : undefined;
  if (!cut?.ok) return undefined;
  const settings = settingsOf(view);
  const { kickAllowanceMm } = settings;
  const softness = kickSoftnessOf(view);
  const figures = gradeFigures({
    bins,
    stockSlates: slates,
    courses: [],
    kickAllowanceMm,
    softness
  })(cut.thresholdsMm);
  const unsortedKickersPer100 = figures.unsorted.expectedKickersPer100Joints;
  const roof = roofLayoutOf(view);
  if (roof.ok && roof.demand.length > 0) {
    const stock = {
      spread: bins,
      slates,
      slateAndAHalves: 0,
      reservedShare: keptShare(settings)
    };
    const expected = expectedPiles(stock, cut.thresholdsMm);
    const wide = wideNeeded(roof.demand); // taken to be enough on whichever pile
    const plan = planCourses({
      courses: roof.demand,
      piles: expected.stocks.map((pile) => ({ ...pile, slateAndAHalves: wide })),
      kicks: kickChances(expected.bins, kickAllowanceMm, undefined, softness)
    });
    if (plan.status === 'optimal')
      return { unsortedKickersPer100, sortedKickersPer100: plan.per100Joints, piles };
  }
  return { unsortedKickersPer100, sortedKickersPer100: figures.expectedKickersPer100Joints, piles };
}
