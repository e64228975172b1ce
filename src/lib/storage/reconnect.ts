import type { Dexie } from 'dexie';

/** Errors by which a browser says that it dropped the connection, not that the work was wrong. */
const LOST = ['DatabaseClosedError', 'InvalidStateError', 'UnknownError', 'AbortError'];

/**
 * Does some work on the database; when the browser dropped the connection meanwhile (phones do so
 * in the background), opens it anew and does the work once more. The work must be safe to repeat.
 */
export async function withReconnect<T>(database: Dexie, work: () => PromiseLike<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!isLostConnection(error)) throw error;
    database.close({ disableAutoOpen: false });
    await database.open();
    return await work();
  }
}

/** Whether the disk is full: the error or what it wraps says so. */
export function isQuotaExceeded(error: unknown): boolean {
  return namesOf(error).includes('QuotaExceededError');
}

function isLostConnection(error: unknown): boolean {
  const names = namesOf(error);
  return !names.includes('QuotaExceededError') && names.some((name) => LOST.includes(name));
}

function namesOf(error: unknown): string[] {
  const outer = error as { name?: string; inner?: { name?: string } } | null | undefined;
  return [outer?.name, outer?.inner?.name].filter((name) => name !== undefined);
}
