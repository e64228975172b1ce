/**
 * Line numbers, rising, as runs: neighbours joined.
 *
 * @example lineRanges([3, 4, 5, 8]) // ['3–5', '8']
 */
export function lineRanges(lines: readonly number[]): string[] {
  const runs: { from: number; to: number }[] = [];
  for (const line of lines) {
    const last = runs.at(-1);
    if (last && line === last.to + 1) last.to = line;
    else runs.push({ from: line, to: line });
  }
  return runs.map(({ from, to }) => (from === to ? `${from}` : `${from}–${to}`));
}
