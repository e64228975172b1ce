/** A slope to print: how high its picture is and how many lines each of its courses takes. */
export interface SlopeToPrint {
  readonly slopeId: string;
  readonly pictureMm: number;
  /** One line for each pile of a course, from the eaves up; at least one. */
  readonly lines: readonly number[];
}

/** Courses of one slope that stand together on a page, in two columns. */
export interface PagePart {
  readonly slopeId: string;
  /** Whether the slope begins here, with its picture. */
  readonly isStart: boolean;
  /** Whether it ends here, with its total. */
  readonly isEnd: boolean;
  /** Places in the slope's courses: left column, right column; the second of each is not included. */
  readonly columns: Columns;
}

type Columns = readonly [readonly [number, number], readonly [number, number]];

export interface PageSize {
  /** Room on a page below its head, mm. */
  readonly roomMm: number;
  readonly lineMm: number;
  /** Heading of a slope and of its table, and its total, mm. */
  readonly headMm: number;
  readonly totalMm: number;
}

/** Courses that must follow a picture on its page, in lines of a column. Ours. */
const FEWEST_LINES = 4;

/**
 * Courses of all slopes on pages: each slope with its picture first, its courses in two columns below,
 * read down and then across, and its total at their end. A slope begins on the page where the one
 * before it ends wherever its picture and some courses fit, so that no page but the last is left half
 * empty.
 *
 * @example a slope of 36 courses with a picture of 60 mm takes one page of 240 mm
 */
export function coursePages(slopes: readonly SlopeToPrint[], size: PageSize): PagePart[][] {
  const { roomMm, lineMm, headMm, totalMm } = size;
  const pages: PagePart[][] = [];
  let leftMm = 0;
  for (const { slopeId, pictureMm, lines } of slopes) {
    const fewest = Math.min(FEWEST_LINES, Math.ceil(sum(lines) / 2));
    let at = 0;
    let isStart = true;
    do {
      const aboveMm = headMm + (isStart ? pictureMm : 0);
      if (pages.length === 0 || leftMm < aboveMm + fewest * lineMm + totalMm) {
        pages.push([]);
        leftMm = roomMm;
      }
      const height = Math.max(1, Math.floor((leftMm - aboveMm - totalMm) / lineMm));
      const columns = withoutOrphan(twoColumns(lines, at, height), lines.length);
      at = columns[1][1];
      const isEnd = at >= lines.length;
      pages[pages.length - 1].push({ slopeId, isStart, isEnd, columns });
      const used = Math.max(...columns.map(([from, to]) => sum(lines.slice(from, to))));
      leftMm = isEnd ? leftMm - aboveMm - used * lineMm - totalMm : 0;
      isStart = false;
    } while (at < lines.length);
  }
  return pages;
}

/** As many courses as two columns take: as even as can be where all that is left fits. */
function twoColumns(lines: readonly number[], at: number, height: number): Columns {
  const rest = sum(lines.slice(at));
  const leftHeight = Math.min(height, Math.ceil(rest / 2));
  const middle = columnEnd(lines, at, Math.max(leftHeight, lines[at] ?? 0));
  return [
    [at, middle],
    [middle, columnEnd(lines, middle, height)]
  ];
}

/** The same, with a course less where a single one would be left for the next page. */
function withoutOrphan(columns: Columns, courses: number): Columns {
  const [left, [from, to]] = columns;
  const isLone = courses - to === 1 && to - from > 1;
  return isLone ? [left, [from, to - 1]] : columns;
}

/** The first course that a column of so many lines does not take any more. */
function columnEnd(lines: readonly number[], from: number, height: number): number {
  let end = from;
  for (let used = 0; end < lines.length && used + lines[end] <= height; end++) used += lines[end];
  return end;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, number) => total + number, 0);
}
