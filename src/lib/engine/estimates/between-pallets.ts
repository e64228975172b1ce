import fCdf from '@stdlib/stats-base-dists-f-cdf';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { momentsOfBins, momentsOfList } from '../thickness/index.ts';
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

/** A pallet whose mean stands out, and by how much. */
export interface OddPallet {
  readonly palletId: string;
  /** Its mean less the plain mean of the means of the pallets that are not odd, mm. */
  readonly differenceMm: number;
  /** By how many standard errors it stood out from those not yet set apart when it was found odd. */
  readonly standardised: number;
}

/**
 * Pallets whose mean thickness stands out from the others by more than the scatter of slates within
 * pallets explains.
 *
 * @param pallets gauged or not, in any order; not modified
 * @param confidence that no pallet is named where all are alike (0.95 unless given)
 * @returns the odd pallets, oddest first, perhaps none; or why they cannot be compared
 *
 * Rule: the pallet furthest from the plain mean of the other pallets' means, in standard errors from
 * the pooled variance within pallets, is odd where that exceeds the t bound shared out over all
 * pallets (Bonferroni). It is then set apart and the rest are judged again, so that one odd pallet
 * does not make the others look odd; at two pallets it ends, for then either may be the odd one.
 * Slates gauged are taken as few beside the pallet. Ties: the pallet given first. Cost: pallets
 * squared.
 *
 * @throws EngineError `out-of-range` for the confidence
 * @example
 * // three pallets of 4.9, 4.95, 5, 5.05 and 5.1 mm and one of the same plus 0.8 mm
 * oddPallets(pallets); // { ok: true, odd: [{ palletId: 'D', differenceMm: 0.8, … }] }
 */
export function oddPallets(
  pallets: readonly PalletSample[],
  confidence = 0.95
): { readonly ok: true; readonly odd: readonly OddPallet[] } | NoComparison {
  requireConfidence(confidence);
  const gauged = gaugedPallets(pallets);
  const compared = compareGroups(gauged.map(({ figures }) => figures));
  if (!compared.ok) return compared;
  const bound = tQuantile(1 - (1 - confidence) / (2 * gauged.length), compared.degreesWithin);
  const odd: { readonly pallet: GaugedPallet; readonly standardised: number }[] = [];
  let rest = gauged;
  while (rest.length > 2) {
    const [furthest] = rest
      .map((pallet) => ({ pallet, standardised: standOut(pallet, rest, compared.varianceWithin) }))
      .sort((one, other) => Math.abs(other.standardised) - Math.abs(one.standardised));
    if (Math.abs(furthest.standardised) <= bound) break;
    odd.push(furthest);
    rest = rest.filter((pallet) => pallet !== furthest.pallet);
  }
  const usualMm = meanOfMeans(rest);
  return {
    ok: true,
    odd: odd.map(({ pallet: { palletId, figures }, standardised }) => ({
      palletId,
      differenceMm: figures.mean - usualMm,
      standardised
    }))
  };
}

interface GaugedPallet {
  readonly palletId: string;
  readonly figures: Group;
}

function gaugedPallets(pallets: readonly PalletSample[]): GaugedPallet[] {
  return pallets.flatMap(({ palletId, bins }) => {
    const moments = momentsOfBins(bins);
    if (!moments.ok) return [];
    const { count, meanMm, sdMm } = moments;
    const variance = sdMm === null ? null : sdMm ** 2;
    return [{ palletId, figures: { count, mean: meanMm, variance } }];
  });
}

/** How far a pallet's mean lies from the mean of the others' means, in standard errors. */
function standOut(
  pallet: GaugedPallet,
  among: readonly GaugedPallet[],
  varianceWithin: number
): number {
  const others = among.filter((other) => other !== pallet);
  const ofOthers = others.reduce((sum, { figures }) => sum + 1 / figures.count, 0);
  const standardError = Math.sqrt(
    varianceWithin * (1 / pallet.figures.count + ofOthers / others.length ** 2)
  );
  return (pallet.figures.mean - meanOfMeans(others)) / standardError;
}

function meanOfMeans(pallets: readonly GaugedPallet[]): number {
  return pallets.reduce((sum, { figures }) => sum + figures.mean, 0) / pallets.length;
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
