import { fromHundredths, inchesToMm, toHundredths } from '$lib/engine';
import { HIGHEST_HUNDREDTHS, LOWEST_HUNDREDTHS } from '$lib/engine/thickness';
import {
  SET_ASIDE_REASONS,
  SET_ASIDE_USES,
  type SetAsideReason,
  type SetAsideUse
} from '$lib/journal';
import type { CsvUnit } from './csv-headings.ts';
import type { CsvDecimal, CsvProblem, CsvReading, CsvSeparator } from './csv-types.ts';

/** A cell of a column, with the line it stands on; blank cells are left out of columns. */
export interface ColumnCell {
  readonly line: number;
  readonly text: string;
  /** The unit that the heading states. */
  readonly unit?: CsvUnit;
}

const NUMBER =
  /^([+\-−]?)(\d+|(?=[.,]\d))(?:([.,])(\d+))?(?:e([+-]?\d{1,3}))?\s*(mm|in\.?|inch(?:es)?|["″”])?$/i;
const SEVERAL_MARKS = /^[+\-−]?\d+(?:[.,]\d+){2,}\s*(?:mm)?$/i;
const LIKE_THOUSANDS = /^[+\-−]?[1-9]\d{0,2}[.,]\d{3}\s*(?:mm)?$/i;
/** What a spreadsheet writes for a formula that failed. */
const FAILED = /^#(?:div\/0!|n\/a|name\?|null!|num!|ref!|value!|###*)$/i;
const FRACTION = /^\d{1,2}\/\d{1,2}$/;
/** Between points of one cell: a slash, a bar, a semicolon, a comma with a blank, or blanks. */
const BETWEEN_POINTS = /\s*[/|;]\s*|,\s+|\s+(?=[\d.,])/;

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
    return {
      ok: false,
      problem: { code: 'ambiguous-decimal', line: doubtful.line, text: doubtful.text }
    };
  const inches = asInches(cells);
  if (inches) return { ok: false, problem: inches };
  return { ok: true, decimal: comma ? ',' : point ? '.' : null };
}

/** The points that one cell holds, each as a cell; a cell that holds anything else stays whole. */
export function pointCells(cell: ColumnCell): ColumnCell[] {
  const parts = FRACTION.test(cell.text) ? [] : cell.text.split(BETWEEN_POINTS);
  return parts.length > 1 && parts.every(isNumber)
    ? parts.map((text) => ({ ...cell, text }))
    : [cell];
}

/** Whether a text is one number, with or without a unit. */
export function isNumber(text: string): boolean {
  return NUMBER.test(text);
}

/** Whether a length is in inches: its own unit says so, or else that of its heading. */
export function isInInches({ text, unit }: ColumnCell): boolean {
  const own = NUMBER.exec(text)?.[6];
  return own === undefined ? unit === 'inch' : !/^mm$/i.test(own);
}

/**
 * Reads one length in mm. A cell's own unit counts; one that the heading contradicts is a problem.
 *
 * @returns the length as it is typed, in mm, neither rounded nor held to limits; or what is wrong
 */
export function readLengthMm(cell: ColumnCell): number | CsvProblem {
  const { line, text, unit } = cell;
  if (FAILED.test(text)) return { code: 'spreadsheet-error', line, text };
  if (FRACTION.test(text)) return { code: 'like-a-fraction', line, text };
  if (SEVERAL_MARKS.test(text)) return { code: 'several-decimals', line, text };
  const value = numberOf(text);
  if (value === undefined) return { code: 'not-a-number', line, text };
  const isInch = isInInches(cell);
  if (unit !== undefined && isInch !== (unit === 'inch'))
    return { code: 'unit-differs', line, text };
  // A huge number of inches would be rounded to no number.
  return isInch && value < 1e6 ? inchesToMm(value) : value;
}

/** Reads one thickness; the decimal mark is already known to be one only. */
export function readThickness(cell: ColumnCell): number | CsvProblem {
  const { line } = cell;
  const value = readLengthMm(cell);
  if (typeof value !== 'number') return value;
  const isBare = isInInches(cell) && NUMBER.exec(cell.text)?.[6] === undefined;
  const text = isBare ? `${cell.text} in` : cell.text;
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
const SHORT_GRADES: readonly (readonly string[])[] = [
  ['thk', 'thck', 'tk', 'thicks'],
  ['med', 'md', 'm', 'mid', 'middle', 'meds', 'mediums'],
  ['thn', 'tn', 'thins']
];
const PILE = /^(?:(?:pile|grade|p|g)[\s.]*)?([1-9]\d?)$/i;

/** The grade that a word names, from 1; undefined where it is no such word. */
function gradeWord(text: string): number | undefined {
  const word = text.toLowerCase().replace(/\.$/, '');
  const at = GRADE_WORDS.findIndex(
    (full, grade) => full === word || SHORT_GRADES[grade].includes(word)
  );
  return at < 0 ? undefined : at + 1;
}

/** Reads one grade cell: thick, medium, thin, their short forms, or a pile number from 1 to 99. */
export function readGrade({ line, text }: ColumnCell): number | CsvProblem {
  if (FAILED.test(text)) return { code: 'spreadsheet-error', line, text };
  if (/^th?\.?$/i.test(text)) return { code: 'ambiguous-grade', line, text };
  const number = PILE.exec(text)?.[1];
  return gradeWord(text) ?? (number ? Number(number) : { code: 'unknown-grade', line, text });
}

/** A grade column that names three piles by word and a fourth by number means two things. */
export function mixedGrades(cells: readonly ColumnCell[]): CsvProblem | undefined {
  if (!cells.some(({ text }) => gradeWord(text) !== undefined)) return undefined;
  const beyond = cells.find(({ text }) => Number(PILE.exec(text)?.[1] ?? 0) > 3);
  return beyond && { code: 'mixed-grades', line: beyond.line, text: beyond.text };
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

/** The number of a cell in its own unit; undefined where it holds none. */
export function numberOf(text: string): number | undefined {
  const parts = NUMBER.exec(text);
  if (!parts) return undefined;
  const [, sign, whole, , fraction = '0', exponent = '0'] = parts;
  const magnitude = Number(`${whole || '0'}.${fraction}e${exponent}`);
  return sign === '' || sign === '+' ? magnitude : -magnitude;
}

/** Numbers without a unit, or under a heading in mm, that are a thickness only as inches. */
function asInches(all: readonly ColumnCell[]): CsvProblem | undefined {
  const lowestMm = fromHundredths(LOWEST_HUNDREDTHS);
  const cells = all.filter((cell) => !isInInches(cell));
  const areInches = cells.every(({ text }) => {
    const value = numberOf(text) ?? 0;
    return value < lowestMm && inchesToMm(value) >= lowestMm;
  });
  if (cells.length === 0 || !areInches) return undefined;
  const [{ line, text }] = cells;
  const perhapsMm = fromHundredths(toHundredths(inchesToMm(numberOf(text) as number)));
  return { code: 'looks-like-inches', line, text, perhapsMm };
}

function isReason(text: string): text is SetAsideReason {
  return (SET_ASIDE_REASONS as readonly string[]).includes(text);
}

function isUse(text: string | undefined): text is SetAsideUse {
  return (SET_ASIDE_USES as readonly (string | undefined)[]).includes(text);
}
