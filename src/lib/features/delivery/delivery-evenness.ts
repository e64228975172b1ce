import { expectedPiles, kickChances, planCourses } from '$lib/engine/courses';
import type { PredictedEvenness } from '$lib/engine/delivery';
import { createRandom } from '$lib/engine';
import {
  type CutSpread,
  crossValidationRound,
  gradeFigures,
  naturalBreaks
} from '$lib/engine/grading';
import type { ThicknessBins } from '$lib/engine/thickness';
import { keptShare, kickSoftnessOf, pilesOf, roofLayoutOf, settingsOf, wideNeeded } from '$lib/job';
import type { JobView } from '$lib/journal';

/** Readings below which boundaries flatter themselves on the sample they were cut from. Ours. */
const FEW_READINGS = 150;
const ROUNDS = 5;

/**
 * Kickers per 100 joints on slates held out, in one row, the mean of a few rounds of trials; undefined
 * where so few cannot be cut. The dealing is seeded, so that the same sample gives the same figure.
 */
function heldOut(
  bins: ThicknessBins,
  slates: number,
  piles: number,
  ground: Pick<Parameters<typeof crossValidationRound>[0], 'kickAllowanceMm' | 'softness'>
): number | undefined {
  const random = createRandom(1);
  const cut: CutSpread = (spread) => {
    const found = naturalBreaks(spread, piles);
    return found.ok ? found.thresholdsMm : undefined;
  };
  let sum = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const [told] = crossValidationRound(
      { ...ground, stockSlates: slates, courses: [] },
      [{ slates, bins }],
      [cut],
      random
    );
    if (told === undefined) return undefined;
    sum += told / ROUNDS;
  }
  return sum;
}

/**
 * Kickers per 100 joints unsorted and sorted into the job's piles, foretold from the sample alone:
 * over the roof's courses where its plan is known, else over the stock. From few readings the figure
 * sorted is never below that of slates held out.
 *
 * @param bins thickness of the slates inside the order
 * @param slates how many such slates the delivery has
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
  const isFew = bins.counts.reduce((sum, count) => sum + count, 0) < FEW_READINGS;
  const out = isFew ? heldOut(bins, slates, piles, { kickAllowanceMm, softness }) : undefined;
  const told = (inSample: number): PredictedEvenness => ({
    unsortedKickersPer100,
    sortedKickersPer100: Math.min(unsortedKickersPer100, Math.max(inSample, out ?? 0)),
    piles
  });
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
    if (plan.status === 'optimal') return told(plan.per100Joints);
  }
  return told(figures.expectedKickersPer100Joints);
}
