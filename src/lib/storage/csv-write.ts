import { fromHundredths } from '$lib/engine';
import type { SetAsideReason, SetAsideUse } from '$lib/journal';
import type { CsvDecimal, CsvSeparator } from './csv-types.ts';

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

/** A cell: text, a number with its decimals, or nothing. */
export type CsvCell = string | { readonly value: number; readonly decimals: number } | undefined;

/** A row of the export of readings: the columns that are read back, and five that only inform. */
export interface CsvExportRow {
  readonly pallet: string;
  readonly thicknessHundredths?: number;
  readonly grade?: number;
  /** ISO time. */
  readonly time?: string;
  readonly sorter?: string;
  /** The pile a gauged slate was sent to. */
  readonly pile?: number;
  readonly setAside?: { readonly reason: SetAsideReason; readonly use: SetAsideUse };
  /** Whether the slate belongs to the sample drawn before sorting. */
  readonly isSample?: boolean;
}

const HEADINGS = [
  'pallet',
  'thickness_mm',
  'grade',
  'time',
  'sorter',
  'pile',
  'set_aside',
  'sample'
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
      typeof cell === 'string'
        ? withGuard(cell)
        : cell.value.toFixed(cell.decimals).replace('.', decimal);
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
  const whole = (value: number | undefined): CsvCell =>
    value === undefined ? undefined : { value, decimals: 0 };
  const thickness = row.thicknessHundredths;
  return csvLine(
    [
      row.pallet,
      thickness === undefined ? undefined : { value: fromHundredths(thickness), decimals: 2 },
      whole(row.grade),
      row.time,
      row.sorter,
      whole(row.pile),
      row.setAside && `${row.setAside.reason}/${row.setAside.use}`,
      row.isSample ? 'yes' : undefined
    ],
    style
  );
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
