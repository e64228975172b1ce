import {
  type AnyPart,
  type JobView,
  type PartKey,
  type StoredEvent,
  VIEW_VERSION,
  current,
  emptyPart,
  partOf
} from '$lib/journal';
import type { DeviceNumbers, JobSummary } from './store.ts';

/** What the list of jobs shows and what an append must know; rewritten with every act. */
export interface JobRow {
  jobId: string;
  name: string;
  /** Events of this job on this device: rises with each act, in whichever tab. */
  revision: number;
  lastId: string;
  lastAt: string;
  viewVersion: number;
  /** What the job files written or read here hold between them. Absent: see {@link inFilesOf}. */
  inFiles?: DeviceNumbers;
  /** When the newest of these files was written or read. */
  exportedAt: string | null;
  /** The last deviceSeq of each device. */
  sequences: DeviceNumbers;
  /** Parts of the view, so that a lost one is missed. */
  parts?: number;
  /** Written by an earlier version: events in the newest backup. */
  exported?: number;
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
    inFiles: {},
    exportedAt: null,
    sequences: {}
  };
}

/** Counts events into a row, in any order; the name is the view's, set by {@link withView}. */
export function withEvents(row: JobRow, events: readonly StoredEvent[]): JobRow {
  const next = { ...row, inFiles: inFilesOf(row), sequences: { ...row.sequences } };
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
  return { ...row, name, viewVersion: VIEW_VERSION, parts: view.size };
}

/**
 * Notes a job file that left this device or was read here. A file holds a device's events from its
 * first up to some number, so what all files hold between them is the highest number of each device.
 * An older or smaller file takes nothing back, and the moment stays that of the file which held more.
 */
export function withBackup(row: JobRow, file: DeviceNumbers, at: string): JobRow {
  const before = inFilesOf(row);
  const inFiles = { ...before };
  for (const [deviceId, last] of Object.entries(file))
    inFiles[deviceId] = Math.max(inFiles[deviceId] ?? 0, last);
  return { ...row, inFiles, exportedAt: holds(file, before) ? at : row.exportedAt };
}

/** Notes a job file that was read here; one that holds nothing more than earlier ones is no news. */
export function withFileRead(row: JobRow, file: DeviceNumbers, at: string): JobRow {
  return holds(inFilesOf(row), file) ? row : withBackup(row, file, at);
}

/**
 * A row of no events, to count the events into anew. It keeps what was noted of backups, and the
 * last number of each device: where events are lost, their numbers are not given a second time.
 */
export function emptiedRow(row: JobRow): JobRow {
  const { jobId, exportedAt, sequences } = row;
  return { ...newRow(jobId), inFiles: inFilesOf(row), exportedAt, sequences: { ...sequences } };
}

/** Whether a stored row has what an append and the list of jobs need. */
export function isSoundRow(row: JobRow | undefined): row is JobRow {
  if (typeof row !== 'object') return false;
  const { name, revision, lastId, lastAt, viewVersion, sequences, inFiles, exportedAt } =
    row as Partial<JobRow>;
  return (
    [name, lastId, lastAt].every((text) => typeof text === 'string') &&
    [revision, viewVersion].every((number) => typeof number === 'number') &&
    isNumbers(sequences) &&
    (inFiles === undefined || isNumbers(inFiles)) &&
    (exportedAt === null || typeof exportedAt === 'string')
  );
}

function isNumbers(numbers: unknown): numbers is DeviceNumbers {
  return (
    typeof numbers === 'object' &&
    numbers !== null &&
    Object.values(numbers).every((number) => Number.isInteger(number))
  );
}

/** Whether a stored view has all parts that go with its row, each of the shape of its kind. */
export function isWholeView({ parts, viewVersion }: JobRow, view: JobView): boolean {
  if (viewVersion !== VIEW_VERSION || (parts !== undefined && parts !== view.size)) return false;
  return [...view].every(([key, part]) => hasShapeOf(part, emptyPart(key as PartKey)));
}

function hasShapeOf(part: unknown, empty: AnyPart): boolean {
  if (typeof part !== 'object' || part === null) return false;
  return Object.entries(empty).every(([field, like]) => {
    const value = (part as Record<string, unknown>)[field];
    return (
      typeof value === 'object' && value !== null && Array.isArray(value) === Array.isArray(like)
    );
  });
}

export function summaryOf(row: JobRow): JobSummary {
  const inFiles = inFilesOf(row);
  const unexported = unheld(row.sequences, inFiles);
  return {
    jobId: row.jobId,
    name: row.name,
    events: row.revision,
    unexported,
    lastAt: row.lastAt,
    exportedAt: row.exportedAt
  };
}

/** Events of some numbers that a holding does not have. */
export function unheld(numbers: DeviceNumbers, holding: DeviceNumbers): number {
  return Object.entries(numbers).reduce(
    (sum, [deviceId, last]) => sum + Math.max(0, last - (holding[deviceId] ?? 0)),
    0
  );
}

/** Events of a job that are in no job file and not `elsewhere` either. */
export function onlyHere(row: JobRow, elsewhere: DeviceNumbers): number {
  const held = { ...inFilesOf(row) };
  for (const [deviceId, last] of Object.entries(elsewhere))
    held[deviceId] = Math.max(held[deviceId] ?? 0, last);
  return unheld(row.sequences, held);
}

/**
 * What the job files hold. A row of an earlier version only tells how many events the newest backup
 * held: of one device, these were its first; of several, nobody knows which, so none counts.
 */
export function inFilesOf({ inFiles, sequences, exported }: JobRow): DeviceNumbers {
  if (inFiles) return inFiles;
  const devices = Object.keys(sequences);
  return devices.length === 1 && exported ? { [devices[0]]: exported } : {};
}

/** Whether one holding has all that another has. */
function holds(one: DeviceNumbers, other: DeviceNumbers): boolean {
  return Object.entries(other).every(([deviceId, last]) => (one[deviceId] ?? 0) >= last);
}
