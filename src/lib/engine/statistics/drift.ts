import { type ThicknessBins, momentsOfBins } from '../thickness/index.ts';
import { intraclassCorrelationAtMost } from './between-pallets.ts';
import { requireConfidence } from './confidence.ts';

/** Fewest slates on either side of the comparison. */
export const FEWEST_FOR_DRIFT = 10;

/** The least that is worth telling, in slates compared with a known mean: only four SDs would show. */
const LEAST_INFORMATION = 2;

/** What a comparison tells where its bound is tightest, in slates compared with a known mean. */
const TIGHTEST_AT = 50;

/** Share of the allowed error that goes to how much pallets may differ. */
const SPENT_ON_PALLETS = 0.2;

/** The gauged slates of one pallet, before the grades and since. */
export interface PalletSince {
  /** Slates of the sample that the grades came from; empty for a pallet that was not sampled. */
  readonly sample: ThicknessBins;
  /** Slates sorted since, the sample's not among them; empty for a pallet not begun. */
  readonly since: ThicknessBins;
}

/** How far the stock being sorted lies from the sample that set the grades. */
export interface Drift {
  readonly ok: true;
  /** Whether the interval excludes 0: the stock has drifted. */
  readonly drifted: boolean;
  /** Mean of the sorted slates less what their pallets' samples promise, mm; above 0 where thicker. */
  readonly shiftMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

/**
 * Whether the stock has drifted from the sample the grades came from, pallet compared with pallet, to
 * be asked as often as one likes while sorting goes on.
 *
 * @param pallets gauged slates of every pallet, in any order; not modified
 * @param confidence that a stock without drift is never called drifted, however often this is asked
 * and in whatever order the pallets are sorted (0.95 unless given)
 * @returns the shift, one for all pallets, with an interval that holds at all times together; or
 * `too-few` where fewer than ten slates were sampled or ten sorted, those that can be compared (of the
 * same pallets above all) tell next to nothing, or no slates differ
 *
 * Definition: a slate is as thick as its pallet, plus the shift if it was sorted since, plus normal
 * scatter. The shift is found by generalised least squares with pallets at random about a common
 * mean, at the largest intraclass correlation that the sample allows: each pallet is compared with its
 * own sample, and one that was not sampled with the whole sample, for as little as that tells where
 * pallets differ or were too few to say. The interval is the confidence sequence by a normal mixture
 * over the shift in SDs (Robbins 1970; SD unknown: Lai 1976; from memory), tightest at `TIGHTEST_AT`.
 * It is exact where the sampled pallets differ much and scatter alike; scatter is never taken as less
 * than that of the pallets compared. A fifth of the error goes to the intraclass correlation. Slates
 * of a pallet must come in no order of thickness. A slate that is in the sample and again among the
 * sorted only makes the answer more careful. Accuracy: 12 digits. Cost: linear in the bins.
 *
 * @throws EngineError `out-of-range` for the confidence
 * @example
 * // one pallet, sample 5 and 6 mm × 20 each, since 6 and 7 mm × 30 each: 1 mm, 0.665 to 1.335 mm
 * stockDrift([{ sample, since }]);
 */
export function stockDrift(
  pallets: readonly PalletSince[],
  confidence = 0.95
): Drift | { readonly ok: false; readonly reason: 'too-few' } {
  requireConfidence(confidence);
  const error = 1 - confidence;
  const samples = pallets.map(({ sample }) => sample);
  const alike = intraclassCorrelationAtMost(samples, 1 - error * SPENT_ON_PALLETS);
  const compared = pallets.map(figuresOf).filter(({ slates }) => slates > 0);
  const sampled = compared.reduce((sum, pallet) => sum + pallet.sampled, 0);
  const sorted = compared.reduce((sum, pallet) => sum + pallet.sorted, 0);
  if (Math.min(sampled, sorted) < FEWEST_FOR_DRIFT) return { ok: false, reason: 'too-few' };
  const { shiftMm, information } = shiftOf(compared, alike);
  if (information < LEAST_INFORMATION) return { ok: false, reason: 'too-few' };
  const scatter = scatterAbout(shiftMm, compared);
  const reach =
    Math.sqrt(scatter.varianceMm2 / information) *
    mixtureReach(information, scatter.degreesOfFreedom, error * (1 - SPENT_ON_PALLETS));
  if (!(reach > 0 && reach < Infinity)) return { ok: false, reason: 'too-few' };
  return {
    ok: true,
    drifted: Math.abs(shiftMm) > reach,
    shiftMm,
    lowMm: shiftMm - reach,
    highMm: shiftMm + reach
  };
}

/** A pallet in figures; a mean is 0 where there are no slates. */
interface PalletFigures {
  readonly sampled: number;
  readonly sampleMeanMm: number;
  readonly sorted: number;
  readonly sortedMeanMm: number;
  readonly slates: number;
  /** Squares about the mean of the sample, and about that of the sorted slates. */
  readonly squaresMm2: number;
}

function figuresOf({ sample, since }: PalletSince): PalletFigures {
  const [before, after] = [momentsOfBins(sample), momentsOfBins(since)].map((moments) =>
    moments.ok
      ? { ...moments, squaresMm2: (moments.count - 1) * (moments.sdMm ?? 0) ** 2 }
      : { count: 0, meanMm: 0, squaresMm2: 0 }
  );
  return {
    sampled: before.count,
    sampleMeanMm: before.meanMm,
    sorted: after.count,
    sortedMeanMm: after.meanMm,
    slates: before.count + after.count,
    squaresMm2: before.squaresMm2 + after.squaresMm2
  };
}

/** What two means of one pallet tell of their difference, in slates compared with a known mean. */
function informationOf(sampled: number, sorted: number): number {
  return (sampled * sorted) / (sampled + sorted);
}

/** Generalised least squares for the common mean and the shift; information in slates. */
function shiftOf(
  pallets: readonly PalletFigures[],
  alike: number
): { readonly shiftMm: number; readonly information: number } {
  let ofMean = 0;
  let ofBoth = 0;
  let ofShift = 0;
  let meanSumMm = 0;
  let shiftSumMm = 0;
  for (const { sampled, sampleMeanMm, sorted, sortedMeanMm, slates } of pallets) {
    const inflation = 1 - alike + alike * slates;
    const sortedSumMm = sorted * sortedMeanMm;
    const sumMm = sampled * sampleMeanMm + sortedSumMm;
    ofMean += ((1 - alike) * slates) / inflation;
    ofBoth += ((1 - alike) * sorted) / inflation;
    ofShift += (sorted * (1 - alike + alike * sampled)) / inflation;
    meanSumMm += ((1 - alike) * sumMm) / inflation;
    shiftSumMm += sortedSumMm - (alike * sorted * sumMm) / inflation;
  }
  const share = ofMean > 0 ? ofBoth / ofMean : 0;
  const information = ofShift - share * ofBoth;
  return { shiftMm: (shiftSumMm - share * meanSumMm) / information, information };
}

/** Variance of slates about their pallet and the shift: pooled, or of those compared if that is more. */
function scatterAbout(
  shiftMm: number,
  pallets: readonly PalletFigures[]
): { readonly varianceMm2: number; readonly degreesOfFreedom: number } {
  let squaresMm2 = 0;
  let degreesOfFreedom = 0;
  let weighted = 0;
  let weights = 0;
  for (const pallet of pallets) {
    const weight = informationOf(pallet.sampled, pallet.sorted);
    const differenceMm = pallet.sortedMeanMm - pallet.sampleMeanMm;
    const own = pallet.squaresMm2 + weight * (differenceMm - shiftMm) ** 2;
    squaresMm2 += own;
    degreesOfFreedom += pallet.slates - 1;
    weighted += weight > 0 ? (weight * own) / (pallet.slates - 1) : 0;
    weights += weight;
  }
  return {
    varianceMm2: Math.max(squaresMm2 / degreesOfFreedom, weights > 0 ? weighted / weights : 0),
    degreesOfFreedom
  };
}

/** Half-width of the confidence sequence in standard errors; infinite where too little is known. */
function mixtureReach(information: number, degreesOfFreedom: number, error: number): number {
  const budget = -2 * Math.log(error);
  const growth = 1 + (information / TIGHTEST_AT) * (budget + Math.log(budget + 1));
  const rise = (Math.log(growth) + budget) / degreesOfFreedom;
  if (rise >= Math.log(growth)) return Infinity;
  return Math.sqrt((degreesOfFreedom * Math.expm1(rise)) / (1 - Math.exp(rise) / growth));
}
