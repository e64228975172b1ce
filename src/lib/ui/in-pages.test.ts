import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inPages } from './in-pages.ts';

describe('rows on pages', () => {
  it('an empty list is one page', () => {
    expect(inPages([], () => 10)).toEqual([[]]);
  });

  it('a lone last row takes one of the page before', () => {
    expect(inPages([1, 2, 3, 4, 5], () => 4)).toEqual([
      [1, 2, 3],
      [4, 5]
    ]);
  });

  it('the first page may have less room', () => {
    expect(inPages([1, 2, 3, 4], (page) => (page === 0 ? 1 : 3))).toEqual([[1], [2, 3, 4]]);
  });

  it('every row stands once, in order, and no page is overfull', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 5 }), { maxLength: 60 }),
        fc.integer({ min: 5, max: 20 }),
        (sizes, room) => {
          const pages = inPages(
            sizes,
            () => room,
            (size) => size
          );
          expect(pages.flat()).toEqual(sizes);
          // the last page takes one row at most beyond its own
          for (const page of pages.slice(0, -1))
            expect(page.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(room);
        }
      ),
      { seed: 18, numRuns: 200 }
    );
  });
});
