import { Dexie, type Table } from 'dexie';
import type { AnyPart, StoredEvent } from '$lib/journal';

/** One part of a job's view, as last folded. */
export interface PartRow {
  jobId: string;
  part: string;
  value: AnyPart;
}

/** What the list of jobs shows and what an append must know; rewritten with every act. */
export interface JobRow {
  jobId: string;
  name: string;
  /** Events of this job on this device: rises by one with each act, in whichever tab. */
  revision: number;
  lastId: string;
  lastAt: string;
  viewVersion: number;
  /** Events that were in the newest backup. */
  exported: number;
  exportedAt: string | null;
  /** The last deviceSeq of each device. */
  sequences: Record<string, number>;
}

export interface PhotoRow {
  photoId: string;
  jobId: string;
  blob: Blob;
}

export interface DeviceRow {
  name: string;
  value: unknown;
}

/** The device's database. Only this folder opens it. */
export class EvencourseDatabase extends Dexie {
  declare events: Table<StoredEvent, [string, string]>;
  declare parts: Table<PartRow, [string, string]>;
  declare jobs: Table<JobRow, string>;
  declare photos: Table<PhotoRow, string>;
  declare device: Table<DeviceRow, string>;

  constructor(name = 'evencourse') {
    // Browsers write IndexedDB lazily by default; an acknowledged reading must be on the disk.
    super(name, { chromeTransactionDurability: 'strict', cache: 'disabled' });
    this.version(1).stores({
      events: '[jobId+id], &[jobId+deviceId+deviceSeq]',
      parts: '[jobId+part]',
      jobs: 'jobId, lastAt',
      photos: 'photoId, jobId',
      device: 'name'
    });
    this.use({ stack: 'dbcore', name: 'append-only', create: appendOnly });
  }
}

type Core = Parameters<Parameters<Dexie['use']>[0]['create']>[0];

/** Refuses every change of an event but adding one: the journal is append-only by construction. */
function appendOnly(core: Core): Core {
  return {
    ...core,
    table(name) {
      const table = core.table(name);
      if (name !== 'events') return table;
      return {
        ...table,
        mutate(request) {
          if (request.type !== 'add')
            throw new Error(`events are append-only: ${request.type} refused`);
          return table.mutate(request);
        }
      };
    }
  };
}
