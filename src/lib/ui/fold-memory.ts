/** Key of the folds of this device; nothing of a job is kept there. */
const KEY = 'evencourse.folds';

/**
 * Which folds this device opened or closed last. A browser that keeps nothing for us (private
 * window, storage switched off) only means that every fold starts as it was made.
 */
export const foldMemory = {
  /** Whether the fold was left open; undefined where it was never touched. */
  recall(name: string): boolean | undefined {
    return read().get(name);
  },
  keep(name: string, isOpen: boolean): void {
    const folds = read();
    folds.set(name, isOpen);
    try {
      localStorage.setItem(KEY, JSON.stringify([...folds]));
    } catch {
      // Not remembered: the screen works all the same.
    }
  }
};

function read(): Map<string, boolean> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    if (!Array.isArray(kept)) return new Map();
    return new Map(
      kept.filter(
        (pair): pair is [string, boolean] =>
          Array.isArray(pair) && typeof pair[0] === 'string' && typeof pair[1] === 'boolean'
      )
    );
  } catch {
    return new Map();
  }
}
