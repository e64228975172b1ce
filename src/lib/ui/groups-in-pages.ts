/** Rows of one group that stand together on a page. */
export interface PartOfGroup<Row> {
  /** Place of its group in the list given. */
  readonly group: number;
  readonly rows: readonly Row[];
  /** Whether the group begins here; else its heading says that it goes on. */
  readonly isStart: boolean;
  /** Whether it ends here, with what stands below its last row. */
  readonly isEnd: boolean;
}

/** Sizes of what is printed, all in one unit. */
export interface GroupSizes<Row> {
  /** Room on a page; page 0 is the first. */
  readonly roomOf: (page: number) => number;
  /** A group's heading, which stands above its rows on every page. */
  readonly head: number;
  /** What stands below a group's last row, such as a total. */
  readonly foot?: number;
  readonly sizeOf: (row: Row) => number;
}

/** Rows of a group that stand together at least, where it has so many. Ours. */
const FEWEST = 2;

/**
 * Groups of rows spread over printed pages in their order, one below the other. No heading stands
 * without two of its rows, no row of a longer group stands alone, and what stands below a group follows
 * two of its rows at least.
 *
 * @param groups groups without rows are left out
 * @returns at least one page; together they hold every row once, in order. A page is overfull only where
 * a heading and the two rows that it must have need more than a page
 * @example
 * groupsInPages([['a', 'b', 'c']], { roomOf: () => 3, head: 1, sizeOf: () => 1 }).length // 1: a lone row never stands
 */
export function groupsInPages<Row>(
  groups: readonly (readonly Row[])[],
  { roomOf, head, foot = 0, sizeOf }: GroupSizes<Row>
): PartOfGroup<Row>[][] {
  const pages: PartOfGroup<Row>[][] = [[]];
  let left = roomOf(0);
  for (const [group, rows] of groups.entries())
    for (let at = 0; at < rows.length;) {
      const page = pages[pages.length - 1];
      const rest = rows.slice(at);
      const taken = rowsThatFit(rest.map(sizeOf), left - head, foot);
      if (taken === 0 && page.length > 0) {
        pages.push([]);
        left = roomOf(pages.length - 1);
        continue;
      }
      // An empty page takes what must stand together, even where that is too large for it.
      const own = rest.slice(0, taken || leastOf(rest.length));
      at += own.length;
      const isEnd = at === rows.length;
      page.push({ group, rows: own, isStart: own.length === at, isEnd });
      left -= head + own.reduce((sum, row) => sum + sizeOf(row), 0) + (isEnd ? foot : 0);
    }
  return pages;
}

/** Fewest rows that begin a group of so many: two, and never so that one is left over. */
function leastOf(count: number): number {
  return count <= FEWEST + 1 ? count : FEWEST;
}

/** Rows of a group that a room takes; 0 where it takes too few to begin there. */
function rowsThatFit(sizes: readonly number[], room: number, foot: number): number {
  const all = sizes.reduce((sum, size) => sum + size, 0);
  if (all + foot <= room) return sizes.length;
  let taken = 0;
  for (let used = 0; taken < sizes.length && used + sizes[taken] <= room; taken++)
    used += sizes[taken];
  taken = Math.min(taken, sizes.length - FEWEST);
  return taken >= FEWEST ? taken : 0;
}
