import type { Dexie } from 'dexie';
import { describe, expect, it } from 'vitest';
import { withReconnect } from './reconnect.ts';

/** A database of which only the connection matters. */
function newDatabase() {
  const log: string[] = [];
  const database = {
    close: () => log.push('close'),
    open: async () => log.push('open')
  };
  return { database: database as unknown as Dexie, log };
}

const lost = (name = 'DatabaseClosedError') => Object.assign(new Error(name), { name });

describe('withReconnect', () => {
  it('J6: gives the answer of work that goes well, and touches nothing', async () => {
    const { database, log } = newDatabase();
    expect(await withReconnect(database, async () => 7)).toBe(7);
    expect(log).toEqual([]);
  });

  it.each(['DatabaseClosedError', 'InvalidStateError', 'UnknownError', 'AbortError'])(
    'J6: opens anew after %s and tries once more, not twice',
    async (name) => {
      const { database, log } = newDatabase();
      let tries = 0;
      const failing = async () => {
        tries++;
        throw lost(name);
      };
      await expect(withReconnect(database, failing)).rejects.toThrow(name);
      expect(tries).toBe(2);
      expect(log).toEqual(['close', 'open']);
    }
  );

  it('J6: does not try again what was wrong in itself, or found no room', async () => {
    for (const error of [
      lost('ConstraintError'),
      Object.assign(lost('AbortError'), { inner: lost('QuotaExceededError') })
    ]) {
      const { database, log } = newDatabase();
      const work = () => Promise.reject(error);
      await expect(withReconnect(database, work)).rejects.toBe(error);
      expect(log).toEqual([]);
    }
  });

  it('J6: work that falls late with the same connection does not close the new one', async () => {
    const { database, log } = newDatabase();
    const fall: (() => void)[] = [];
    const work = async () => {
      const isFirst = !log.includes('open');
      await new Promise<void>((resolve) => (isFirst ? fall.push(resolve) : resolve()));
      if (isFirst) throw lost();
      return 'done';
    };
    const early = withReconnect(database, work);
    const late = withReconnect(database, work);
    await new Promise((resolve) => setTimeout(resolve));
    fall[0]();
    expect(await early).toBe('done');
    fall[1]();
    expect(await late).toBe('done');
    expect(log).toEqual(['close', 'open']);
  });
});
