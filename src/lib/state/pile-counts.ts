/**
 * How surely the piles are counted, and how well hands grade: it needs the statistics, which the
 * first paint does without. Import it with `await import()` only.
 */
import type { PileEstimate } from '$lib/engine/courses/risk';
import { estimateGrade } from '$lib/engine/estimates';
import { gradeIntervals } from '$lib/engine/thickness';
import type { Grades, JobView, PalletTally, PlanGround } from '$lib/journal';
import { handsOf } from './grades-hands.ts';
import { samplesOf } from './grades-ground.ts';

export { runOutChances } from '$lib/engine/courses/risk';

/**
 * Slates left of each pile with their standard error: slates on a pile are counted, those still to
 * come are as uncertain as the pile's share of the stock. Undefined where that is not known.
 *
 * Definition: the standard error of the share (two-stage estimate from the gauged slates) times the
 * slates not sorted yet.
 */
export function pileCounts(
  { request, stock }: PlanGround,
  pallets: readonly PalletTally[],
  grades: Grades | undefined
): PileEstimate[] | undefined {
  const toCome = stock.piles.reduce((sum, pile) => sum + pile.toCome, 0);
  if (toCome === 0) return request.piles.map(({ slates }) => ({ meanSlates: slates, sdSlates: 0 }));
  if (!grades) return undefined;
  const samples = samplesOf(pallets, stock);
  const estimates = gradeIntervals(grades.thresholdsMm).map((interval) =>
    estimateGrade(samples, interval)
  );
  return estimates.every((estimate) => estimate.ok)
    ? estimates.map(({ shareStandardError }, index) => ({
        meanSlates: request.piles[index].slates,
        sdSlates: shareStandardError * toCome
      }))
    : undefined;
}

/** The spread of the hands that sort this job, pooled over their spot checks; undefined: unknown. */
export function handSdMm(view: JobView): number | undefined {
  const known = handsOf(view)
    .map(({ hand }) => hand)
    .filter((hand) => hand.ok);
  const checks = known.reduce((sum, hand) => sum + hand.checks, 0);
  if (checks === 0) return undefined;
  return Math.sqrt(known.reduce((sum, hand) => sum + hand.checks * hand.sdMm ** 2, 0) / checks);
}
