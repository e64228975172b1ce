/** So many entries at a time: about 20 ms on a slow phone. */
const PIECE = 200;

/** Works on many entries piece by piece: in between, the page takes taps and draws. */
export async function inPieces<T>(
  items: readonly T[],
  work: (item: T, at: number) => void
): Promise<void> {
  for (let at = 0; at < items.length; at++) {
    if (at > 0 && at % PIECE === 0) await new Promise((resume) => setTimeout(resume, 0));
    work(items[at], at);
  }
}
