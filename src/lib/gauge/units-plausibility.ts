import { inchesToMm, toHundredths } from '$lib/engine';
import { HIGHEST_HUNDREDTHS, LOWEST_HUNDREDTHS } from '$lib/engine/thickness';
import type { LengthUnit, Reading } from './reading-grammar.ts';

/**
 * What the first readings of a session say about the unit the sorter named for a gauge that sends
 * none. Counts only, so that it can be kept and carried on.
 */
export interface UnitTrial {
  readonly declared: LengthUnit;
  /** Numbers seen without a unit of their own. */
  readonly seen: number;
  /** Numbers that are a thickness if read as millimetres, and not if read as inches. */
  readonly onlyMm: number;
  /** Numbers that are a thickness if read as inches, and not if read as millimetres. */
  readonly onlyInch: number;
}

/**
 * What the trial says.
 * - `gathering`: too few numbers yet;
 * - `plausible`: the numbers fit the declared unit and none speaks for the other;
 * - `other-unit`: all that speak at all speak for the other unit: ask again;
 * - `mixed`: some speak for each, as when the unit key of the gauge was pressed: ask again;
 * - `neither`: no number is a thickness in either unit, as when decimals are lost: look at the gauge.
 */
export type UnitVerdict = 'gathering' | 'plausible' | 'other-unit' | 'mixed' | 'neither';

/** Numbers needed before the trial speaks. */
export const NUMBERS_IN_UNIT_TRIAL = 3;

/** Begins a trial of the unit the sorter named. */
export function startUnitTrial(declared: LengthUnit): UnitTrial {
  return { declared, seen: 0, onlyMm: 0, onlyInch: 0 };
}

/**
 * Adds one reading, taken or refused, to the trial; the trial given is not modified.
 *
 * A reading that carries its own unit, or from which no number could be read, says nothing about
 * the declared unit and changes nothing; nor do zero and negative numbers.
 *
 * @example addToUnitTrial(startUnitTrial('mm'), parseReading('0.25', 'mm')) // onlyInch: 1
 */
export function addToUnitTrial(trial: UnitTrial, reading: Reading): UnitTrial {
  if (!('value' in reading) || reading.isUnitWritten || reading.value <= 0) return trial;
  const fitsMm = isThickness(reading.value);
  const fitsInch = isThickness(inchesToMm(reading.value));
  return {
    ...trial,
    seen: trial.seen + 1,
    onlyMm: trial.onlyMm + Number(fitsMm && !fitsInch),
    onlyInch: trial.onlyInch + Number(fitsInch && !fitsMm)
  };
}

/**
 * What the numbers so far say about the declared unit. The accepted ranges in the two units hardly
 * meet (1.5 to 40 as millimetres, 0.06 to 1.57 as inches), so a few numbers settle it; one that
 * fits both says nothing.
 *
 * @example three readings of 0.25 under 'mm' → 'other-unit'
 */
export function judgeUnitTrial(trial: UnitTrial): UnitVerdict {
  if (trial.seen < NUMBERS_IN_UNIT_TRIAL) return 'gathering';
  const forDeclared = trial.declared === 'mm' ? trial.onlyMm : trial.onlyInch;
  const forOther = trial.declared === 'mm' ? trial.onlyInch : trial.onlyMm;
  if (forDeclared > 0) return forOther > 0 ? 'mixed' : 'plausible';
  return forOther > 0 ? 'other-unit' : 'neither';
}

function isThickness(lengthMm: number): boolean {
  const hundredths = toHundredths(lengthMm);
  return hundredths >= LOWEST_HUNDREDTHS && hundredths <= HIGHEST_HUNDREDTHS;
}
