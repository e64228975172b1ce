import type { LeftPage } from './left-page.ts';

/** Errors by which a browser says that it dropped the connection, not that the work was wrong. */
const LOST = ['DatabaseClosedError', 'InvalidStateError', 'UnknownError', 'AbortError'];

/** What is asked of a database here: its connection, and whether its page is put by. */
interface Connected {
  open(): PromiseLike<unknown>;
  close(options: { disableAutoOpen: boolean }): void;
  readonly leftPage?: LeftPage;
}

/** By database, its present connection: a number, and the opening under way if there is one. */
const connections = new WeakMap<Connected, { number: number; opening: Promise<unknown> }>();

/**
 * Does some work on the database; when the browser dropped the connection meanwhile (phones do so
 * in the background), opens it anew and does the work once more. The work must be safe to repeat.
 *
 * Of several pieces of work that fall with one connection, only the first opens a new one: a second
 * closing would fell the repeats of the others.
 */
export async function withReconnect<T>(
  database: Connected,
  work: () => PromiseLike<T>
): Promise<T> {
  const connection = connections.get(database) ?? { number: 0, opening: Promise.resolve() };
  connections.set(database, connection);
  await connection.opening.catch(() => undefined);
  await database.leftPage?.whenShown();
  const usedBy = connection.number;
  try {
    return await work();
  } catch (error) {
    if (!isLostConnection(error)) throw error;
    await database.leftPage?.whenShown();
    if (connection.number === usedBy) {
      connection.number++;
      database.close({ disableAutoOpen: false });
      connection.opening = Promise.resolve(database.open());
    }
    await connection.opening;
    return await work();
  }
}

/** Whether the disk is full: the error, what it wraps, or one of several that it gathers says so. */
export function isQuotaExceeded(error: unknown): boolean {
  return namesOf(error).includes('QuotaExceededError');
}

function isLostConnection(error: unknown): boolean {
  const names = namesOf(error);
  return !names.includes('QuotaExceededError') && names.some((name) => LOST.includes(name));
}

interface Wrapping {
  name?: unknown;
  inner?: unknown;
  cause?: unknown;
  failures?: unknown;
}

/** The names of an error and of all that it wraps, to a few levels. */
function namesOf(error: unknown, level = 0): string[] {
  if (typeof error !== 'object' || error === null || level > 4) return [];
  const { name, inner, cause, failures } = error as Wrapping;
  const wrapped = [inner, cause, ...(Array.isArray(failures) ? failures.slice(0, 10) : [])];
  return [
    ...(typeof name === 'string' ? [name] : []),
    ...wrapped.flatMap((one) => namesOf(one, level + 1))
  ];
}
