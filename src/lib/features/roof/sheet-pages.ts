import { inPages } from '$lib/ui';

/** Sizes on paper that fit A4 and Letter alike within margins of 12 and 14 mm, below a page's head. */
export const ON_PAPER = {
  roomMm: 240,
  widthMm: 181,
  /** A line of a table in letters of 11 pt. */
  lineMm: 5,
  /** Heading of a table and the words above it. */
  tableHeadMm: 22,
  /** Name, measures, check line, patterns and eaves check of a slope's first page. */
  firstPageMm: 94,
  /** The eaves check of those, which only a slope with an undereave has. */
  eavesMm: 18,
  /** Words above and below the marking stick. */
  stickHeadMm: 16,
  /** Least height of a slope's drawing. */
  leastDrawingMm: 38,
  mostDrawingMm: 92
} as const;

/** Marks of one bond that stand side by side on a stick, in letters of 11 pt. */
const MARKS_A_STICK = 40;

/** What decides how a slope's sheet is divided. */
export interface SheetContent {
  /** Lines of each course, from the eaves up; the undereave is the first. */
  readonly lines: readonly number[];
  /** Marks of the bond that has more; none for random widths, which have no stick. */
  readonly marks: number;
  /** Whether the courses begin at the eave; where left out they do. */
  readonly beginsAtEave?: boolean;
  /** Lines of words above the courses beyond the usual ones. */
  readonly notes?: number;
  /** Height of one marking stick with its numbers. */
  readonly stickMm: number;
}

/** How a slope's sheet is divided. */
export interface SheetPages {
  /** Sticks that the marks are spread over, one below the other. */
  readonly sticks: number;
  readonly stickOn: 'first' | 'last' | 'own' | 'none';
  /** Whether the courses stand below the drawing too. */
  readonly isOnePage: boolean;
  readonly drawingMm: number;
  /** Courses on each page after the first: places in the lines, by column; ends are not included. */
  readonly tables: readonly (readonly (readonly [from: number, to: number])[])[];
  readonly pages: number;
}

/**
 * Divides a slope's sheet: drawing, patterns and marking stick on a first page, a line a course on the
 * second. The stick goes where there is room for it, so that no page is left half empty. Courses stand in one column, or in two where one
 * does not hold them; only a slope of more than 80 courses takes a third page. Without a stick, as for
 * random widths, few courses stand below the drawing, on one page.
 */
export function sheetPages({
  lines,
  marks,
  stickMm,
  beginsAtEave = true,
  notes = 0
}: SheetContent): SheetPages {
  const { roomMm, lineMm, stickHeadMm } = ON_PAPER;
  const firstPageMm = ON_PAPER.firstPageMm - (beginsAtEave ? 0 : ON_PAPER.eavesMm);
  const tableHeadMm = ON_PAPER.tableHeadMm + notes * lineMm;
  const sticks = Math.ceil(marks / MARKS_A_STICK);
  const allSticksMm = sticks > 0 ? stickHeadMm + sticks * stickMm : 0;
  const column = Math.floor((roomMm - tableHeadMm) / lineMm);
  const places = lines.map((_, place) => place);
  const columns = inPages(
    places,
    () => column,
    (place) => lines[place]
  ).map((own): [number, number] => [own[0], own[own.length - 1] + 1]);
  const tables: [number, number][][] = [];
  if (columns.length === 1) tables.push(columns);
  else
    for (let at = 0; at < columns.length; at += 2)
      tables.push(evened(columns.slice(at, at + 2), lines));

  const [drawing, last] = [roomMm - firstPageMm - allSticksMm, tables[tables.length - 1]];
  const used = Math.max(...last.map(([from, to]) => sum(lines.slice(from, to)))) * lineMm;
  const besideTable = drawing - tableHeadMm - used;
  const isOnePage = sticks === 0 && tables.length === 1 && besideTable >= ON_PAPER.leastDrawingMm;
  const isRoomBelow = roomMm - tableHeadMm - used >= allSticksMm;
  const isBelowThin = isRoomBelow && tableHeadMm + used < roomMm / 2;
  const isFirst = drawing >= ON_PAPER.leastDrawingMm && !isBelowThin;
  const stickOn = sticks === 0 ? 'none' : isFirst ? 'first' : isRoomBelow ? 'last' : 'own';
  const drawingMm = isOnePage ? besideTable : stickOn === 'first' ? drawing : roomMm - firstPageMm;
  return {
    sticks,
    stickOn,
    isOnePage,
    drawingMm: Math.min(drawingMm, ON_PAPER.mostDrawingMm),
    tables,
    pages: isOnePage ? 1 : 1 + tables.length + Number(stickOn === 'own')
  };
}

/** Two columns made as even as can be. */
function evened(columns: readonly [number, number][], lines: readonly number[]) {
  if (columns.length < 2) return [...columns];
  const [[from], [, to]] = columns;
  const half = Math.ceil(sum(lines.slice(from, to)) / 2);
  let middle = from;
  for (let used = 0; middle < to && used + lines[middle] <= half; middle++) used += lines[middle];
  return [
    [from, middle],
    [middle, to]
  ] as [number, number][];
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
