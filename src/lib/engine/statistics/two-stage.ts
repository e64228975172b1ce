import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { EngineError, requireWhole } from '../errors.ts';
import {
  type ThicknessBins,
  type ThicknessInterval,
  countBetween,
  momentsOfBins,
  totalCount
} from '../thickness/index.ts';
import { comparePallets } from './between-pallets.ts';
import { type Cluster, type ClusterEstimate, type NoEstimate, twoStageMean } from './clusters.ts';
import { requireConfidence } from './confidence.ts';
import { USUAL_MEANS, USUAL_SHARES, meanOfDrawnPallets } from './drawn-pallets.ts';
import { likelyShares } from './likely-shares.ts';
import type { PalletSample } from './pallet-sample.ts';

/** Mean thickness of a delivery, mm, with its interval. */
export interface MeanEstimate {
  readonly ok: true;
  readonly meanMm: number;
  readonly standardErrorMm: number;
  readonly degreesOfFreedom: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/** How many slates of a delivery belong to a grade, with the interval to say aloud. */
export interface GradeEstimate {
  readonly ok: true;
  /** Share of all slates, 0 to 1. */
  readonly share: number;
  /** By the plain two-stage formula; where few were seen on a pallet, the interval knows better. */
  readonly shareStandardError: number;
  readonly shareLow: number;
  readonly shareHigh: number;
  /** Share times the slates declared; not rounded. */
  readonly count: number;
  readonly countStandardError: number;
  /** Whole slates, rounded outward, never fewer than were seen of the grade. */
  readonly countLow: number;
  /** Whole slates, rounded outward, never more than the slates that may still be of the grade. */
  readonly countHigh: number;
}

/**
 * Mean thickness over a whole delivery from slates gauged on some of its pallets.
 *
 * @param pallets every pallet of the delivery, gauged or not, in any order; not modified
 * @param confidence of the interval (0.95 unless given)
 * @returns the mean in mm with its standard error and t interval; or what is missing
 *
 * Definition and cost: see {@link meanOfDrawnPallets}, which is {@link twoStageMean} where every pallet was
 * opened.
 *
 * @throws EngineError `out-of-range` for more slates gauged than a pallet holds, `not-whole` for a
 * size, or for fractional counts: only gauged slates are a sample, taps are not
 * @example
 * estimateMean([{ palletId: 'a', slates: 100, bins: binsFromPairs([[600, 5], [620, 5]]) }]);
 * // mean 6.1 mm, standard error 0.0316 mm, interval 6.03 to 6.17 mm
 */
export function estimateMean(
  pallets: readonly PalletSample[],
  confidence = 0.95
): MeanEstimate | NoEstimate {
  const figures = ({ slates, bins }: PalletSample): Cluster | null => {
    const moments = momentsOfBins(bins);
    if (!moments.ok) return null;
    const { count, meanMm, sdMm } = moments;
    return {
      size: slates,
      sampled: count,
      mean: meanMm,
      variance: sdMm === null ? null : sdMm ** 2
    };
  };
  const result = overPallets(pallets, figures, (opened, closed) =>
    meanOfDrawnPallets(opened, closed, confidence, USUAL_MEANS)
  );
  if (!result.ok) return result;
  const { estimate, standardError, degreesOfFreedom, low, high } = result;
  return {
    ok: true,
    meanMm: estimate,
    standardErrorMm: standardError,
    degreesOfFreedom,
    lowMm: low,
    highMm: high
  };
}

/**
 * Share and number of the slates of a whole delivery that belong to a grade.
 *
 * @param pallets every pallet of the delivery, gauged or not, in any order; not modified
 * @param interval thickness of the grade: its lower bound belongs to it, its upper one does not
 * @param confidence of the interval (0.95 unless given)
 * @returns share and count with standard errors and intervals; or what is missing
 *
 * Definition: the two-stage estimate of {@link twoStageMean} with each slate counting 1 or 0. The
 * interval is that of Clopper and Pearson for the number of slates of a simple random sample that
 * would be as precise, corrected for the degrees of freedom (Korn and Graubard 1998, from memory); so
 * it stays within 0 and 1. How precise the sample is follows from the shares that the pallets are
 * likely to hold, and from how closed pallets usually differ ({@link meanOfDrawnPallets}; {@link likelyShares}: variances pᵢ(1 − pᵢ) with as many degrees of freedom as slates
 * gauged and mixed in, less one), not from those seen: a pallet of which few were gauged, none of the
 * grade, may well have some. Where no slate of the grade was seen, or no other, that number is the
 * slates gauged, less what pallets gauged in unequal parts take from them (Kish 1965, from memory),
 * with the finite population correction, less what pallets that differ in thickness take.
 *
 * Accuracy: arithmetic 1e-12. Of the 95 % intervals of 600 invented deliveries 93 to 100 % held the
 * truth, 97 % on average, for each of five grades in each of 30 plans: 2 to 20 pallets with means apart
 * by an SD of 0 to 0.8 mm, slates of a pallet by 0.5 mm, gauged alike or as unequally as 300 and five
 * times 5, some pallets not opened. Cost: linear in the bins.
 *
 * @throws EngineError as {@link estimateMean}, and `wrong-order` for a band that runs backwards
 * @example
 * // 4 of 10 gauged from a pallet of 100: count 40, standard error 15.5, between 13 and 73
 * estimateGrade([{ palletId: 'a', slates: 100, bins: binsFromPairs([[550, 4], [650, 6]]) }], { fromMm: 5, toMm: 6 });
 */
export function estimateGrade(
  pallets: readonly PalletSample[],
  interval: ThicknessInterval,
  confidence = 0.95
): GradeEstimate | NoEstimate {
  const figures = ({ slates, bins }: PalletSample): Cluster | null => {
    const gauged = totalCount(bins);
    if (gauged === 0) return null;
    const share = countBetween(bins, interval) / gauged;
    const variance = gauged > 1 ? (gauged * share * (1 - share)) / (gauged - 1) : null;
    return { size: slates, sampled: gauged, mean: share, variance };
  };
  const result = overPallets(pallets, figures, (opened, closed) =>
    twoStageMean(opened, closed, confidence)
  );
  if (!result.ok) return result;

  const all = pallets.reduce((sum, { slates }) => sum + slates, 0);
  const gauged = pallets.reduce((sum, { bins }) => sum + totalCount(bins), 0);
  const seen = pallets.reduce((sum, { bins }) => sum + countBetween(bins, interval), 0);
  // weights may add up to a last place short of 1
  const share = seen === gauged ? 1 : Math.min(1, Math.max(0, result.estimate));
  const likely = asLikely(pallets, interval, confidence);
  const [low, high] = shareInterval(pallets, share, likely, confidence);
  const leastShare = seen / all;
  const mostShare = (all - (gauged - seen)) / all;
  const shareLow = Math.min(share, Math.max(low, leastShare));
  const shareHigh = Math.max(share, Math.min(high, mostShare));
  return {
    ok: true,
    share,
    shareStandardError: result.standardError,
    shareLow,
    shareHigh,
    count: share * all,
    countStandardError: result.standardError * all,
    countLow: Math.max(seen, Math.floor(shareLow * all + 1e-9)),
    countHigh: Math.min(all - (gauged - seen), Math.ceil(shareHigh * all - 1e-9))
  };
}

/** Applies the two-stage estimator to one figure of each gauged pallet. */
function overPallets(
  pallets: readonly PalletSample[],
  figures: (pallet: PalletSample) => Cluster | null,
  estimate: (opened: Cluster[], closedSizes: number[]) => ClusterEstimate | NoEstimate
): ClusterEstimate | NoEstimate {
  const sampled: Cluster[] = [];
  const unsampledSizes: number[] = [];
  for (const pallet of pallets) {
    requirePallet(pallet);
    const cluster = figures(pallet);
    if (cluster) sampled.push(cluster);
    else unsampledSizes.push(pallet.slates);
  }
  return estimate(sampled, unsampledSizes);
}

/** The same estimate, as precise as the shares are that the pallets are likely to hold. */
function asLikely(
  pallets: readonly PalletSample[],
  interval: ThicknessInterval,
  confidence: number
): ClusterEstimate {
  const hits = pallets.map(({ bins }) => countBetween(bins, interval));
  const gauged = pallets.map(({ bins }) => totalCount(bins));
  const { shares, mixedIn } = likelyShares(hits, gauged);
  const opened = pallets.flatMap(({ slates }, pallet): Cluster[] => {
    const sampled = gauged[pallet];
    if (sampled === 0) return [];
    const variance = shares[pallet] * (1 - shares[pallet]);
    const degreesOfFreedom = sampled - 1 + mixedIn;
    return [{ size: slates, sampled, mean: hits[pallet] / sampled, variance, degreesOfFreedom }];
  });
  const closed = pallets.filter((_, pallet) => gauged[pallet] === 0).map(({ slates }) => slates);
  const result = meanOfDrawnPallets(opened, closed, confidence, USUAL_SHARES);
  if (!result.ok) throw new EngineError('inconsistent', 'estimable by what was seen');
  return result;
}

/** Clopper–Pearson limits at the size of the simple random sample that would be as precise. */
function shareInterval(
  pallets: readonly PalletSample[],
  share: number,
  { standardError, degreesOfFreedom }: ClusterEstimate,
  confidence: number
): [number, number] {
  requireConfidence(confidence);
  const all = pallets.reduce((sum, { slates }) => sum + slates, 0);
  const gauged = pallets.reduce((sum, { bins }) => sum + totalCount(bins), 0);
  if (gauged === all) return [share, share];
  const tail = (1 - confidence) / 2;
  let asGoodAs: number;
  if (standardError > 0 && share > 0 && share < 1) {
    const ratio = tQuantile(1 - tail, gauged - 1) / tQuantile(1 - tail, degreesOfFreedom);
    asGoodAs = ((share * (1 - share)) / standardError ** 2) * Math.min(1, ratio) ** 2;
  } else asGoodAs = plainSampleSize(pallets, gauged);
  const hits = share * asGoodAs;
  return [
    hits > 0 ? betaQuantile(tail, hits, asGoodAs - hits + 1) : 0,
    hits < asGoodAs ? betaQuantile(1 - tail, hits + 1, asGoodAs - hits) : 1
  ];
}

/**
 * Slates of a simple random sample worth as much as these, judged by how unequally pallets were gauged
 * and how they differ.
 */
function plainSampleSize(pallets: readonly PalletSample[], gauged: number): number {
  const opened = pallets.filter(({ bins }) => totalCount(bins) > 0);
  const compared = comparePallets(pallets);
  let alike = 0;
  if (opened.length < pallets.length && compared.ok) alike = compared.intraclassCorrelation;
  if (opened.length < pallets.length && !compared.ok && compared.reason === 'no-spread-within')
    alike = 1;
  const slates = opened.reduce((sum, pallet) => sum + pallet.slates, 0);
  const unequal = opened.reduce((sum, pallet) => {
    const own = totalCount(pallet.bins);
    const notDrawn = 1 - ((own / pallet.slates) * opened.length) / pallets.length;
    return sum + (pallet.slates ** 2 * notDrawn) / own;
  }, 0);
  return slates ** 2 / unequal / (1 + (gauged / opened.length - 1) * alike);
}

function requirePallet({ palletId, slates, bins }: PalletSample): void {
  requireWhole(slates, 1, `slates on pallet ${palletId}`);
  const gauged = gaugedOn(bins, palletId);
  if (gauged > slates)
    throw new EngineError('out-of-range', `pallet ${palletId}: ${gauged} gauged of ${slates}`);
}

function gaugedOn(bins: ThicknessBins, palletId: string): number {
  const gauged = totalCount(bins);
  requireWhole(gauged, 0, `slates gauged on pallet ${palletId}`);
  return gauged;
}
