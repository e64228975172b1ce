import { fromHundredths, inchesToMm, toHundredths } from '$lib/engine';
import { HIGHEST_HUNDREDTHS, LOWEST_HUNDREDTHS } from '$lib/engine/thickness';
import type { Reading } from './reading-grammar.ts';

/** Thicknesses that slates of a job are likely to have, mm, both ends included. */
export interface LikelyRange {
  readonly lowMm: number;
  readonly highMm: number;
}

/** A point lost in front of so many digits at most: gauges in inches send four. */
const DIVISORS = [1, 10, 100, 1_000, 10_000];

/**
 * Finds what a number without a point means where the job's readings tell: 62 is 6.2 among slates
 * of 4 to 9 mm.
 *
 * A number with a point, with a unit written behind it or below zero stays as it was read, and so
 * does every number while the job has too few readings to tell. Otherwise each place of the point
 * that gives an accepted thickness is tried: the one place that gives a likely thickness is taken;
 * where several do, or none does and more than one is possible, the reading is refused with all of
 * them for the sorter to choose.
 *
 * @param likely what the job's readings say; undefined while there are too few
 * @example findLostPoint(parseReading('62', 'mm'), { lowMm: 3, highMm: 13 }) // ok, 6.2 mm
 * @example findLostPoint(parseReading('25', 'mm'), { lowMm: 3, highMm: 13 }) // refused: 2.5 or 25
 */
export function findLostPoint(reading: Reading, likely: LikelyRange | undefined): Reading {
  if (!likely || !('value' in reading)) return reading;
  const { value, unit, isUnitWritten, decimals, text } = reading;
  if (decimals > 0 || isUnitWritten || value <= 0) return reading;

  const possible = DIVISORS.flatMap((divisor) => {
    const hundredths = toHundredths(unit === 'mm' ? value / divisor : inchesToMm(value / divisor));
    const isAccepted = hundredths >= LOWEST_HUNDREDTHS && hundredths <= HIGHEST_HUNDREDTHS;
    return isAccepted ? [{ value: value / divisor, hundredths }] : [];
  });
  const meant = possible.filter(({ hundredths }) => {
    const mm = fromHundredths(hundredths);
    return mm >= likely.lowMm && mm <= likely.highMm;
  });
  const [first] = meant;
  if (meant.length === 1)
    return {
      ...{ ok: true, text, unit, isUnitWritten, decimals, value: first.value },
      hundredths: first.hundredths,
      valueMm: fromHundredths(first.hundredths)
    };
  const offered = meant.length > 1 ? meant : possible;
  if (offered.length < 2) return reading;
  return {
    ...{ ok: false, text, value, unit, isUnitWritten, decimals, reason: 'missing-decimal' },
    valueMm: unit === 'mm' ? value : inchesToMm(value),
    limitMm: fromHundredths(HIGHEST_HUNDREDTHS),
    perhapsMm: offered.map(({ hundredths }) => fromHundredths(hundredths)).reverse()
  };
}
