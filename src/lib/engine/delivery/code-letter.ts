import { requireWhole } from '../errors.ts';
import type { Basis } from './basis.ts';

/** Sample-size letters of MIL-STD-105E, least first. I and O are not used. */
// prettier-ignore
export const CODE_LETTERS = [
  'A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J', 'K', 'L', 'M', 'N', 'P', 'Q', 'R'
] as const;
export type CodeLetter = (typeof CODE_LETTERS)[number];

/** Slates drawn for each letter, in the order of `CODE_LETTERS`. */
// prettier-ignore
const SAMPLE_SIZES = [
  2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000
] as const;

/** General inspection level: I draws least, II is the usual one, III draws most. */
export type InspectionLevel = 'I' | 'II' | 'III';

/** Greatest lot of each row of the letter table; the last row has no end. */
// prettier-ignore
const LOT_ROW_ENDS = [
  8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000
] as const;

const LETTER_ROWS: Record<InspectionLevel, string> = {
  I: 'AABCCDEFGHJKLMN',
  II: 'ABCDEFGHJKLMNPQ',
  III: 'BCDEFGHJKLMNPQR'
};

const LEVEL_BASIS: Record<InspectionLevel, Basis> = {
  I: { standing: 'from memory', source: 'MIL-STD-105E, table I, level I' },
  II: { standing: 'published', source: 'MIL-STD-105E, table I, level II' },
  III: { standing: 'from memory', source: 'MIL-STD-105E, table I, level III' }
};

/** A sample-size letter, and what the choice rests on. */
export type CodeLetterResult =
  | { readonly ok: true; readonly letter: CodeLetter; readonly basis: Basis }
  | { readonly ok: false; readonly reason: 'lot-too-small' };

/**
 * The sample-size letter for a lot.
 *
 * @param lotSize slates in the lot, whole, 0 or more
 * @param level general inspection level
 * @returns the letter with its basis; `lot-too-small` below 2, where the table has no row
 * @throws EngineError `not-whole`, `out-of-range` for a lot that is not a count
 *
 * Source: MIL-STD-105E table I. The column of level II is transcribed; those of I and III are
 * from memory and say so in `basis`.
 * @example codeLetter(5000, 'II') // letter L
 */
export function codeLetter(lotSize: number, level: InspectionLevel): CodeLetterResult {
  requireWhole(lotSize, 0, 'lot size');
  if (lotSize < 2) return { ok: false, reason: 'lot-too-small' };
  const row = LOT_ROW_ENDS.findIndex((end) => lotSize <= end);
  const letters = LETTER_ROWS[level];
  return {
    ok: true,
    letter: letters.at(row) as CodeLetter, // −1, past the last end, is the last row
    basis: LEVEL_BASIS[level]
  };
}

/** Slates drawn for a letter: A 2, B 3, C 5 … R 2000. */
export function sampleSizeOf(letter: CodeLetter): number {
  return SAMPLE_SIZES[CODE_LETTERS.indexOf(letter)];
}
