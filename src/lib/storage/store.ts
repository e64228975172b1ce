import type { JobView, NewEvent, StoredEvent } from '$lib/journal';

/** A job as the list of jobs shows it. */
export interface JobSummary {
  jobId: string;
  name: string;
  /** Events of this job on this device. */
  events: number;
  /** Events not yet in any backup. */
  unexported: number;
  lastAt: string;
  exportedAt: string | null;
}

/** A job's view and the revision it was folded at. */
export interface OpenJob {
  view: JobView;
  summary: JobSummary;
}

export interface Appended extends OpenJob {
  events: StoredEvent[];
}

export type ImportRefusal =
  | 'not-a-job-file'
  | 'too-new'
  | 'torn'
  | 'wrong-count'
  | 'wrong-hash'
  | 'broken-line'
  | 'mixed-jobs'
  | 'gap'
  | 'conflict'
  | 'undo-circle';

export type ImportResult =
  | { ok: true; jobId: string; added: number; already: number; unknown: number }
  | { ok: false; reason: ImportRefusal; line?: number; detail?: string };

/**
 * Where a device keeps its journals. Memory and IndexedDB fulfil the same contract, and one suite
 * of tests holds both to it. Every promise settles only when the data is committed.
 */
export interface JournalStore {
  /** This device's id, made at its first start. */
  deviceId(): Promise<string>;
  jobs(): Promise<JobSummary[]>;
  /** The view of a job; rebuilt first when it was folded by another release. Undefined: no job. */
  open(jobId: string): Promise<OpenJob | undefined>;
  /**
   * Appends events of one act to a job in one transaction: events, the touched parts of the view
   * and the counters, or nothing at all. Ids are made before the first try, so that a retry after
   * a lost connection cannot double them.
   */
  append(jobId: string, acts: readonly NewEvent[], sorter?: string): Promise<Appended>;
  /** The newest events of a job, newest first. */
  newest(jobId: string, limit: number): Promise<StoredEvent[]>;
  /** All events of a job in order of id, in batches. */
  events(jobId: string): AsyncGenerator<StoredEvent[]>;
  /** Adds the events of a checked job file that are not here yet, in one transaction. */
  merge(events: readonly StoredEvent[]): Promise<ImportResult>;
  /** Folds the view anew from all events. */
  rebuild(jobId: string): Promise<OpenJob | undefined>;
  /** Notes that a backup with so many events of the job left the device. */
  markExported(jobId: string, events: number, at: string): Promise<void>;
  /** Calls back after any commit to the job, in this tab or another; returns how to stop. */
  watch(jobId: string, changed: () => void): () => void;
}

/** What a store takes from outside, so that tests decide clock and chance. */
export interface StoreSurroundings {
  now: () => number;
  /** Sixteen random hexadecimal digits. */
  randomHex: () => string;
}
