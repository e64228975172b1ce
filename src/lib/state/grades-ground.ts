import { type CourseNeed, type GradingGround } from '$lib/engine/grading';
import type { PalletSample } from '$lib/engine/estimates';
import { type CourseDemand, piecesInRun } from '$lib/engine/roof';
import { type ThicknessBins, mergeBins, totalCount } from '$lib/engine/thickness';
import type { JobSettings, PalletTally, Stock } from '$lib/journal';

/** A pallet's sample with the name that is written on the pallet. */
export interface NamedSample extends PalletSample {
  readonly label: string;
}

/**
 * What was gauged of each pallet. A pallet's size is what the stock counts on of it, less what is
 * set aside now and later, so that every screen speaks of the same slates; or what was seen of it
 * where that is more. A pallet of no known slates is left out.
 *
 * @param stock of the same job, its pallets in the order of the tallies
 */
export function samplesOf(
  pallets: readonly PalletTally[],
  stock: Pick<Stock, 'pallets'>
): NamedSample[] {
  return pallets
    .map(({ palletId, label, gauged, tapped, gaugedBins }, place) => ({
      palletId,
      label,
      slates: Math.max(stock.pallets[place].usable, gauged, tapped),
      bins: gaugedBins
    }))
    .filter(({ slates }) => slates > 0);
}

/**
 * The spread of the whole stock from what was gauged: each pallet counts by its slates, not by how
 * many of them were gauged. Adds up to the slates gauged, so that a sample stays a sample; where
 * every pallet was gauged in the same proportion the counts are those gauged.
 */
export function weightedSpread(samples: readonly PalletSample[]): ThicknessBins {
  const read = samples.filter(({ bins }) => bins.counts.length > 0);
  const gauged = read.map(({ bins }) => totalCount(bins));
  const allGauged = gauged.reduce((sum, n) => sum + n, 0);
  const allSlates = read.reduce((sum, { slates }) => sum + slates, 0);
  return mergeBins(
    read.map(({ bins }) => bins),
    read.map(({ slates }, index) => (slates * allGauged) / (gauged[index] * allSlates))
  );
}

/** What each course needs, lowest first: slates, and joints within unbroken runs. */
export function courseNeeds(demand: readonly CourseDemand[]): CourseNeed[] {
  return demand.map(({ runs }) => ({
    slates: runs.reduce((sum, run) => sum + run.slates, 0),
    joints: runs.reduce((sum, run) => sum + Math.max(0, piecesInRun(run) - 1), 0)
  }));
}

/** The ground that grades are judged on, sharp: no slate on the wrong pile. */
export function groundOf(
  bins: ThicknessBins,
  stockSlates: number,
  courses: readonly CourseNeed[],
  settings: Pick<JobSettings, 'kickAllowanceMm' | 'breakageShare' | 'sparesShare'>
): GradingGround {
  return {
    bins,
    stockSlates,
    courses,
    kickAllowanceMm: settings.kickAllowanceMm,
    reserve: Math.min(0.9, settings.breakageShare + settings.sparesShare)
  };
}

/** Slates of all pallets together. */
export function slatesOf(samples: readonly PalletSample[]): number {
  return samples.reduce((sum, { slates }) => sum + slates, 0);
}
