import fCdf from '@stdlib/stats-base-dists-f-cdf';
import { EngineError } from '../errors.ts';
import { type GaugeReadings, type NoGaugeStudy, meanOf, studySize } from './gauge-readings.ts';

/** One line of the analysis of variance, mm². */
export interface VarianceLine {
  readonly squares: number;
  readonly degrees: number;
}

/** What the analysis of variance says of a gauge; variances in mm², each clamped at 0. */
export interface AnovaStudy {
  readonly ok: true;
  readonly part: VarianceLine;
  readonly sorter: VarianceLine;
  readonly interaction: VarianceLine;
  /** Repeated readings of one part by one sorter. */
  readonly error: VarianceLine;
  /** F of the interaction against the error and its p; null for one sorter or an error of 0. */
  readonly interactionTest: { readonly f: number; readonly pValue: number } | null;
  /** Whether the interaction was counted with the error. */
  readonly pooled: boolean;
  readonly repeatabilityVariance: number;
  readonly sorterVariance: number;
  readonly interactionVariance: number;
  readonly partVariance: number;
  /** Repeatability, sorters and interaction together. */
  readonly gaugeVariance: number;
  /** Repeatability as an SD, mm: the spread to give to misgrading and to borderline readings. */
  readonly repeatabilitySdMm: number;
  readonly gaugeSdMm: number;
  /** Gauge SD in per cent of the total SD. */
  readonly gaugePercent: number;
  /** Classes of parts the gauge can tell apart, whole; null for a gauge that never differed. */
  readonly distinctCategories: number | null;
}

/**
 * A gauge study by analysis of variance, which also sees sorters who differ on some parts only.
 *
 * @param readings every part by every sorter, equally often, mm; not modified
 * @param poolAbove the interaction is counted with the error where its p exceeds this (0.25 unless
 * given, as the manual has it, from memory); 1 never pools
 * @returns variance components, or why there are none
 *
 * Definition: parts and sorters random, with interaction; components from expected mean squares,
 * negative ones clamped at 0; ndc = ⌊1.41 parts/gauge⌋ on SDs. Accuracy: sums of squared deviations
 * from means, about 13 digits. Cost: linear in the readings.
 *
 * @throws EngineError `wrong-length` for a study with gaps, `not-finite`, `out-of-range` for
 * `poolAbove`
 * @source AIAG, Measurement Systems Analysis, 4th edition
 * @example anovaStudy([[[5, 5.1]], [[6, 6.1]]]); // one sorter: repeatability variance 0.005 mm²
 */
export function anovaStudy(readings: GaugeReadings, poolAbove = 0.25): AnovaStudy | NoGaugeStudy {
  const { parts, sorters, trials } = studySize(readings);
  if (!(poolAbove >= 0 && poolAbove <= 1))
    throw new EngineError('out-of-range', `pool above p = ${poolAbove}; give 0 to 1`);
  if (parts < 2) return { ok: false, reason: 'too-few-parts' };
  if (trials < 2) return { ok: false, reason: 'too-few-trials' };

  const { part, sorter, interaction, error } = analyse(readings, parts, sorters, trials);
  if (part.squares + sorter.squares + interaction.squares + error.squares === 0)
    return { ok: false, reason: 'no-spread' };
  const interactionTest = testInteraction(interaction, error);
  const pooled = sorters === 1 || (interactionTest !== null && interactionTest.pValue > poolAbove);
  const repeatabilityVariance = pooled
    ? (interaction.squares + error.squares) / (interaction.degrees + error.degrees)
    : meanSquare(error);
  const yardstick = pooled ? repeatabilityVariance : meanSquare(interaction);
  const component = (square: number, below: number, readingsEach: number) =>
    Math.max(0, (square - below) / readingsEach);
  const interactionVariance = pooled ? 0 : component(yardstick, repeatabilityVariance, trials);
  const sorterVariance =
    sorters === 1 ? 0 : component(meanSquare(sorter), yardstick, parts * trials);
  const partVariance = component(meanSquare(part), yardstick, sorters * trials);
  const gaugeVariance = repeatabilityVariance + sorterVariance + interactionVariance;
  const total = gaugeVariance + partVariance;
  return {
    ok: true,
    part,
    sorter,
    interaction,
    error,
    interactionTest,
    pooled,
    repeatabilityVariance,
    sorterVariance,
    interactionVariance,
    partVariance,
    gaugeVariance,
    repeatabilitySdMm: Math.sqrt(repeatabilityVariance),
    gaugeSdMm: Math.sqrt(gaugeVariance),
    gaugePercent: 100 * Math.sqrt(gaugeVariance / total),
    distinctCategories:
      gaugeVariance > 0 ? Math.floor(1.41 * Math.sqrt(partVariance / gaugeVariance)) : null
  };
}

function meanSquare({ squares, degrees }: VarianceLine): number {
  return squares / degrees;
}

function testInteraction(
  interaction: VarianceLine,
  error: VarianceLine
): { f: number; pValue: number } | null {
  if (interaction.degrees === 0 || error.squares === 0) return null;
  const f = meanSquare(interaction) / meanSquare(error);
  return { f, pValue: Math.max(0, 1 - fCdf(f, interaction.degrees, error.degrees)) };
}

function analyse(readings: GaugeReadings, parts: number, sorters: number, trials: number) {
  const cells = readings.map((bySorter) => bySorter.map(meanOf));
  const partMeans = cells.map(meanOf);
  const sorterMeans = cells[0].map((_, s) => meanOf(cells.map((row) => row[s])));
  const mean = meanOf(partMeans);
  const squaresAround = (values: readonly number[], centre: number) =>
    values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  let interaction = 0;
  let error = 0;
  for (let p = 0; p < parts; p++)
    for (let s = 0; s < sorters; s++) {
      interaction += trials * (cells[p][s] - partMeans[p] - sorterMeans[s] + mean) ** 2;
      error += squaresAround(readings[p][s], cells[p][s]);
    }
  return {
    part: { squares: sorters * trials * squaresAround(partMeans, mean), degrees: parts - 1 },
    sorter: { squares: parts * trials * squaresAround(sorterMeans, mean), degrees: sorters - 1 },
    interaction: { squares: interaction, degrees: (parts - 1) * (sorters - 1) },
    error: { squares: error, degrees: parts * sorters * (trials - 1) }
  };
}
