import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupsInPages } from './groups-in-pages.ts';

const one = { roomOf: () => 6, head: 1, sizeOf: () => 1 };

describe('groups of rows on pages', () => {
  it('an empty list is one page', () => {
    expect(groupsInPages([], one)).toEqual([[]]);
    expect(groupsInPages([[]], one)).toEqual([[]]);
  });

  it('a heading goes to the next page where only one of its rows would stand below it', () => {
    const pages = groupsInPages(
      [
        ['a', 'b', 'c'],
        ['d', 'e', 'f']
      ],
      one
    );
    expect(pages.map((page) => page.map(({ rows }) => rows.join('')))).toEqual([['abc'], ['def']]);
  });

  it('a group leaves two rows for the next page, not one, and goes on below its heading', () => {
    const pages = groupsInPages([['a', 'b', 'c', 'd', 'e', 'f']], one);
    expect(pages).toEqual([
      [{ group: 0, rows: ['a', 'b', 'c', 'd'], isStart: true, isEnd: false }],
      [{ group: 0, rows: ['e', 'f'], isStart: false, isEnd: true }]
    ]);
  });

  it('a total never stands without rows above it', () => {
    const pages = groupsInPages([['a', 'b', 'c', 'd', 'e']], { ...one, foot: 1 });
    expect(pages.map(([{ rows }]) => rows.length)).toEqual([3, 2]);
  });

  it('holds every row once, in order, fills no page beyond its room and strands nothing', () => {
    let parts = 0;
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: 1, max: 4 }), { maxLength: 40 }), { maxLength: 8 }),
        fc.integer({ min: 15, max: 40 }),
        fc.integer({ min: 0, max: 3 }),
        fc.integer({ min: 0, max: 8 }),
        (groups, room, foot, lead) => {
          const roomOf = (page: number) => (page === 0 ? room - lead : room);
          const sizes = { roomOf, head: 2, foot, sizeOf: (size: number) => size };
          const pages = groupsInPages(groups, sizes);
          for (const [group, rows] of groups.entries()) {
            const own = pages.flat().filter((part) => part.group === group);
            expect(own.flatMap((part) => part.rows)).toEqual(rows);
            expect(own.filter(({ isStart }) => isStart)).toHaveLength(Math.min(1, rows.length));
            expect(own.at(-1)?.isEnd ?? true).toBe(true);
            for (const part of own)
              expect(part.rows.length).toBeGreaterThanOrEqual(Math.min(2, rows.length));
            parts += own.length;
          }
          for (const [page, own] of pages.entries()) {
            const used = own.reduce(
              (sum, { rows, isEnd }) =>
                sum + 2 + rows.reduce((all, size) => all + size, 0) + (isEnd ? foot : 0),
              0
            );
            // three rows of 4 below a heading, with their total, are the most that must stand together
            expect(used).toBeLessThanOrEqual(Math.max(roomOf(page), 2 + 12 + foot));
            if (groups.some((rows) => rows.length > 0)) expect(own.length).toBeGreaterThan(0);
          }
        }
      ),
      { seed: 18, numRuns: 400 }
    );
    expect(parts).toBeGreaterThan(1000);
  });
});
