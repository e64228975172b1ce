import fCdf from '@stdlib/stats-base-dists-f-cdf';
import fQuantile from '@stdlib/stats-base-dists-f-quantile';
import { type ThicknessBins, momentsOfBins, momentsOfList } from '../thickness/index.ts';
import { requireConfidence } from './confidence.ts';
import type { PalletSample } from './pallet-sample.ts';

/** How much of a spread lies between groups, in the unit of the values. */
export interface GroupComparison {
  readonly ok: true;
  readonly mean: number;
  readonly squaresBetween: number;
  readonly squaresWithin: number;
  readonly degreesBetween: number;
  readonly degreesWithin: number;
  readonly f: number;
  /** Chance of an F as large where groups do not differ. */
  readonly pValue: number;
  readonly varianceBetween: number;
  readonly varianceWithin: number;
  /** Share of the variance that lies between groups, 0 to 1. */
  readonly intraclassCorrelation: number;
}

/** Why groups cannot be compared. */
export interface NoComparison {
  readonly ok: false;
  readonly reason:
    /** Fewer than two groups with values. */
    | 'too-few-groups'
    /** No group has two values. */
    | 'one-value-a-group'
    /** Values within a group never differ, so there is nothing to judge a difference by. */
    | 'no-spread-within';
}

/** A group in figures: values, their mean and sample variance (n − 1, null for one value). */
interface Group {
  readonly count: number;
  readonly mean: number;
  readonly variance: number | null;
}

/**
 * One-way random effects: how much of a spread lies between groups and how much within them.
 *
 * @param groups values of each group, in any order; empty groups are passed over; not modified
 * @returns analysis of variance, variance components and intraclass correlation; or why not
 *
 * Definition: variance between = (MS between − MS within) / n₀ with
 * n₀ = (N − Σnᵢ²/N)/(k − 1) for groups of unequal size, clamped at 0; intraclass correlation is its
 * share of the sum with MS within. Accuracy: deviations are taken from means, so about 13 digits
 * where the values are a thousand times their spread. Cost: linear in the values.
 *
 * @throws EngineError `not-finite`
 * @example
 * oneWayRandomEffects([[5, 6], [7, 8]]); // MS 4 and 0.5: between 1.75, within 0.5, correlation 0.7778
 */
export function oneWayRandomEffects(
  groups: readonly (readonly number[])[]
): GroupComparison | NoComparison {
  const figures: Group[] = [];
  for (const values of groups) {
    const moments = momentsOfList(values);
    if (moments.ok)
      figures.push({
        count: moments.count,
        mean: moments.mean,
        variance: moments.sd === null ? null : moments.sd ** 2
      });
  }
  return compareGroups(figures);
}

/**
 * The same for the gauged slates of pallets, in mm; pallets without any are passed over.
 *
 * @param pallets gauged or not, in any order; not modified
 * @example
 * // 5 and 6 mm on one pallet, 7 and 8 mm on the other: correlation 0.7778
 * comparePallets(pallets);
 */
export function comparePallets(pallets: readonly PalletSample[]): GroupComparison | NoComparison {
  return compareGroups(gaugedPallets(pallets).map(({ figures }) => figures));
}

/**
 * Largest intraclass correlation that gauged slates of some pallets allow: how much pallets may differ
 * at most.
 *
 * @param pallets slates by thickness of each, in any order; empty ones are passed over; not modified
 * @param confidence that the true one is not larger, between 0 and 1
 * @returns the correlation, 0 to 1; 1 where nothing tells
 *
 * Definition: the upper limit that the F distribution gives for the ratio of the variances, from the
 * plain means of the pallets and the harmonic mean of their slates; exact for normal spreads and as
 * many slates of each pallet, close to it otherwise. Cost: linear in the bins.
 *
 * @throws EngineError `out-of-range` for the confidence
 * @source Thomas and Hultquist 1978 (from memory; agrees with the F limit for groups of equal size)
 * @example
 * // 5 and 6 mm on one pallet, 7 and 8 mm on the other: below 0.9997 at 0.975
 * intraclassCorrelationAtMost(pallets, 0.975);
 */
export function intraclassCorrelationAtMost(
  pallets: readonly ThicknessBins[],
  confidence: number
): number {
  requireConfidence(confidence);
  const groups = pallets.flatMap((bins) => groupOf(bins) ?? []);
  const compared = compareGroups(groups);
  if (!compared.ok) return 1;
  const means = momentsOfList(groups.map(({ mean }) => mean));
  const ofMeans = means.ok ? (means.sd ?? 0) ** 2 : 0;
  const oneSlate = groups.reduce((sum, { count }) => sum + 1 / count, 0) / groups.length;
  const least = fQuantile(1 - confidence, compared.degreesBetween, compared.degreesWithin);
  const ratio = Math.max(0, ofMeans / (compared.varianceWithin * least) - oneSlate);
  return ratio / (1 + ratio);
}

/** A pallet that was gauged, in figures. */
export interface PalletFigures {
  readonly palletId: string;
  readonly figures: Group;
}

/** The pallets of which slates were gauged, in the order given. */
export function gaugedPallets(pallets: readonly PalletSample[]): PalletFigures[] {
  return pallets.flatMap(({ palletId, bins }) => {
    const figures = groupOf(bins);
    return figures ? [{ palletId, figures }] : [];
  });
}

function groupOf(bins: ThicknessBins): Group | undefined {
  const moments = momentsOfBins(bins);
  if (!moments.ok) return undefined;
  const { count, meanMm, sdMm } = moments;
  return { count, mean: meanMm, variance: sdMm === null ? null : sdMm ** 2 };
}

function compareGroups(groups: readonly Group[]): GroupComparison | NoComparison {
  if (groups.length < 2) return { ok: false, reason: 'too-few-groups' };
  const count = groups.reduce((sum, group) => sum + group.count, 0);
  const origin = groups[0].mean;
  const mean =
    origin + groups.reduce((sum, group) => sum + (group.count / count) * (group.mean - origin), 0);
  const squaresBetween = groups.reduce(
    (sum, group) => sum + group.count * (group.mean - mean) ** 2,
    0
  );
  const squaresWithin = groups.reduce(
    (sum, group) => sum + (group.variance ?? 0) * (group.count - 1),
    0
  );
  const degreesBetween = groups.length - 1;
  const degreesWithin = count - groups.length;
  if (degreesWithin <= 0) return { ok: false, reason: 'one-value-a-group' };
  if (squaresWithin === 0) return { ok: false, reason: 'no-spread-within' };

  const varianceWithin = squaresWithin / degreesWithin;
  const f = squaresBetween / degreesBetween / varianceWithin;
  const sumOfSquares = groups.reduce((sum, group) => sum + group.count ** 2, 0);
  const typicalCount = (count - sumOfSquares / count) / degreesBetween;
  const varianceBetween = Math.max(
    0,
    (squaresBetween / degreesBetween - varianceWithin) / typicalCount
  );
  return {
    ok: true,
    mean,
    squaresBetween,
    squaresWithin,
    degreesBetween,
    degreesWithin,
    f,
    pValue: Math.max(0, 1 - fCdf(f, degreesBetween, degreesWithin)),
    varianceBetween,
    varianceWithin,
    intraclassCorrelation: varianceBetween / (varianceBetween + varianceWithin)
  };
}
