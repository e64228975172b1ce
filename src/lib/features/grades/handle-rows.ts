/**
 * Puts handles that would overlap into rows below each other: each into the first row where the one
 * before it is far enough away.
 *
 * @param placesPx where the handles are, rising
 * @param apartPx least distance in one row
 * @returns the row of each, 0 for the top one
 * @example handleRows([10, 30, 80], 50) // [0, 1, 0]
 */
export function handleRows(placesPx: readonly number[], apartPx: number): number[] {
  const ends: number[] = [];
  return placesPx.map((place) => {
    let row = ends.findIndex((end) => place - end >= apartPx);
    if (row < 0) row = ends.length;
    ends[row] = place;
    return row;
  });
}
