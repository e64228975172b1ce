import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StoredEvent } from '$lib/journal';
import { EvencourseDatabase } from './database.ts';
import { EventTables } from './event-tables.ts';

const [JOB, OTHER] = ['a', 'b'];
const SIZES = { batch: 4, bundle: 2, leastBundle: 1 };

function event(jobId: string, place: number): StoredEvent {
  return {
    id: `id-${String(place).padStart(4, '0')}`,
    jobId,
    deviceId: 'd',
    deviceSeq: place,
    at: '',
    sorter: '',
    type: 'slateTapped',
    v: 1,
    body: {}
  };
}

/** For each place in the order of ids, how its event came: 0 as this device's act, else in that merge. */
const ways = fc.array(fc.oneof(fc.constant(0), fc.nat(4)), { minLength: 1, maxLength: 60 });

let made = 0;

async function tablesOf(came: readonly number[]) {
  const database = new EvencourseDatabase(`event tables ${made++}`);
  const tables = new EventTables(database, SIZES);
  const all = came.map((_, place) => event(JOB, place));
  const write = <T>(work: () => Promise<T>) =>
    database.transaction('rw', [database.events, database.bundles], async () => work());
  await write(async () => {
    await tables.add([...all.filter((_, place) => came[place] === 0), event(OTHER, 1)]);
    for (let way = 1; way <= 4; way++)
      await tables.addBundles(
        JOB,
        all.filter((_, place) => came[place] === way)
      );
    await tables.addBundles(OTHER, [event(OTHER, 2)]);
  });
  return { database, tables, all, read: write };
}

describe('EventTables', () => {
  it('J7, J14: gives one run in order of id, however the events came and lie', async () => {
    let overlapping = 0;
    await fc.assert(
      fc.asyncProperty(ways, fc.nat(59), fc.nat(59), async (came, one, two) => {
        const { database, tables, all, read } = await tablesOf(came);
        await read(async () => {
          const run: StoredEvent[] = [];
          for (let above = ''; ; above = run[run.length - 1].id) {
            const next = await tables.next(JOB, above);
            if (next.length === 0) break;
            run.push(...next);
          }
          expect(run).toEqual(all);
          const [from, to] = [Math.min(one, two), Math.max(one, two)].map((at) => event(JOB, at));
          const part: StoredEvent[] = [];
          for (let above = from.id; ; above = part[part.length - 1].id) {
            const next = await tables.next(JOB, above, to.id);
            if (next.length === 0) break;
            part.push(...next);
          }
          expect(part).toEqual(all.filter(({ id }) => id > from.id && id <= to.id));
        });
        if (new Set(came.filter((way) => way > 0)).size > 1) overlapping++;
        database.close();
      }),
      { seed: 20_261, numRuns: 150 }
    );
    expect(overlapping).toBeGreaterThan(50);
  });

  it('J7, J14: finds the newest and those with given ids, and counts all', async () => {
    await fc.assert(
      fc.asyncProperty(
        ways,
        fc.integer({ min: 1, max: 20 }),
        fc.array(fc.nat(70)),
        async (came, limit, places) => {
          const { database, tables, all, read } = await tablesOf(came);
          await read(async () => {
            expect(await tables.newest(JOB, limit)).toEqual(all.slice(-limit).reverse());
            const ids = places.map((place) => event(JOB, place).id);
            expect(await tables.with(JOB, ids)).toEqual(places.map((place) => all[place]));
            expect(await tables.count()).toBe(all.length + 2);
          });
          database.close();
        }
      ),
      { seed: 20_262, numRuns: 150 }
    );
  });
});
