import { fromHundredths, inchesToMm, toHundredths } from '$lib/engine';
import { HIGHEST_HUNDREDTHS, LOWEST_HUNDREDTHS } from '$lib/engine/thickness';
import {
  SET_ASIDE_REASONS,
  SET_ASIDE_USES,
  type SetAsideReason,
  type SetAsideUse
} from '$lib/journal';
import type { CsvDecimal, CsvProblem, CsvReading, CsvSeparator } from './csv-types.ts';

/** A cell of a column, with the line it stands on; blank cells are left out of columns. */
export interface ColumnCell {
  readonly line: number;
  readonly text: string;
}

const NUMBER = /^([+\-−]?)(\d+)(?:([.,])(\d+))?(?:e([+-]?\d{1,3}))?\s*(?:mm)?$/i;
const SEVERAL_MARKS = /^[+\-−]?\d+(?:[.,]\d+){2,}\s*(?:mm)?$/i;
const LIKE_THOUSANDS = /^[+\-−]?[1-9]\d{0,2}[.,]\d{3}\s*(?:mm)?$/i;

/** What the cells of the thickness column say together, or the one problem they share. */
export type ThicknessStyle =
  | { readonly ok: true; readonly decimal: CsvDecimal | null }
  | { readonly ok: false; readonly problem: CsvProblem };

/**
 * Finds the decimal mark of a whole column, and refuses what may be read in two ways: two marks in
 * one column; a mark with three digits behind it in every cell, which may part thousands; numbers
 * that are a thickness only as inches.
 */
export function thicknessStyle(
  cells: readonly ColumnCell[],
  separator: CsvSeparator
): ThicknessStyle {
  const point = cells.find(({ text }) => NUMBER.exec(text)?.[3] === '.');
  const comma = cells.find(({ text }) => NUMBER.exec(text)?.[3] === ',');
  if (point && comma)
    return {
      ok: false,
      problem: { code: 'mixed-decimals', pointLine: point.line, commaLine: comma.line }
    };
  // Where the comma parts cells, a point can only be the decimal mark.
  const doubtful = comma ?? (separator === ';' ? point : undefined);
  if (doubtful && marked(cells).every(({ text }) => LIKE_THOUSANDS.test(text)))
    return { ok: false, problem: { code: 'ambiguous-decimal', ...doubtful } };
  const inches = asInches(cells);
  if (inches) return { ok: false, problem: inches };
  return { ok: true, decimal: comma ? ',' : point ? '.' : null };
}

/** Reads one thickness cell in mm; the decimal mark is already known to be one only. */
export function readThickness({ line, text }: ColumnCell): number | CsvProblem {
  if (SEVERAL_MARKS.test(text)) return { code: 'several-decimals', line, text };
  const value = valueOf(text);
  if (value === undefined) return { code: 'not-a-number', line, text };
  if (value < 0) return { code: 'negative', line, text };
  if (value === 0) return { code: 'zero', line, text };
  const limit = value * 100 < LOWEST_HUNDREDTHS ? LOWEST_HUNDREDTHS : HIGHEST_HUNDREDTHS;
  // Rounded first only where rounding is safe: 1e300 has no hundredths.
  const hundredths = value > 1e6 ? Infinity : toHundredths(value);
  if (hundredths < LOWEST_HUNDREDTHS)
    return { code: 'too-thin', line, text, limitMm: fromHundredths(limit) };
  if (hundredths > HIGHEST_HUNDREDTHS)
    return { code: 'too-thick', line, text, limitMm: fromHundredths(limit) };
  return hundredths;
}

/** Words for the grades of three piles, thickest first. */
export const GRADE_WORDS = ['thick', 'medium', 'thin'] as const;

/** Reads one grade cell: thick, medium, thin (in any case) or a pile number from 1 to 8. */
export function readGrade({ line, text }: ColumnCell): number | CsvProblem {
  const word = (GRADE_WORDS as readonly string[]).indexOf(text.toLowerCase());
  if (word >= 0) return word + 1;
  return /^[1-8]$/.test(text) ? Number(text) : { code: 'unknown-grade', line, text };
}

/** A grade column that names three piles by word and a fourth by number means two things. */
export function mixedGrades(cells: readonly ColumnCell[]): CsvProblem | undefined {
  if (!cells.some(({ text }) => /^(thick|medium|thin)$/i.test(text))) return undefined;
  const beyond = cells.find(({ text }) => /^[4-8]$/.test(text));
  return beyond && { code: 'mixed-grades', ...beyond };
}

/** Reads a set-aside cell: `reason/use` as the export writes it. */
export function readSetAside({
  line,
  text
}: ColumnCell): NonNullable<CsvReading['setAside']> | CsvProblem {
  const [reason, use, ...more] = text.split('/');
  if (more.length > 0 || !isReason(reason) || !isUse(use))
    return { code: 'unknown-set-aside', line, text };
  return { reason, use };
}

function marked(cells: readonly ColumnCell[]): readonly ColumnCell[] {
  return cells.filter(({ text }) => NUMBER.exec(text)?.[3] !== undefined);
}

function valueOf(text: string): number | undefined {
  const parts = NUMBER.exec(text);
  if (!parts) return undefined;
  const [, sign, whole, , fraction = '0', exponent = '0'] = parts;
  const magnitude = Number(`${whole}.${fraction}e${exponent}`);
  return sign === '' || sign === '+' ? magnitude : -magnitude;
}

function asInches(cells: readonly ColumnCell[]): CsvProblem | undefined {
  const lowestMm = fromHundredths(LOWEST_HUNDREDTHS);
  const areInches = cells.every(({ text }) => {
    const value = valueOf(text) ?? 0;
    return value < lowestMm && inchesToMm(value) >= lowestMm;
  });
  if (cells.length === 0 || !areInches) return undefined;
  const perhapsMm = fromHundredths(toHundredths(inchesToMm(valueOf(cells[0].text) as number)));
  return { code: 'looks-like-inches', ...cells[0], perhapsMm };
}

function isReason(text: string): text is SetAsideReason {
  return (SET_ASIDE_REASONS as readonly string[]).includes(text);
}

function isUse(text: string | undefined): text is SetAsideUse {
  return (SET_ASIDE_USES as readonly (string | undefined)[]).includes(text);
}
