import { fromHundredths } from '$lib/engine';
import type { SetAsideReason, SetAsideUse } from '$lib/journal';
import { HEADING } from './csv-headings.ts';
import type { CsvDecimal, CsvSample, CsvSeparator } from './csv-types.ts';

/**
 * How a file is written: `standard` is RFC 4180 with commas and points, which programs read;
 * the other suits a spreadsheet in a country with a decimal comma.
 */
export type CsvStyle =
  | 'standard'
  | { readonly separator: CsvSeparator; readonly decimal: CsvDecimal; readonly bom: boolean };

/** For a spreadsheet in a country with a decimal comma. */
export const SPREADSHEET_STYLE = { separator: ';', decimal: ',', bom: true } as const;
const STANDARD_STYLE = { separator: ',', decimal: '.', bom: false } as const;

/** A cell: text, a number with its decimals (left out: as many as it has), or nothing. */
export type CsvCell = string | { readonly value: number; readonly decimals?: number } | undefined;

/** A row of the export of readings: the columns that are read back, and three that only inform. */
export interface CsvExportRow {
  readonly pallet: string;
  readonly thicknessHundredths?: number;
  /** The points, where there are several. */
  readonly pointsHundredths?: readonly number[];
  readonly grade?: number;
  /** ISO time. */
  readonly time?: string;
  readonly sorter?: string;
  /** The pile a gauged slate was sent to. */
  readonly pile?: number;
  readonly setAside?: { readonly reason: SetAsideReason; readonly use: SetAsideUse };
  /** Of a slate of the sample: where it was drawn and what else was measured and seen. */
  readonly sample?: CsvSample;
  readonly rocks?: boolean;
}

/** A column that only informs is not read back. Yes ends the line: half of it is seen to be torn. */
const HEADINGS = [
  HEADING.pallet,
  HEADING.thickness,
  HEADING.grade,
  ...['time', 'sorter', 'pile'],
  HEADING.setAside,
  HEADING.points,
  HEADING.list,
  HEADING.layer,
  HEADING.place,
  HEADING.ring,
  HEADING.faults,
  HEADING.length,
  HEADING.width,
  HEADING.outOfSquare,
  HEADING.edgeBow,
  HEADING.flatness,
  HEADING.rocks,
  HEADING.sample
];

/** A text whose start a spreadsheet takes for a formula, guarded already or not. */
const FORMULA = /^'*[=+\-@\t\r]/;

/**
 * One line of a file, ended by CR LF. Cells are quoted where they must be (RFC 4180).
 *
 * A text that a spreadsheet would take for a formula (it begins with = + - @, a tab or a CR) gets
 * an apostrophe in front, and one that already looks so guarded gets one more, so that
 * {@link withoutGuard} gives every text back. Numbers are never guarded.
 *
 * @example csvLine(['=A1', { value: 6.4, decimals: 2 }]) // "'=A1,6.40\r\n"
 */
export function csvLine(cells: readonly CsvCell[], style: CsvStyle = 'standard'): string {
  const { separator, decimal } = style === 'standard' ? STANDARD_STYLE : style;
  const written = cells.map((cell) => {
    if (cell === undefined) return '';
    const text =
      typeof cell === 'string' ? withGuard(cell) : numberText(cell.value, cell.decimals, decimal);
    const needsQuotes = text.includes(separator) || /["\r\n]|^\s|\s$/.test(text);
    return needsQuotes ? `"${text.replaceAll('"', '""')}"` : text;
  });
  return written.join(separator) + '\r\n';
}

/** Rows as a file to save. */
export function csvFile(rows: readonly (readonly CsvCell[])[], style: CsvStyle): Blob {
  const mark = style !== 'standard' && style.bom ? '\uFEFF' : '';
  const text = mark + rows.map((row) => csvLine(row, style)).join('');
  return new Blob([text], { type: 'text/csv;charset=utf-8' });
}

/** Takes the apostrophe off that {@link csvLine} put in front of a text. */
export function withoutGuard(text: string): string {
  return text.startsWith("'") && FORMULA.test(text) ? text.slice(1) : text;
}

/** The heading line of the export of readings, with the byte order mark where the style wants it. */
export function readingsHeading(style: CsvStyle): string {
  const mark = style !== 'standard' && style.bom ? '\uFEFF' : '';
  return mark + csvLine(HEADINGS, style);
}

/** One slate as a line of the export. Thickness in mm, always with two decimals. */
export function readingLine(row: CsvExportRow, style: CsvStyle): string {
  const { decimal } = style === 'standard' ? STANDARD_STYLE : style;
  const { sample, setAside, rocks } = row;
  const number = (value: number | undefined, decimals?: number): CsvCell =>
    value === undefined ? undefined : { value, ...(decimals !== undefined && { decimals }) };
  const yesNo = (value: boolean | undefined): CsvCell =>
    value === undefined ? undefined : value ? 'yes' : 'no';
  const mm = (hundredths: number): number => fromHundredths(hundredths);
  const thickness = row.thicknessHundredths;
  const defects = sample?.defects;
  return csvLine(
    [
      row.pallet,
      number(thickness === undefined ? undefined : mm(thickness), 2),
      number(row.grade, 0),
      row.time,
      row.sorter,
      number(row.pile, 0),
      setAside && `${setAside.reason}/${setAside.use}`,
      row.pointsHundredths?.map((point) => numberText(mm(point), 2, decimal)).join('/'),
      sample?.drawId,
      number(sample?.layer, 0),
      number(sample?.place, 0),
      sample?.ring,
      defects && (defects.length === 0 ? 'none' : defects.join('/')),
      ...[sample?.lengthMm, sample?.widthMm, sample?.outOfSquareMm].map((length) => number(length)),
      ...[sample?.edgeBowMm, sample?.flatnessMm].map((length) => number(length)),
      yesNo(rocks),
      sample && 'yes'
    ],
    style
  );
}

function numberText(value: number, decimals: number | undefined, decimal: CsvDecimal): string {
  const text = decimals === undefined ? String(value) : value.toFixed(decimals);
  return text.replace('.', decimal);
}

/** A file of readings. What it writes, `readReadingsCsv` reads back. */
export function writeReadingsCsv(
  rows: readonly CsvExportRow[],
  style: CsvStyle = 'standard'
): string {
  return readingsHeading(style) + rows.map((row) => readingLine(row, style)).join('');
}

function withGuard(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text;
}
