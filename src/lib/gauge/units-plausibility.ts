import { inchesToMm, toHundredths } from '$lib/engine';
import { HIGHEST_HUNDREDTHS, LOWEST_HUNDREDTHS } from '$lib/engine/thickness';
import type { ReadingUnit, Reading } from './reading-grammar.ts';

/** What the last readings say about the unit the sorter named for a gauge that sends none. */
export interface UnitTrial {
  readonly declared: ReadingUnit;
  /** Numbers in a row that are no thickness in the declared unit, and one in the other. */
  readonly forOther: number;
}

/** So many in a row, and the unit is in doubt: fewer are slips of the finger. Ours. */
export const NUMBERS_IN_DOUBT = 3;

/** Begins a trial of the unit the sorter named. */
export function startUnitTrial(declared: ReadingUnit): UnitTrial {
  return { declared, forOther: 0 };
}

/**
 * Adds one reading, taken or refused, to the trial; the trial given is not modified.
 *
 * A reading that was taken ends the row. A refused one lengthens it only where the number is a
 * thickness in the other unit: it says nothing where it is none in either, as 60 or zero, or where
 * no number could be read. Nor does a reading that carries its own unit.
 *
 * @example addToUnitTrial(startUnitTrial('mm'), parseReading('0.25', 'mm')) // forOther: 1
 */
export function addToUnitTrial(trial: UnitTrial, reading: Reading): UnitTrial {
  if (!('value' in reading) || reading.isUnitWritten) return trial;
  if (reading.ok) return startUnitTrial(trial.declared);
  const otherMm = trial.declared === 'mm' ? inchesToMm(reading.value) : reading.value;
  return isThickness(otherMm) ? { ...trial, forOther: trial.forOther + 1 } : trial;
}

/**
 * Whether the unit is to be asked for anew, as when the unit key of the gauge was pressed. The
 * accepted ranges in the two units hardly meet (1.5 to 40 as millimetres, 0.06 to 1.57 as inches),
 * so a few numbers settle it.
 *
 * @example three readings of 0.25 in a row under 'mm' → true; a 6.4 after them → false
 */
export function isUnitInDoubt(trial: UnitTrial): boolean {
  return trial.forOther >= NUMBERS_IN_DOUBT;
}

function isThickness(lengthMm: number): boolean {
  const hundredths = toHundredths(lengthMm);
  return hundredths >= LOWEST_HUNDREDTHS && hundredths <= HIGHEST_HUNDREDTHS;
}
