/**
 * Rows spread over printed pages, as many to each as it has room for, in their order. The last page is
 * never a lone row: it takes some of the page before, so that nobody overlooks it.
 *
 * @param rows what stands one below the other; its size says how much room it takes
 * @param roomOf room on a page, in the unit of the sizes; page 0 is the first
 * @param sizeOf room that a row takes; a row larger than a page has one for itself
 * @returns at least one page; together they hold every row once
 * @example inPages([1, 2, 3, 4, 5], () => 4) // [[1, 2, 3], [4, 5]]
 */
export function inPages<Row>(
  rows: readonly Row[],
  roomOf: (page: number) => number,
  sizeOf: (row: Row) => number = () => 1
): Row[][] {
  const pages: Row[][] = [[]];
  let used = 0;
  for (const row of rows) {
    const size = sizeOf(row);
    if (used > 0 && used + size > roomOf(pages.length - 1)) {
      pages.push([]);
      used = 0;
    }
    pages[pages.length - 1].push(row);
    used += size;
  }
  const [before, last] = pages.slice(-2);
  if (pages.length > 1 && last.length < FEWEST_ROWS && before.length > FEWEST_ROWS + 1)
    last.unshift(...before.splice(before.length - (FEWEST_ROWS - last.length)));
  return pages;
}

/** Rows that a last page has at least, where the page before can spare them. Ours. */
const FEWEST_ROWS = 2;
