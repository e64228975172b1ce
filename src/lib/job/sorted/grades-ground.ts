import type { CourseNeed, GradingGround, KickSoftness } from '$lib/engine/grading';
import type { PalletSample } from '$lib/engine/statistics';
import { type CourseDemand, piecesInRun } from '$lib/engine/roof';
import { type ThicknessBins, mergeBins, totalCount } from '$lib/engine/thickness';
import type { JobSettings, PalletTally } from '../queries.ts';
import type { Stock } from '../stock.ts';

/** A pallet's sample with the name that is written on the pallet. */
export interface NamedSample extends PalletSample {
  readonly label: string;
}

/** Part of a pallet, gauged one way, from which readings of the other way are mostly repeats. Ours. */
const MOSTLY_REPEATS = 0.5;

/**
 * What was gauged of each pallet. A pallet's size is what the stock counts on of it, less what is
 * set aside now and later, so that every screen speaks of the same slates; or what was seen of it
 * where that is more. A pallet of no known slates is left out.
 *
 * A slate put back and sorted later has two readings. While few are gauged, hardly any has; once half
 * of a pallet was gauged, on to piles or back, only the readings of that way count, for the others are
 * mostly of the same slates.
 *
 * @param stock of the same job, its pallets in the order of the tallies
 */
export function samplesOf(
  pallets: readonly PalletTally[],
  stock: Pick<Stock, 'pallets'>
): NamedSample[] {
  return pallets
    .map((tally, place) => {
      const { palletId, label, tapped } = tally;
      const { usable } = stock.pallets[place];
      const bins = readingsOf(tally, usable);
      return { palletId, label, slates: Math.max(usable, totalCount(bins), tapped), bins };
    })
    .filter(({ slates }) => slates > 0);
}

/** A pallet's readings, as far as they are of different slates. */
function readingsOf(
  { gaugedBins, putBackBins, piledBins }: PalletTally,
  slates: number
): ThicknessBins {
  const [putBack, piled] = [totalCount(putBackBins), totalCount(piledBins)];
  if (putBack === 0 || piled === 0) return gaugedBins;
  if (Math.max(putBack, piled) < MOSTLY_REPEATS * slates) return gaugedBins;
  return putBack > piled ? putBackBins : piledBins;
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
  settings: Pick<JobSettings, 'kickAllowanceMm' | 'breakageShare' | 'sparesShare'>,
  softness?: KickSoftness
): GradingGround {
  return {
    bins,
    stockSlates,
    courses,
    kickAllowanceMm: settings.kickAllowanceMm,
    reserve: Math.min(0.9, settings.breakageShare + settings.sparesShare),
    ...(softness && { softness })
  };
}

/** Slates of all pallets together. */
export function slatesOf(samples: readonly PalletSample[]): number {
  return samples.reduce((sum, { slates }) => sum + slates, 0);
}
