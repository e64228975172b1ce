import { fromHundredths } from '$lib/engine';
import { MOST_POINTS } from '$lib/engine/thickness';
import { meanHundredths } from '$lib/journal';
import {
  type ColumnCell,
  GRADE_WORDS,
  isInInches,
  mixedGrades,
  pointCells,
  readGrade,
  readSetAside,
  readThickness,
  thicknessStyle
} from './csv-cells.ts';
import { type Column, type Places, missingColumns, readHeadings } from './csv-headings.ts';
import { holdsYesNo, readSample } from './csv-sample.ts';
import { type SlateRow, sortRows } from './csv-rows.ts';
import { type CsvTable, cutTable, unequalRows } from './csv-table.ts';
import type { CsvProblem, CsvReading, CsvResult } from './csv-types.ts';

/** Problems listed one by one; the rest are counted. */
const MOST_PROBLEMS = 100;
const LONGEST_PALLET = 200;
/** How far a mean that a person worked out may lie off that of the points, hundredths of a mm. */
const MEAN_ROOM = 10;

/**
 * Reads a file of readings: a pallet and a thickness, points or a grade in each line, and what else
 * the export writes, under the headings that people give them ({@link readHeadings}).
 *
 * Separator (comma, semicolon, tab) and decimal mark (point, comma) are found over the whole file;
 * what may be read in two ways is refused, never guessed. All or nothing: one wrong line refuses
 * the file. Problems are codes with the line and text at fault, at most a hundred of them, then a
 * count. What concerns a whole column (two decimal marks, inches) comes alone.
 *
 * What was not taken as it stands (titles, notes, blank pallets filled down) is in `readAs`; lines
 * that look like a mean or a total are in `sums` and not among the rows.
 *
 * Linear in the length of the text.
 *
 * @param takesSums whether lines that look like a mean or a total are slates all the same
 * @example readReadingsCsv('pallet,thickness_mm\nA,6.40\n') // rows: [{ line: 2, pallet: 'A', thicknessHundredths: 640 }]
 */
export function readReadingsCsv(text: string, takesSums = false): CsvResult {
  const cut = cutTable(text);
  if (!cut.ok) return refuse(cut.problems);
  const { table } = cut;
  const { headings, separator } = table;
  const missing = missingColumns(headings);
  if (missing.length > 0) return refuse(missing);
  const read = readHeadings(headings);
  if (!read.ok) return refuse(read.problems);

  const sorted = sortRows(headings, table.rows, read.places, takesSums);
  const rows = sorted.slates;
  if (rows.length === 0 && sorted.sums.length === 0) return refuse([{ code: 'no-rows' }]);
  const unequal = unequalRows(table, rows);
  if (unequal.length > 0) return refuse(unequal);

  const places = withoutOtherSample(read.places, rows);
  const strange = read.places.get('sample')?.filter(() => !places.has('sample')) ?? [];
  const torn = tornLastLine(table, rows, places);
  if (torn) return refuse([torn]);
  const thicknesses = (['thickness', 'point', 'points'] as const)
    .flatMap((column) => columnCells(rows, places, column))
    .flatMap(pointCells);
  const style = thicknessStyle(thicknesses, separator);
  if (!style.ok) return refuse([style.problem]);
  const mixed = mixedGrades(columnCells(rows, places, 'grade'));
  if (mixed) return refuse([mixed]);

  const problems: CsvProblem[] = [];
  const readings = rows.map((row) => readRow(row, places, problems));
  if (problems.length > 0) return refuse(problems);
  const inch = thicknesses.find(isInInches);
  return {
    ok: true,
    rows: readings,
    separator,
    decimal: style.decimal,
    sums: sorted.sums,
    readAs: {
      notes: [...table.titles, ...sorted.notes],
      filled: sorted.filled,
      headings: read.headings,
      ignored: [...read.ignored, ...strange.map(({ at }) => headings[at])],
      ...(inch && {
        inches: { text: inch.text, mm: fromHundredths(readThickness(inch) as number) }
      })
    }
  };
}

function refuse(problems: readonly CsvProblem[]): CsvResult {
  const more = problems.length - MOST_PROBLEMS;
  const listed = problems.slice(0, MOST_PROBLEMS);
  return {
    ok: false,
    problems: more > 0 ? [...listed, { code: 'more-problems', count: more }] : listed
  };
}

