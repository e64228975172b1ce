import { isNumber, numberOf, readGrade } from './csv-cells.ts';
import type { Places } from './csv-headings.ts';
import { type TableRow, noteOf } from './csv-table.ts';
import type { CsvNote, CsvReadAs, CsvSum } from './csv-types.ts';
import { withoutGuard } from './csv-write.ts';

/** A row of a slate, with the pallet it is on. */
export interface SlateRow extends TableRow {
  /** Empty where neither the row nor one above it says so. */
  readonly pallet: string;
}

/** The rows below the headings, told apart. */
export interface SortedRows {
  readonly slates: readonly SlateRow[];
  readonly notes: readonly CsvNote[];
  readonly filled: CsvReadAs['filled'];
  readonly sums: readonly CsvSum[];
}

/** What a person calls a line that sums the others up, in the languages of the app. */
const SUM_NAMES = new Set([
  ...['mean', 'average', 'avg', 'total', 'totals', 'grandtotal', 'subtotal', 'sum', 'count'],
  ...['min', 'minimum', 'max', 'maximum', 'sd', 'stdev', 'stddev', 'standarddeviation'],
  ...['median', 'range', 'cv', 'variance'],
  ...['moyenne', 'somme', 'médiane', 'écarttype', 'media', 'promedio', 'suma', 'mediana'],
  ...['średnia', 'razem', 'medie', 'mediană']
]);
/** A pallet that has more lines than this is one, whatever it is called. */
const MOST_SUMS_OF_A_NAME = 2;
/** A note between readings: `//`, or `#` and more than one word. */
const NOTE = /^(\/\/|#.*\S\s+\S)/;

interface Row {
  readonly row: TableRow;
  /** What the row itself says. */
  readonly own: string;
  pallet: string;
}

/**
 * Tells slates from other lines: notes, headings that come again, a line of units under the
 * headings, a pallet's name on a line of its own above its slates. A blank pallet is that of the
 * line above, as merged cells leave it. Lines that look like a mean or a total are kept apart unless
 * a person said that they are slates.
 */
export function sortRows(
  headings: readonly string[],
  all: readonly TableRow[],
  places: Places,
  takesSums: boolean
): SortedRows {
  const at = places.get('pallet')?.[0].at ?? 0;
  const readAt = [...places].flatMap(([column, columns]) =>
    column === 'pallet' ? [] : columns.map((place) => place.at)
  );
  const ownOf = ({ cells }: TableRow): string => withoutGuard(cells[at] ?? '').trim();
  const saysMore = ({ cells }: TableRow): boolean => readAt.some((cell) => !!cells[cell]);
  const numbersAt = (['thickness', 'point', 'points'] as const).flatMap((column) =>
    (places.get(column) ?? []).map((place) => place.at)
  );
  const gradeAt = places.get('grade')?.[0].at ?? -1;
  const asideAt = places.get('setAside')?.[0].at ?? -1;
  const isNote = ({ line, cells }: TableRow): boolean =>
    NOTE.test(cells.find((cell) => cell !== '') ?? '') &&
    !numbersAt.some((cell) => isNumber(cells[cell] ?? '')) &&
    typeof readGrade({ line, text: cells[gradeAt] ?? '' }) !== 'number' &&
    !cells[asideAt];

  const notes: CsvNote[] = [];
  const rows: Row[] = [];
  let above = '';
  for (const [index, row] of all.entries()) {
    const own = ownOf(row);
    const next = all.at(index + 1);
    if (isNote(row) || isHeadingAgain(row, headings) || (index === 0 && isUnits(row)))
      notes.push(noteOf(row));
    else if (own !== '' && !saysMore(row) && next && ownOf(next) === '' && saysMore(next))
      above = own;
    else {
      if (own !== '') above = own;
      rows.push({ row, own, pallet: above });
    }
  }
  const sums = takesSums ? new Map<Row, CsvSum['why']>() : sumsAmong(rows, numbersAt);
  const slates = rows.filter((row) => !sums.has(row));
  return {
    slates: slates.map(({ row, pallet }) => ({ ...row, pallet })),
    notes,
    filled: slates
      .filter(({ own, pallet }) => own === '' && pallet !== '')
      .map(({ row }) => row.line),
    sums: [...sums].map(([{ row, pallet }, why]) => ({ ...noteOf(row), why, pallet }))
  };
}

function isHeadingAgain({ cells }: TableRow, headings: readonly string[]): boolean {
  return cells.length >= headings.length && headings.every((heading, at) => heading === cells[at]);
}

function isUnits({ cells }: TableRow): boolean {
  return cells.every((cell) => cell === '' || /^[([]?\s*(mm|no\.?|nr\.?|#)\s*[)\]]?$/i.test(cell));
}

/** The rows that are called a mean or a total, or whose number is one and that have no pallet. */
function sumsAmong(rows: readonly Row[], numbersAt: readonly number[]): Map<Row, CsvSum['why']> {
  const sums = new Map<Row, CsvSum['why']>();
  const named = new Map<string, Row[]>();
  for (const row of rows) {
    if (!SUM_NAMES.has(row.own.toLowerCase().replace(/[^\p{L}]/gu, ''))) continue;
    const some = named.get(row.own);
    if (some) some.push(row);
    else named.set(row.own, [row]);
  }
  for (const some of named.values())
    if (some.length <= MOST_SUMS_OF_A_NAME) for (const row of some) sums.set(row, 'name');

  const isBlank = (at: number): boolean => rows[at]?.own === '';
  // Two blanks in a row are merged cells, in which a blank tells nothing.
  const isMerged = rows.some((_, at) => isBlank(at) && isBlank(at + 1));
  const whole = new Tally(numbersAt);
  let group = new Tally(numbersAt);
  for (const [at, row] of rows.entries()) {
    if (sums.has(row)) continue;
    if (row.pallet !== rows[at - 1]?.pallet) group = new Tally(numbersAt);
    const isLast = at === rows.length - 1;
    const isAlone = !isMerged && at > 0 && !isBlank(at - 1) && !isBlank(at + 1);
    const isSum =
      isBlank(at) &&
      ((isLast && whole.isSummedUpBy(row.row)) || (isAlone && group.isSummedUpBy(row.row)));
    if (isSum) sums.set(row, 'value');
    else for (const tally of [whole, group]) tally.add(row.row);
  }
  return sums;
}

/** The numbers of some columns so far. */
class Tally {
  readonly #columns: Map<number, { sum: number; count: number }>;

  constructor(numbersAt: readonly number[]) {
    this.#columns = new Map(numbersAt.map((at) => [at, { sum: 0, count: 0 }]));
  }

  add({ cells }: TableRow): void {
    for (const [at, column] of this.#columns) {
      const value = numberOf(cells[at] ?? '');
      if (value === undefined) continue;
      column.sum += value;
      column.count++;
    }
  }

  /** Whether every number of a row is the mean, or every one the sum, of those above it. */
  isSummedUpBy({ cells }: TableRow): boolean {
    const filled = [...this.#columns].filter(([at]) => cells[at]);
    const matches = (of: (column: { sum: number; count: number }) => number): boolean =>
      filled.every(([at, column]) => {
        const value = numberOf(cells[at]);
        const decimals = /[.,](\d+)/.exec(cells[at])?.[1].length ?? 0;
        const room = 0.5 * 10 ** -decimals + 1e-9;
        return value !== undefined && column.count > 0 && Math.abs(value - of(column)) <= room;
      });
    return (
      filled.length > 0 && (matches(({ sum }) => sum) || matches((one) => one.sum / one.count))
    );
  }
}
