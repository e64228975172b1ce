import Papa from 'papaparse';
import { type CsvProblem, type CsvSeparator, MAX_CSV_BYTES, MAX_CSV_ROWS } from './csv-types.ts';

/** One row as cut into cells, each trimmed. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A file cut into headings and rows of as many cells each. */
export interface CsvTable {
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
  readonly separator: CsvSeparator;
  /** Whether the file ends in a line break, so that its last cell is known to be whole. */
  readonly isEnded: boolean;
}

export type TableResult =
  | { readonly ok: true; readonly table: CsvTable }
  | { readonly ok: false; readonly problems: readonly CsvProblem[] };

const SEPARATORS: readonly CsvSeparator[] = [',', ';', '\t'];

/**
 * Cuts a text into headings and rows (RFC 4180, line breaks of any kind). Blank lines and rows of
 * blank cells only are skipped.
 *
 * @param hasColumns whether the headings, cut by a candidate separator, hold the columns wanted:
 * the separator is the one for which they do
 */
export function cutTable(
  text: string,
  hasColumns: (headings: readonly string[]) => boolean
): TableResult {
  const refuse = (...problems: CsvProblem[]): TableResult => ({ ok: false, problems });
  if (text.length > MAX_CSV_BYTES)
    return refuse({ code: 'too-large', bytes: text.length, limitBytes: MAX_CSV_BYTES });
  // eslint-disable-next-line no-control-regex -- control characters are what it looks for
  if (/[\u0000-\u0008\u000e-\u001f]/.test(text)) return refuse({ code: 'binary' });
  const clean = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const first = clean.split('\n').find((line) => /[^\s,;"]/.test(line));
  if (first === undefined) return refuse({ code: 'empty' });

  const cuts = SEPARATORS.map((separator) => ({ separator, headings: cutLine(first, separator) }));
  const fitting = cuts.filter(({ headings }) => hasColumns(headings));
  if (fitting.length > 1) return refuse({ code: 'ambiguous-separator' });
  const { separator } =
    fitting[0] ?? cuts.reduce((a, b) => (b.headings.length > a.headings.length ? b : a));

  const parsed = Papa.parse<string[]>(clean, { delimiter: separator, newline: '\n' });
  const all = numbered(parsed.data);
  const quote = parsed.errors.find(({ type }) => type === 'Quotes');
  if (quote) {
    const code = quote.code === 'MissingQuotes' ? 'unclosed-quote' : 'stray-quote';
    return refuse({ code, line: all[quote.row ?? 0]?.line ?? 1 });
  }
  const [heading, ...rows] = all.filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (!heading) return refuse({ code: 'empty' });
  if (rows.length === 0 && fitting.length > 0) return refuse({ code: 'no-rows' });
  if (rows.length > MAX_CSV_ROWS)
    return refuse({ code: 'too-many-rows', rows: rows.length, limitRows: MAX_CSV_ROWS });
  return {
    ok: true,
    table: { headings: heading.cells, rows, separator, isEnded: clean.endsWith('\n') }
  };
}

/** Rows that have more or fewer cells than there are headings, each as a problem. */
export function unequalRows({ headings, rows, separator }: CsvTable): CsvProblem[] {
  const expected = headings.length;
  if (
    separator === ',' &&
    rows.length > 0 &&
    rows.every(({ cells }) => cells.length === expected + 1)
  )
    return [{ code: 'comma-twice', line: rows[0].line }];
  const last = rows.at(-1);
  return rows
    .filter(({ cells }) => cells.length !== expected)
    .map((row): CsvProblem => {
      const { line, cells } = row;
      if (row === last && cells.length < expected) return { code: 'torn-last-line', line };
      return { code: 'columns-differ', line, found: cells.length, expected };
    });
}

function cutLine(line: string, separator: CsvSeparator): string[] {
  const { data } = Papa.parse<string[]>(line, { delimiter: separator, newline: '\n' });
  return (data[0] ?? []).map((cell) => cell.trim());
}

/** Gives every row the line it begins on; a quoted cell may hold line breaks. */
function numbered(rows: readonly string[][]): TableRow[] {
  let line = 1;
  return rows.map((cells) => {
    const row = { line, cells: cells.map((cell) => cell.trim()) };
    line += 1 + cells.reduce((breaks, cell) => breaks + cell.split('\n').length - 1, 0);
    return row;
  });
}
