import {
  type ColumnCell,
  GRADE_WORDS,
  mixedGrades,
  readGrade,
  readSetAside,
  readThickness,
  thicknessStyle
} from './csv-cells.ts';
import { type CsvTable, type TableRow, cutTable, unequalRows } from './csv-table.ts';
import type { CsvProblem, CsvReading, CsvResult } from './csv-types.ts';
import { withoutGuard } from './csv-write.ts';

/** Problems listed one by one; the rest are counted. */
const MOST_PROBLEMS = 100;
const LONGEST_PALLET = 200;

/** The columns that are read, by heading without case, spaces and signs. */
const COLUMNS = ['pallet', 'thicknessmm', 'grade', 'setaside'] as const;
type Column = (typeof COLUMNS)[number];
/** Where each column stands; absent when it is not there. */
type Places = Partial<Record<Column, number>>;

/**
 * Reads a file of readings: columns `pallet` and `thickness_mm` or `grade` or both, and `set_aside`
 * as the export writes it. Headings in any case and spacing; other columns are ignored and named.
 *
 * Separator (comma, semicolon, tab) and decimal mark (point, comma) are found over the whole file;
 * what may be read in two ways is refused, never guessed. All or nothing: one wrong line refuses
 * the file. Problems are codes with the line and text at fault, at most a hundred of them, then a
 * count. What concerns a whole column (two decimal marks, inches) comes alone.
 *
 * Linear in the length of the text.
 *
 * @example readReadingsCsv('pallet,thickness_mm\nA,6.40\n') // rows: [{ line: 2, pallet: 'A', thicknessHundredths: 640 }]
 */
export function readReadingsCsv(text: string): CsvResult {
  const refuse = (problems: readonly CsvProblem[]): CsvResult => {
    const more = problems.length - MOST_PROBLEMS;
    const listed = problems.slice(0, MOST_PROBLEMS);
    return {
      ok: false,
      problems: more > 0 ? [...listed, { code: 'more-problems', count: more }] : listed
    };
  };
  const cut = cutTable(text, (headings) => missingColumns(headings).length === 0);
  if (!cut.ok) return refuse(cut.problems);
  const { table } = cut;
  const { headings, rows, separator } = table;

  const missing = missingColumns(headings);
  if (missing.length > 0) return refuse(missing);
  const repeated = headings.find((heading) => {
    const column = columnOf(heading);
    return column && headings.filter((other) => columnOf(other) === column).length > 1;
  });
  if (repeated !== undefined) return refuse([{ code: 'duplicate-column', column: repeated }]);
  const unequal = unequalRows(table);
  if (unequal.length > 0) return refuse(unequal);

  const places = placesOf(headings);
  const torn = tornLastLine(table, places);
  if (torn) return refuse([torn]);
  const thicknesses = columnCells(rows, places.thicknessmm);
  const style = thicknessStyle(thicknesses, separator);
  if (!style.ok) return refuse([style.problem]);
  const mixed = mixedGrades(columnCells(rows, places.grade));
  if (mixed) return refuse([mixed]);

  const problems: CsvProblem[] = [];
  const readings = rows.map((row) => readRow(row, places, problems));
  if (problems.length > 0) return refuse(problems);
  const ignored = headings.filter((heading) => heading !== '' && !columnOf(heading));
  return { ok: true, rows: readings, separator, decimal: style.decimal, ignored };
}

function readRow({ line, cells }: TableRow, places: Places, problems: CsvProblem[]): CsvReading {
  const cellOf = (column: Column): ColumnCell | undefined => {
    const text = places[column] === undefined ? '' : cells[places[column]];
    return text === '' ? undefined : { line, text };
  };
  const take = <T>(cell: ColumnCell | undefined, read: (cell: ColumnCell) => T | CsvProblem) => {
    const value = cell && read(cell);
    if (!isProblem(value)) return value;
    problems.push(value);
    return undefined;
  };
  const pallet = withoutGuard(cellOf('pallet')?.text ?? '').trim();
  if (pallet === '') problems.push({ code: 'missing-pallet', line });
  if (pallet.length > LONGEST_PALLET) problems.push({ code: 'pallet-too-long', line });
  const [thickness, grade, setAside] = (['thicknessmm', 'grade', 'setaside'] as const).map(cellOf);
  if (!thickness && !grade && !setAside) problems.push({ code: 'no-reading', line });
  const reading = {
    line,
    pallet,
    thicknessHundredths: take(thickness, readThickness),
    grade: take(grade, readGrade),
    setAside: take(setAside, readSetAside)
  };
  return withoutUndefined(reading);
}

/**
 * Whether the last line is cut inside its last cell: the file ends without a line break, and a word
 * is half there or a number has fewer decimals than all the others.
 */
function tornLastLine({ rows, isEnded }: CsvTable, places: Places): CsvProblem | undefined {
  const last = rows.at(-1);
  if (isEnded || !last) return undefined;
  const { line, cells } = last;
  const torn: CsvProblem = { code: 'torn-last-line', line };
  const end = cells.length - 1;
  const text = cells[end].toLowerCase();
  if (end === places.grade) {
    const isHalf = GRADE_WORDS.some((word) => word !== text && word.startsWith(text));
    return text !== '' && isHalf ? torn : undefined;
  }
  if (end !== places.thicknessmm || rows.length < 3) return undefined;
  const others = columnCells(rows.slice(0, -1), end).map((cell) => decimalsOf(cell.text));
  const usual = others[0] ?? 0;
  const isRegular = usual > 0 && others.every((decimals) => decimals === usual);
  return text !== '' && isRegular && decimalsOf(text) < usual ? torn : undefined;
}

function decimalsOf(text: string): number {
  return /[.,](\d*)\D*$/.exec(text)?.[1].length ?? 0;
}

function columnCells(rows: readonly TableRow[], place: number | undefined): ColumnCell[] {
  if (place === undefined) return [];
  return rows
    .map(({ line, cells }) => ({ line, text: cells[place] }))
    .filter(({ text }) => text !== '');
}

function columnOf(heading: string): Column | undefined {
  const plain = heading.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  return COLUMNS.find((column) => column === plain);
}

function placesOf(headings: readonly string[]): Places {
  const places: Places = {};
  for (const [place, heading] of headings.entries()) {
    const column = columnOf(heading);
    if (column) places[column] = place;
  }
  return places;
}

function missingColumns(headings: readonly string[]): CsvProblem[] {
  const found = headings.map(columnOf);
  const missing: CsvProblem[] = [];
  if (!found.includes('pallet'))
    missing.push({ code: 'missing-column', column: 'pallet', found: headings });
  if (!found.includes('thicknessmm') && !found.includes('grade'))
    missing.push({ code: 'missing-column', column: 'thickness_mm or grade', found: headings });
  return missing;
}

function isProblem(value: unknown): value is CsvProblem {
  return typeof value === 'object' && value !== null && 'code' in value;
}

function withoutUndefined<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, field]) => field !== undefined)) as T;
}
