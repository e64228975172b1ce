import { Dexie, type Table } from 'dexie';
import type { AnyPart, StoredEvent } from '$lib/journal';
import type { JobRow } from './job-row.ts';
import { LeftPage, type PageEvents } from './left-page.ts';
import { type Going, areGoing } from './removed.ts';
import type { StoredPhoto } from './store.ts';

/** One part of a job's view, as last folded. */
export interface PartRow {
  jobId: string;
  part: string;
  value: AnyPart;
}

/**
 * Events that came in together, in order of id, in one row: a browser takes as long to write a row
 * of five hundred events as it takes for five of them in rows of their own.
 */
export interface BundleRow {
  jobId: string;
  /** The ids of its first and its last event. Other events may lie between them. */
  first: string;
  last: string;
  size: number;
  events: readonly StoredEvent[];
}

export interface PhotoRow extends StoredPhoto {
  jobId: string;
}

export interface DeviceRow {
  name: string;
  value: unknown;
}

/** The device's database. Only this folder opens it. */
export class EvencourseDatabase extends Dexie {
  declare events: Table<StoredEvent, [string, string]>;
  declare bundles: Table<BundleRow, [string, string, string]>;
  declare parts: Table<PartRow, [string, string]>;
  declare jobs: Table<JobRow, string>;
  declare photos: Table<PhotoRow, string>;
  declare device: Table<DeviceRow, string>;

  /** Whether the page is put by for the Back button: then nothing may be begun. */
  readonly leftPage: LeftPage;
  /** The job that is being removed whole; set by {@link removing} alone. */
  #going: Going | undefined;

  constructor(name = 'evencourse', page: PageEvents | undefined = globalThis.window) {
    // Browsers write IndexedDB lazily by default; an acknowledged reading must be on the disk.
    super(name, { chromeTransactionDurability: 'strict', cache: 'disabled' });
    this.version(1).stores({
      events: '[jobId+id], &[jobId+deviceId+deviceSeq]',
      bundles: '[jobId+last+first], size',
      parts: '[jobId+part]',
      jobs: 'jobId, lastAt',
      photos: 'photoId, jobId',
      device: 'name'
    });
    this.use({ stack: 'dbcore', name: 'append-only', create: appendOnly(() => this.#going) });
    this.leftPage = new LeftPage(page);
    this.use({ stack: 'dbcore', name: 'left-page', create: this.leftPage.middleware });
  }

  /** Lets the rows of one job go while some work lasts; those of every other job stay closed. */
  async removing(going: Going, work: () => Promise<void>): Promise<void> {
    this.#going = going;
    try {
      await work();
    } finally {
      this.#going = undefined;
    }
  }
}

type Core = Parameters<Parameters<Dexie['use']>[0]['create']>[0];

/** What must never be changed or lost once it is there. */
const APPEND_ONLY = ['events', 'bundles', 'photos'];

/**
 * Refuses every change of an event or photo but adding one: append-only by construction. Only a job
 * that is removed whole takes its own with it.
 */
function appendOnly(going: () => Going | undefined): (core: Core) => Core {
  return (core) => ({
    ...core,
    table(name) {
      const table = core.table(name);
      if (!APPEND_ONLY.includes(name)) return table;
      return {
        ...table,
        mutate(request) {
          const isGoing = request.type === 'delete' && areGoing(going(), name, request.keys);
          if (request.type !== 'add' && !isGoing)
            throw new Error(`${name} are append-only: ${request.type} refused`);
          return table.mutate(request);
        }
      };
    }
  });
}
