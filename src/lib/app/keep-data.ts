let hasAsked = false;

/**
 * Asks the browser to keep what is saved here even when space runs short. Called after every save;
 * it asks once per start of the app, and only where that is not promised already.
 */
export async function keepData(): Promise<void> {
  if (hasAsked) return;
  hasAsked = true;
  try {
    if (!(await navigator.storage?.persisted?.())) await navigator.storage?.persist?.();
  } catch {
    // A browser that cannot be asked keeps data as it likes; Settings says so.
  }
}
