import { type JobRow, inFilesOf, newRow } from './job-row.ts';

/**
 * What a device remembers of a job that was removed from it: its own last number, so that none is
 * given twice when the job comes back from an older file, and how much of it job files hold.
 */
export interface RemovedJob {
  readonly deviceId: string;
  readonly last: number;
  readonly inFiles: number;
}

/** Name under which a device keeps its note of a removed job. */
export const removedName = (jobId: string): string => `removed:${jobId}`;

export function noteOfRemoved(row: JobRow, deviceId: string): RemovedJob {
  const last = row.sequences[deviceId] ?? 0;
  return { deviceId, last, inFiles: Math.min(last, inFilesOf(row)[deviceId] ?? 0) };
}

/** The row that a job begins with: empty, or with the numbers noted when it was removed. */
export function firstRow(jobId: string, note: unknown): JobRow {
  const row = newRow(jobId);
  if (!isNote(note) || note.last === 0) return row;
  const { deviceId, last, inFiles } = note;
  return { ...row, sequences: { [deviceId]: last }, inFiles: { [deviceId]: inFiles } };
}

function isNote(note: unknown): note is RemovedJob {
  if (typeof note !== 'object' || note === null) return false;
  const { deviceId, last, inFiles } = note as Partial<RemovedJob>;
  return typeof deviceId === 'string' && Number.isInteger(last) && Number.isInteger(inFiles);
}

/** The rows of a job that may go, all together. */
export interface Going {
  readonly jobId: string;
  readonly photoIds: ReadonlySet<string>;
}

/** Whether every key of rows to be deleted belongs to the job that goes. */
export function areGoing(going: Going | undefined, table: string, keys: readonly unknown[]) {
  if (!going) return false;
  return keys.every((key) =>
    table === 'photos'
      ? going.photoIds.has(String(key))
      : Array.isArray(key) && key[0] === going.jobId
  );
}
