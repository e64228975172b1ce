/**
 * How many roofs fall into each of some equal bars from 0 to the most kickers, the last one
 * included.
 *
 * @example kickerBars([{ kickers: 0, roofs: 3 }, { kickers: 10, roofs: 1 }], 10, 2) // [3, 1]
 */
export function kickerBars(
  distribution: readonly { readonly kickers: number; readonly roofs: number }[],
  mostKickers: number,
  bars: number
): number[] {
  const counts = new Array<number>(bars).fill(0);
  for (const { kickers, roofs } of distribution) {
    const bar = mostKickers > 0 ? Math.floor((kickers / mostKickers) * bars) : 0;
    counts[Math.min(bars - 1, bar)] += roofs;
  }
  return counts;
}
