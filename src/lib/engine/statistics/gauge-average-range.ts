import {
  type GaugeReadings,
  type NoGaugeStudy,
  meanOf,
  rangeOf,
  studySize
} from './gauge-readings.ts';

/** What the average-and-range method says of a gauge; lengths in mm, shares in per cent of `totalSdMm`. */
export interface AverageRangeStudy {
  readonly ok: true;
  /** Mean range of repeated readings of one part by one sorter. */
  readonly meanRangeMm: number;
  /** Range of the sorters' means. */
  readonly sorterRangeMm: number;
  /** Range of the parts' means. */
  readonly partRangeMm: number;
  /** Equipment variation: the spread of one sorter's repeated readings. */
  readonly repeatabilitySdMm: number;
  /** Appraiser variation: the spread between sorters; 0 where repeatability explains it. */
  readonly reproducibilitySdMm: number;
  /** Both together. */
  readonly gaugeSdMm: number;
  readonly partSdMm: number;
  readonly totalSdMm: number;
  readonly repeatabilityPercent: number;
  readonly reproducibilityPercent: number;
  readonly gaugePercent: number;
  readonly partPercent: number;
  /** Classes of parts the gauge can tell apart, whole; null for a gauge that never differed. */
  readonly distinctCategories: number | null;
}

/**
 * One over the expected range of 2, 3 … normal values, the mean being taken over many ranges (K1) or
 * standing alone (K2, K3). Quoted from the AIAG manual for 3 trials, 3 sorters and 10 parts; the
 * others from memory; all recomputed from the moments of the normal range.
 */
const ONE_OVER_MEAN_RANGE = [0.8862, 0.5908];
const ONE_OVER_SINGLE_RANGE = [
  0.7071, 0.5231, 0.4467, 0.403, 0.3742, 0.3534, 0.3375, 0.3249, 0.3146
];

/**
 * A gauge study by averages and ranges: the pencil-and-paper method that many reports expect.
 *
 * @param readings every part by every sorter, equally often, mm; not modified
 * @returns the spread of the gauge, of sorters and of parts; or why there is none
 *
 * Definition: repeatability R̄·K1; reproducibility √((X·K2)² − repeatability²/(parts × trials)),
 * 0 where that is negative or there is one sorter; parts R·K3; ndc = ⌊1.41 parts/gauge⌋. For 2 or 3
 * trials, 1 to 3 sorters and 2 to 10 parts. Accuracy: the constants have four digits.
 *
 * @throws EngineError `wrong-length` for a study with gaps, `not-finite`
 * @source AIAG, Measurement Systems Analysis, 4th edition
 * @example averageRangeStudy([[[5, 5.1]], [[6, 6.1]]]); // repeatability 0.1 · 0.8862 = 0.0886 mm
 */
export function averageRangeStudy(readings: GaugeReadings): AverageRangeStudy | NoGaugeStudy {
  const { parts, sorters, trials } = studySize(readings);
  if (parts < 2) return { ok: false, reason: 'too-few-parts' };
  if (trials < 2) return { ok: false, reason: 'too-few-trials' };
  const perTrials = ONE_OVER_MEAN_RANGE[trials - 2];
  const perSorters = sorters === 1 ? 0 : ONE_OVER_SINGLE_RANGE.slice(0, 2)[sorters - 2];
  const perParts = ONE_OVER_SINGLE_RANGE[parts - 2];
  if (perTrials === undefined || perSorters === undefined || perParts === undefined)
    return { ok: false, reason: 'no-constants' };

  const meanRangeMm = meanOf(readings.flatMap((bySorter) => bySorter.map(rangeOf)));
  const sorterRangeMm = rangeOf(
    readings[0].map((_, sorter) => meanOf(readings.map((bySorter) => meanOf(bySorter[sorter]))))
  );
  const partRangeMm = rangeOf(readings.map((bySorter) => meanOf(bySorter.map(meanOf))));
  const repeatability = meanRangeMm * perTrials;
  const reproducibility = Math.sqrt(
    Math.max(0, (sorterRangeMm * perSorters) ** 2 - repeatability ** 2 / (parts * trials))
  );
  const gauge = Math.hypot(repeatability, reproducibility);
  const part = partRangeMm * perParts;
  const total = Math.hypot(gauge, part);
  if (total === 0) return { ok: false, reason: 'no-spread' };
  return {
    ok: true,
    meanRangeMm,
    sorterRangeMm,
    partRangeMm,
    repeatabilitySdMm: repeatability,
    reproducibilitySdMm: reproducibility,
    gaugeSdMm: gauge,
    partSdMm: part,
    totalSdMm: total,
    repeatabilityPercent: (100 * repeatability) / total,
    reproducibilityPercent: (100 * reproducibility) / total,
    gaugePercent: (100 * gauge) / total,
    partPercent: (100 * part) / total,
    distinctCategories: gauge > 0 ? Math.floor((1.41 * part) / gauge) : null
  };
}