function readRow(row: SlateRow, places: Places, problems: CsvProblem[]): CsvReading {
  const { line, pallet } = row;
  const cellOf = (column: Column): ColumnCell | undefined => cellsOf(row, places, column).at(0);
  const take = <T>(cell: ColumnCell | undefined, read: (cell: ColumnCell) => T | CsvProblem) => {
    const value = cell && read(cell);
    if (!isProblem(value)) return value;
    problems.push(value);
    return undefined;
  };
  if (pallet === '') problems.push({ code: 'missing-pallet', line });
  if (pallet.length > LONGEST_PALLET) problems.push({ code: 'pallet-too-long', line });

  const thickness = readThicknessOf(row, places, take, problems);
  const grade = take(cellOf('grade'), readGrade);
  const { sample, rocks } = readSample(cellOf, take);
  const faults = sample?.defects ?? [];
  // As on the screen: a slate that is not gauged and has a fault is one set aside.
  const fault = faults.at(0) ?? (sample?.ring === 'dull' ? ('dullRing' as const) : undefined);
  const setAside =
    take(cellOf('setAside'), readSetAside) ??
    (thickness === undefined && grade === undefined && fault
      ? ({ reason: fault, use: 'return' } as const)
      : undefined);
  const isGauged = thickness !== undefined || setAside !== undefined;
  const isWrong = problems.at(-1) !== undefined && lineOf(problems.at(-1)) === line;
  if (!isGauged && !isWrong) {
    if (grade === undefined) problems.push({ code: 'no-reading', line });
    else if (sample || rocks !== undefined)
      problems.push({ code: 'marks-without-thickness', line });
  }
  return withoutUndefined({ line, pallet, ...thickness, grade, setAside, sample, rocks });
}

type Take = <T>(
  cell: ColumnCell | undefined,
  read: (cell: ColumnCell) => T | CsvProblem
) => T | undefined;

/** The thickness of a row, by its points or by one number; undefined where it says none. */
function readThicknessOf(
  row: SlateRow,
  places: Places,
  take: Take,
  problems: CsvProblem[]
): Pick<CsvReading, 'thicknessHundredths' | 'pointsHundredths'> | undefined {
  const { line } = row;
  const single = cellsOf(row, places, 'thickness').flatMap(pointCells);
  const points = (['points', 'point'] as const)
    .flatMap((column) => cellsOf(row, places, column))
    .flatMap(pointCells);
  const cells = points.length > 0 ? points : single;
  if (cells.length === 0) return undefined;
  if (cells.length > MOST_POINTS) {
    problems.push({ code: 'too-many-points', line, found: cells.length });
    return undefined;
  }
  const pointsHundredths = cells.flatMap((cell) => take(cell, readThickness) ?? []);
  if (pointsHundredths.length < cells.length) return undefined;
  const thicknessHundredths = meanHundredths(pointsHundredths);
  if (points.length > 0 && single.length === 1) {
    const told = take(single[0], readThickness);
    if (told !== undefined && Math.abs(told - thicknessHundredths) > MEAN_ROOM)
      problems.push({
        code: 'mean-differs',
        line,
        text: single[0].text,
        meanMm: fromHundredths(thicknessHundredths)
      });
  }
  return { thicknessHundredths, ...(pointsHundredths.length > 1 && { pointsHundredths }) };
}

/**
 * Whether the last line is cut inside its last cell: the file ends without a line break, and a word
 * is half there or a number has fewer decimals than all the others.
 */
function tornLastLine(
  { isEnded }: CsvTable,
  rows: readonly SlateRow[],
  places: Places
): CsvProblem | undefined {
  const last = rows.at(-1);
  if (isEnded || !last) return undefined;
  const { line, cells } = last;
  const torn: CsvProblem = { code: 'torn-last-line', line };
  const end = cells.length - 1;
  const text = cells[end].toLowerCase();
  const isAtEnd = (column: Column): boolean => !!places.get(column)?.some(({ at }) => at === end);
  const before = rows.slice(0, -1).flatMap(({ cells: others }) => others[end] || []);
  if (isAtEnd('grade')) {
    const isHalf = GRADE_WORDS.some((word) => word !== text && word.startsWith(text));
    const isUsual = before.some((other) => !isFullWord(other));
    return text !== '' && isHalf && !isUsual ? torn : undefined;
  }
  if (!isAtEnd('thickness') && !isAtEnd('point')) return undefined;
  if (rows.length < 3) return undefined;
  const others = before.map(decimalsOf);
  const usual = others[0] ?? 0;
  const isRegular = usual > 0 && others.every((decimals) => decimals === usual);
  return text !== '' && isRegular && decimalsOf(text) < usual ? torn : undefined;
}

function isFullWord(text: string): boolean {
  return (GRADE_WORDS as readonly string[]).includes(text.toLowerCase());
}

function decimalsOf(text: string): number {
  return /[.,](\d*)\D*$/.exec(text)?.[1].length ?? 0;
}

/** A column "sample" that says anything but yes and no numbers something else: it is not read. */
function withoutOtherSample(places: Places, rows: readonly SlateRow[]): Places {
  if (columnCells(rows, places, 'sample').every(holdsYesNo)) return places;
  return new Map([...places].filter(([column]) => column !== 'sample'));
}

function cellsOf(row: SlateRow, places: Places, column: Column): ColumnCell[] {
  return (places.get(column) ?? [])
    .map(({ at, unit }) => ({ line: row.line, text: row.cells[at] ?? '', ...(unit && { unit }) }))
    .filter(({ text }) => text !== '');
}

function columnCells(rows: readonly SlateRow[], places: Places, column: Column): ColumnCell[] {
  return rows.flatMap((row) => cellsOf(row, places, column));
}

function lineOf(problem: CsvProblem | undefined): number | undefined {
  return problem && 'line' in problem ? problem.line : undefined;
}

function isProblem(value: unknown): value is CsvProblem {
  return typeof value === 'object' && value !== null && 'code' in value;
}

function withoutUndefined<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, field]) => field !== undefined)) as T;
}
