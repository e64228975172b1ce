import { EngineError, requireFinite } from '../errors.ts';

/**
 * Readings of a gauge study: `readings[part][sorter][trial]`, mm. Every sorter gauges every part
 * equally often, without seeing earlier readings.
 */
export type GaugeReadings = readonly (readonly (readonly number[])[])[];

/** Why a study says nothing of the gauge. */
export interface NoGaugeStudy {
  readonly ok: false;
  readonly reason:
    /** Fewer than two parts. */
    | 'too-few-parts'
    /** Nobody gauged a part twice. */
    | 'too-few-trials'
    /** All readings are equal. */
    | 'no-spread'
    /** More parts, sorters or trials than the table of constants holds. */
    | 'no-constants';
}

/**
 * Size of a study; throws unless it is complete and finite.
 *
 * @throws EngineError `wrong-length`, `not-finite`
 */
export function studySize(readings: GaugeReadings): {
  parts: number;
  sorters: number;
  trials: number;
} {
  const parts = readings.length;
  const sorters = parts === 0 ? 0 : readings[0].length;
  const trials = sorters === 0 ? 0 : readings[0][0].length;
  for (const [part, bySorter] of readings.entries()) {
    if (bySorter.length !== sorters)
      throw new EngineError(
        'wrong-length',
        `part ${part}: ${bySorter.length} of ${sorters} sorters`
      );
    for (const byTrial of bySorter) {
      if (byTrial.length !== trials)
        throw new EngineError(
          'wrong-length',
          `part ${part}: ${byTrial.length} of ${trials} trials`
        );
      for (const reading of byTrial) requireFinite(reading, `reading of part ${part}`);
    }
  }
  return { parts, sorters, trials };
}

/** Mean of a list that is not empty. */
export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Greatest less least. */
export function rangeOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
