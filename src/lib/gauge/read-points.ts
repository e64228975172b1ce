import { MOST_POINTS } from '$lib/engine/thickness';
import { type ReadingUnit, parseReading } from './reading-grammar.ts';

/** Between the points of one slate: a slash, a bar, a semicolon, a plus sign or blanks. */
const BETWEEN = /\s*[/|;+]\s*|\s+(?=[\d.,])/;

/**
 * Reads all points of a slate from one text, as a person types them or a gauge with a memory sends
 * them. A text that may be a fraction of an inch (3/8) is none.
 *
 * @param unit the unit of numbers without one
 * @returns two to four points, mm, in the order written; undefined for anything else
 * @example readPoints('6.20/6.30 6.10', 'mm') // [6.2, 6.3, 6.1]
 */
export function readPoints(text: string, unit: ReadingUnit): number[] | undefined {
  const parts = text.trim().split(BETWEEN);
  if (parts.length < 2 || parts.length > MOST_POINTS) return undefined;
  if (/^\d+\/\d+$/.test(text.trim())) return undefined;
  const pointsMm = parts.flatMap((part) => {
    const reading = parseReading(part, unit);
    return reading.ok ? [reading.valueMm] : [];
  });
  return pointsMm.length === parts.length ? pointsMm : undefined;
}
