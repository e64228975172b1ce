import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ON_PAPER, sheetPages } from './sheet-pages.ts';

const ones = (count: number) => Array.from({ length: count }, () => 1);

describe('the pages of a slope', () => {
  it('30 courses take a page with drawing and stick and a page of lines', () => {
    const division = sheetPages({ lines: ones(31), marks: 33, stickMm: 36 });
    expect(division).toMatchObject({ sticks: 1, stickOn: 'first', pages: 2 });
    expect(division.tables).toEqual([[[0, 31]]]);
  });

  it('80 courses stand in two even columns on the second page', () => {
    const division = sheetPages({ lines: ones(81), marks: 33, stickMm: 36 });
    expect(division.pages).toBe(2);
    expect(division.tables).toEqual([
      [
        [0, 41],
        [41, 81]
      ]
    ]);
  });

  it('a slope of few courses has its stick below them, so that no page is half empty', () => {
    expect(sheetPages({ lines: ones(9), marks: 33, stickMm: 36 }).stickOn).toBe('last');
  });

  it('without a stick few courses stand below the drawing, on one page that has room for both', () => {
    for (let courses = 2; courses <= 80; courses++)
      for (const notes of [0, 2, 4]) {
        const given = { lines: ones(courses), marks: 0, stickMm: 12, notes };
        const { isOnePage, stickOn, pages, drawingMm, tables } = sheetPages(given);
        expect(stickOn).toBe('none');
        expect(pages).toBe(isOnePage ? 1 : 1 + tables.length);
        expect(drawingMm).toBeGreaterThanOrEqual(ON_PAPER.leastDrawingMm);
        const tableMm = ON_PAPER.tableHeadMm + (notes + courses) * ON_PAPER.lineMm;
        if (isOnePage) {
          expect(tables).toEqual([[[0, courses]]]);
          const usedMm = ON_PAPER.firstPageMm + drawingMm + tableMm;
          expect(usedMm).toBeLessThanOrEqual(ON_PAPER.roomMm);
        } else
          expect(ON_PAPER.firstPageMm + ON_PAPER.leastDrawingMm + tableMm).toBeGreaterThan(
            ON_PAPER.roomMm
          );
      }
  });

  it('every course stands once, and no page holds more than it has room for', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 2 }), { minLength: 2, maxLength: 160 }),
        fc.integer({ min: 3, max: 130 }),
        fc.integer({ min: 25, max: 60 }),
        (lines, marks, stickMm) => {
          const { tables, sticks, stickOn, drawingMm, pages } = sheetPages({
            lines,
            marks,
            stickMm
          });
          const places = tables.flat().flatMap(([from, to]) => {
            expect(to).toBeGreaterThan(from);
            return Array.from({ length: to - from }, (_, index) => from + index);
          });
          expect(places).toEqual(lines.map((_, index) => index));
          const sticksMm = ON_PAPER.stickHeadMm + sticks * stickMm;
          expect(drawingMm).toBeGreaterThanOrEqual(ON_PAPER.leastDrawingMm);
          const firstMm = ON_PAPER.firstPageMm + drawingMm + (stickOn === 'first' ? sticksMm : 0);
          expect(firstMm).toBeLessThanOrEqual(ON_PAPER.roomMm);
          for (const [index, columns] of tables.entries()) {
            const isLast = index === tables.length - 1;
            for (const [from, to] of columns) {
              const high = lines.slice(from, to).reduce((sum, own) => sum + own, 0);
              const usedMm = ON_PAPER.tableHeadMm + high * ON_PAPER.lineMm;
              expect(usedMm + (isLast && stickOn === 'last' ? sticksMm : 0)).toBeLessThanOrEqual(
                // a column that was made even, or took a lone last row, is two lines longer at most
                ON_PAPER.roomMm + 2 * ON_PAPER.lineMm
              );
            }
          }
          const courses = lines.reduce((sum, own) => sum + own, 0);
          if (courses <= 80 && stickOn !== 'own') expect(pages).toBe(2);
        }
      ),
      { seed: 18, numRuns: 300 }
    );
  });
});
