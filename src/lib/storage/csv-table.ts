import Papa from 'papaparse';
import { hasColumns, knownColumns } from './csv-headings.ts';
import {
  type CsvNote,
  type CsvProblem,
  type CsvSeparator,
  MAX_CSV_BYTES,
  MAX_CSV_ROWS
} from './csv-types.ts';

/** One row as cut into cells, each trimmed. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A file cut into headings and rows. */
export interface CsvTable {
  readonly headings: readonly string[];
  readonly rows: readonly TableRow[];
  readonly separator: CsvSeparator;
  /** What stands above the headings. */
  readonly titles: readonly CsvNote[];
  /** Whether the file ends in a line break, so that its last cell is known to be whole. */
  readonly isEnded: boolean;
}

export type TableResult =
  | { readonly ok: true; readonly table: CsvTable }
  | { readonly ok: false; readonly problems: readonly CsvProblem[] };

const SEPARATORS: readonly CsvSeparator[] = [',', ';', '\t'];
/** Rows among which the headings are looked for. */
const MOST_TITLES = 40;
/** A first line by which a spreadsheet is told what parts the cells. */
const SEPARATOR_LINE = /^"?sep=(\\t|.)/i;

/**
 * Cuts a text into headings and rows (RFC 4180, line breaks of any kind). Blank lines and rows of
 * blank cells only are skipped, and so is what stands above the headings: they are the first row,
 * cut by some separator, that holds the columns wanted. A first line `sep=;` tells the separator.
 */
export function cutTable(text: string): TableResult {
  const refuse = (...problems: CsvProblem[]): TableResult => ({ ok: false, problems });
  if (text.length > MAX_CSV_BYTES)
    return refuse({ code: 'too-large', bytes: text.length, limitBytes: MAX_CSV_BYTES });
  // eslint-disable-next-line no-control-regex -- control characters are what it looks for
  if (/[\u0000-\u0008\u000e-\u001f]/.test(text)) return refuse({ code: 'binary' });
  const whole = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const stated = statedSeparator(whole);
  if (stated && !isSeparator(stated.separator))
    return refuse({ code: 'unknown-separator', text: stated.separator });
  const clean = stated ? stated.rest : whole;
  if (!/[^\s,;"]/.test(clean)) return refuse({ code: 'empty' });

  const separators = stated ? SEPARATORS.filter((one) => one === stated.separator) : SEPARATORS;
  const cuts = separators.map((separator) => ({ separator, ...findHeadings(clean, separator) }));
  const fitting = cuts.filter(({ isWhole }) => isWhole);
  const first = Math.min(...fitting.map(({ at }) => at));
  const firsts = fitting.filter(({ at }) => at === first);
  if (firsts.length > 1) return refuse({ code: 'ambiguous-separator' });
  const { separator, at } =
    firsts[0] ?? cuts.reduce((a, b) => (b.headings.length > a.headings.length ? b : a));

  const parsed = Papa.parse<string[]>(clean, { delimiter: separator, newline: '\n' });
  const all = numbered(parsed.data);
  const quote = parsed.errors.find(({ type }) => type === 'Quotes');
  if (quote) {
    const code = quote.code === 'MissingQuotes' ? 'unclosed-quote' : 'stray-quote';
    return refuse({ code, line: all[quote.row ?? 0]?.line ?? 1 });
  }
  const filled = all.filter(isFilled);
  const heading = filled.at(at);
  if (!heading) return refuse({ code: 'empty' });
  const rows = filled.slice(at + 1);
  if (rows.length === 0 && fitting.length > 0) return refuse({ code: 'no-rows' });
  if (rows.length > MAX_CSV_ROWS)
    return refuse({ code: 'too-many-rows', rows: rows.length, limitRows: MAX_CSV_ROWS });
  return {
    ok: true,
    table: {
      headings: heading.cells,
      rows,
      separator,
      titles: filled.slice(0, at).map(noteOf),
      isEnded: clean.endsWith('\n')
    }
  };
}

/** A row as a person reads it. */
export function noteOf({ line, cells }: TableRow): CsvNote {
  return { line, text: cells.filter((cell) => cell !== '').join(' ') };
}

/**
 * Rows that have more or fewer cells than there are headings, each as a problem. Blank cells at the
 * end of a row or of the headings are none.
 */
export function unequalRows(table: CsvTable, rows: readonly TableRow[]): CsvProblem[] {
  const { headings, separator } = table;
  const expected = headings.length;
  const least = lastFilled(headings) + 1;
  const sizeOf = ({ cells }: TableRow): number =>
    cells.length > expected ? Math.max(expected, lastFilled(cells) + 1) : cells.length;
  if (separator === ',' && rows.length > 0 && rows.every((row) => sizeOf(row) === expected + 1))
    return [{ code: 'comma-twice', line: rows[0].line }];
  const last = rows.at(-1);
  return rows
    .filter((row) => sizeOf(row) < least || sizeOf(row) > expected)
    .map((row): CsvProblem => {
      const { line } = row;
      const isTorn = row === last && sizeOf(row) < least && !table.isEnded;
      if (isTorn) return { code: 'torn-last-line', line };
      return { code: 'columns-differ', line, found: sizeOf(row), expected: least };
    });
}

function statedSeparator(text: string): { separator: string; rest: string } | undefined {
  const stated = SEPARATOR_LINE.exec(text)?.[1];
  if (stated === undefined) return undefined;
  const end = text.indexOf('\n');
  // The line stays as a blank one, so that the others keep their numbers.
  const rest = end < 0 ? '' : text.slice(end);
  return { separator: stated === '\\t' ? '\t' : stated, rest };
}

function isSeparator(text: string): text is CsvSeparator {
  return (SEPARATORS as readonly string[]).includes(text);
}

/** The row of the headings among those that are not blank, or else the one that is most like it. */
function findHeadings(
  text: string,
  separator: CsvSeparator
): { at: number; headings: readonly string[]; isWhole: boolean } {
  const preview = Papa.parse<string[]>(text, {
    delimiter: separator,
    newline: '\n',
    preview: MOST_TITLES
  });
  const rows = numbered(preview.data)
    .filter(isFilled)
    .map(({ cells }, at) => ({ at, headings: cells, isWhole: hasColumns(cells) }));
  const found = rows.find(({ isWhole }) => isWhole);
  if (found) return found;
  const known = rows.map(({ headings }) => knownColumns(headings));
  const best = known.indexOf(Math.max(...known));
  return rows[Math.max(best, 0)] ?? { at: 0, headings: [], isWhole: false };
}

function isFilled({ cells }: TableRow): boolean {
  return cells.some((cell) => cell !== '');
}

function lastFilled(cells: readonly string[]): number {
  return cells.findLastIndex((cell) => cell !== '');
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
