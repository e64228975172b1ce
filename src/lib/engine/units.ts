import { EngineError, requireFinite } from './errors.ts';

/** Millimetres in one inch, exact by definition (international inch, 1959). */
export const MM_PER_INCH = 25.4;

/** Inches to millimetres. Exact to one rounding. */
export function inchesToMm(inches: number): number {
  return inches * MM_PER_INCH;
}

/** Millimetres to inches. Exact to one rounding. */
export function mmToInches(lengthMm: number): number {
  return lengthMm / MM_PER_INCH;
}

/**
 * Rounds a length to whole hundredths of a millimetre, the resolution of a reading and of a
 * thickness bin. Halves round up (away from zero for the positive lengths used here).
 *
 * The product is corrected for the binary error of decimals such as 1.005, so that a reading
 * typed as 6.285 mm goes to 629 and not 628.
 *
 * @throws EngineError `not-finite`
 * @example toHundredths(6.4) // 640
 */
export function toHundredths(lengthMm: number): number {
  requireFinite(lengthMm, 'length');
  return Math.round(Number((lengthMm * 100).toFixed(6)));
}

/** Whole hundredths of a millimetre back to millimetres: the double nearest the decimal. */
export function fromHundredths(hundredths: number): number {
  return hundredths / 100;
}

/**
 * A length in feet and inches to the nearest sixteenth, as a tape reads: 8′ 6 1/2″.
 *
 * @param lengthMm zero or more
 * @throws EngineError `out-of-range` for a negative length
 * @example formatFeetInches(2603.5) // '8′ 6 1/2″'
 */
export function formatFeetInches(lengthMm: number): string {
  requireFinite(lengthMm, 'length');
  if (lengthMm < 0)
    throw new EngineError('out-of-range', `length is ${lengthMm} mm; give 0 or more`);
  const sixteenths = Math.round(mmToInches(lengthMm) * 16);
  const feet = Math.floor(sixteenths / 192);
  const inches = Math.floor((sixteenths - feet * 192) / 16);
  let numerator = sixteenths % 16;
  let denominator = 16;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  const fraction = numerator > 0 ? `${numerator}/${denominator}` : '';
  const inchText = [inches > 0 || !fraction ? String(inches) : '', fraction]
    .filter(Boolean)
    .join(' ');
  return feet > 0 ? `${feet}′ ${inchText}″` : `${inchText}″`;
}
