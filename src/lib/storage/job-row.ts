import { type JobView, type StoredEvent, VIEW_VERSION, current, partOf } from '$lib/journal';
import type { JobSummary } from './store.ts';

/** What the list of jobs shows and what an append must know; rewritten with every act. */
export interface JobRow {
  jobId: string;
  name: string;
  /** Events of this job on this device: rises with each act, in whichever tab. */
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

/** The row of a job of which there is nothing yet. */
export function newRow(jobId: string): JobRow {
  return {
    jobId,
    name: '',
    revision: 0,
    lastId: '',
    lastAt: '',
    viewVersion: VIEW_VERSION,
    exported: 0,
    exportedAt: null,
    sequences: {}
  };
}

/** Counts events into a row, in any order; the name is the view's, set by {@link withView}. */
export function withEvents(row: JobRow, events: readonly StoredEvent[]): JobRow {
  const next = { ...row, sequences: { ...row.sequences } };
  for (const { id, at, deviceId, deviceSeq } of events) {
    next.revision++;
    if (id > next.lastId) {
      next.lastId = id;
      next.lastAt = at;
    }
    next.sequences[deviceId] = Math.max(next.sequences[deviceId] ?? 0, deviceSeq);
  }
  return next;
}

/** Notes the view that goes with a row. */
export function withView(row: JobRow, view: JobView): JobRow {
  const name = current(partOf(view, 'job').opened)?.name ?? '';
  return { ...row, name, viewVersion: VIEW_VERSION };
}

/** Notes a backup; an older or smaller one never takes back what a newer one held. */
export function withBackup(row: JobRow, events: number, at: string): JobRow {
  if (events < row.exported) return row;
  return { ...row, exported: Math.min(events, row.revision), exportedAt: at };
}

export function summaryOf(row: JobRow): JobSummary {
  return {
    jobId: row.jobId,
    name: row.name,
    events: row.revision,
    unexported: Math.max(0, row.revision - row.exported),
    lastAt: row.lastAt,
    exportedAt: row.exportedAt
  };
}
