import { findLostPoint, parseReading, type LikelyRange } from '$lib/gauge';

/** Most readings taken at once. Ours. */
export const MOST_READINGS = 2000;

/** A pasted list, read whole; or the first text in it that is no thickness. */
export type PastedReadings =
  | { readonly ok: true; readonly readingsMm: readonly number[] }
  | { readonly ok: false; readonly reason: 'empty' | 'too-many' }
  | { readonly ok: false; readonly reason: 'not-a-reading'; readonly text: string };

/**
 * Reads a list of thicknesses: one a line, or apart by spaces, semicolons or tabs. A comma before a
 * space ends a number; any other stands for the decimal mark, unless the number has one already.
 * One bad number and nothing is taken.
 *
 * @example readPasted('6.2, 6.4; 7,1') // 6.2, 6.4 and 7.1 mm
 */
export function readPasted(text: string, likely?: LikelyRange): PastedReadings {
  const words = text
    .split(/[\s;]+/)
    .map((word) => word.replace(/,+$/, ''))
    .flatMap((word) => (/\..*,/.test(word) ? word.split(',') : [word]))
    .filter((word) => word !== '' && !/^mm$/i.test(word));
  if (words.length === 0) return { ok: false, reason: 'empty' };
  if (words.length > MOST_READINGS) return { ok: false, reason: 'too-many' };
  const readingsMm: number[] = [];
  for (const word of words) {
    const reading = findLostPoint(parseReading(word, 'mm'), likely);
    if (!reading.ok) return { ok: false, reason: 'not-a-reading', text: word.slice(0, 40) };
    readingsMm.push(reading.valueMm);
  }
  return { ok: true, readingsMm };
}
