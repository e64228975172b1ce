import { describe, expect, it } from 'vitest';
import { type SlopeToPrint, coursePages } from './course-pages.ts';

const SIZE = { roomMm: 235, lineMm: 5, headMm: 14, totalMm: 7 };

function slope(
  slopeId: string,
  courses: number,
  pictureMm = 60,
  ofTwo: number[] = []
): SlopeToPrint {
  const lines = Array.from({ length: courses }, (_, n) => (ofTwo.includes(n) ? 2 : 1));
  return { slopeId, pictureMm, lines };
}

/** Every course of a slope in the order in which it is read, and the height of each page. */
function read(slopes: SlopeToPrint[]) {
  const pages = coursePages(slopes, SIZE);
  const courses = new Map<string, number[]>();
  const heights = pages.map((page) =>
    page.reduce((height, { slopeId, isStart, isEnd, columns }) => {
      const own = slopes.find((one) => one.slopeId === slopeId) as SlopeToPrint;
      const columnLines = columns.map(([from, to]) =>
        own.lines.slice(from, to).reduce((sum, lines) => sum + lines, 0)
      );
      for (const [from, to] of columns)
        for (let at = from; at < to; at++)
          courses.set(slopeId, [...(courses.get(slopeId) ?? []), at]);
      const tableMm = Math.max(...columnLines) * SIZE.lineMm;
      const pictureMm = isStart ? own.pictureMm : 0;
      return height + SIZE.headMm + pictureMm + tableMm + (isEnd ? SIZE.totalMm : 0);
    }, 0)
  );
  return { pages, courses, heights };
}

describe('coursePages', () => {
  it('puts a slope of 36 courses on one page, half of them in each column', () => {
    const { pages } = read([slope('s', 36)]);
    expect(pages).toHaveLength(1);
    expect(pages[0][0]).toMatchObject({ isStart: true, isEnd: true });
    expect(pages[0][0].columns).toEqual([
      [0, 18],
      [18, 36]
    ]);
  });

  it.each([
    ['many', [slope('a', 36), slope('b', 36), slope('c', 12), slope('d', 110)]],
    ['short ones', Array.from({ length: 9 }, (_, n) => slope(`s${n}`, 3, 20))],
    ['courses of two piles', [slope('a', 61, 60, [3, 30, 31, 60]), slope('b', 5, 60, [0, 1, 2])]],
    ['one course', [slope('a', 1)]]
  ])(
    '%s: every course once and in order, no page too full, none but the last under half',
    (_, all) => {
      const { courses, heights } = read(all);
      for (const { slopeId, lines } of all)
        expect(courses.get(slopeId)).toEqual(lines.map((_line, at) => at));
      for (const height of heights) expect(height).toBeLessThanOrEqual(SIZE.roomMm);
      for (const height of heights.slice(0, -1))
        expect(height).toBeGreaterThanOrEqual(SIZE.roomMm / 2);
    }
  );

  it('needs at most two pages for a slope of 100 courses, its total at the end alone', () => {
    const { pages } = read([slope('s', 100)]);
    expect(pages.length).toBeLessThanOrEqual(2);
    expect(pages.flat().map(({ isEnd }) => isEnd)).toEqual([false, true]);
  });

  it('leaves no lone course for a page, however many there are', () => {
    for (let courses = 2; courses <= 160; courses++)
      for (const [{ columns }] of coursePages([slope('s', courses)], SIZE))
        expect(columns[1][1] - columns[0][0], `${courses} courses`).toBeGreaterThan(1);
  });

  it('gives no page for no slope', () => {
    expect(coursePages([], SIZE)).toEqual([]);
  });
});
