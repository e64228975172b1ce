/** Resolves in a task of its own: the page has drawn and answered what waited till then. */
export function nextTask(): Promise<void> {
  return new Promise((resume) => setTimeout(resume));
}

/**
 * Does what takes long in steps, each in a task of its own, so that the page is never busy for long.
 * A step that works out what is remembered makes the next one cheap.
 */
export async function inTurn(...steps: readonly (() => unknown)[]): Promise<void> {
  for (const step of steps) {
    await nextTask();
    step();
  }
}
