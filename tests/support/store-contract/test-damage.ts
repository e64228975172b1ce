import { EvencourseDatabase } from '../../../src/lib/storage/database.ts';
import type { MemoryDatabase } from '../memory-store.ts';
import type { Damage } from './kit.ts';

/** Damages a device's database past the app, whose middleware refuses to change an event. */
export function damageTo(name: string): Damage {
  const raw = async (table: string, work: (store: IDBObjectStore) => void): Promise<void> => {
    const database = new EvencourseDatabase(name);
    await database.open();
    await new Promise<void>((resolve, reject) => {
      const writing = database.backendDB().transaction(table, 'readwrite');
      work(writing.objectStore(table));
      writing.oncomplete = () => resolve();
      writing.onerror = () => reject(writing.error ?? new Error('not written'));
    });
    database.close();
  };
  return {
    loseEvents: (jobId, ids) =>
      raw('events', (events) => {
        for (const id of ids) events.delete([jobId, id]);
      }),
    spoilEvent: (jobId, id) =>
      raw('events', (events) => {
        const reading = events.get([jobId, id]);
        reading.onsuccess = () => {
          const row = reading.result as Record<string, unknown>;
          delete row.body;
          events.put(row);
        };
      }),
    lose: (what, jobId) =>
      what === 'row'
        ? raw('jobs', (jobs) => jobs.delete(jobId))
        : raw('parts', (parts) => parts.delete([jobId, 'pallet:p1']))
  };
}

/** The same in memory. */
export function damageToMemory(database: MemoryDatabase): Damage {
  const jobIn = (jobId: string) => {
    const job = database.jobs.get(jobId);
    if (!job) throw new Error('no job to damage');
    return job;
  };
  return {
    loseEvents: async (jobId, ids) => {
      for (const id of ids) jobIn(jobId).events.delete(id);
    },
    spoilEvent: async (jobId, id) => {
      const { events } = jobIn(jobId);
      const event = events.get(id);
      if (event) events.set(id, { ...event, body: undefined as never });
    },
    lose: async (what, jobId) => {
      const job = jobIn(jobId);
      if (what === 'row') database.rowless.add(jobId);
      else {
        const view = new Map(job.view);
        view.delete('pallet:p1');
        database.jobs.set(jobId, { ...job, view });
      }
    }
  };
}
