import { type StoredEvent, canonicalJson, readEvent } from '$lib/journal';
import {
  JOB_FILE_FORMAT,
  JOB_FILE_VERSION,
  type JobFileHeader,
  toBase64
} from './job-file-format.ts';
import { Sha256 } from './sha256.ts';
import type { DeviceNumbers, JournalStore } from './store.ts';

/** A backup: the file, and what to note once it has left the device (`markExported`). */
export interface JobFile {
  readonly blob: Blob;
  readonly name: string;
  readonly events: number;
  readonly devices: DeviceNumbers;
  readonly sha256: string;
}

/** A device may merge another's journal while it is read out; then the reading starts again. */
const TRIES = 5;

/**
 * A job with all its events and photos as one file; see `JOB_FILE_FORMAT` for its form. Read out in
 * batches, so the events are never all in memory as objects.
 *
 * @returns undefined when there is no such job
 */
export async function writeJobFile(
  store: JournalStore,
  jobId: string
): Promise<JobFile | undefined> {
  const opened = await store.open(jobId);
  if (!opened) return undefined;
  const parts: Blob[] = [];
  const photoIds: string[] = [];
  const journal = await readOut(
    store,
    jobId,
    () => {
      parts.length = 0;
      photoIds.length = 0;
    },
    (batch, bytes) => {
      parts.push(new Blob([bytes]));
      photoIds.push(...photosIn(batch));
    }
  );
  const photos: Blob[] = [];
  for (const photoId of photoIds) {
    const photo = await store.photo(photoId);
    if (!photo) continue;
    const base64 = toBase64(new Uint8Array(photo.bytes));
    photos.push(new Blob([canonicalJson({ photo: photoId, type: photo.type, base64 }), '\n']));
  }
  const { name } = opened.summary;
  const { events, sha256, devices } = journal;
  const header: JobFileHeader = {
    format: JOB_FILE_FORMAT,
    version: JOB_FILE_VERSION,
    jobId,
    name,
    events,
    sha256,
    devices,
    photos: photos.length
  };
  const blob = new Blob([`${JSON.stringify(header)}\n`, ...parts, ...photos], {
    type: 'application/x-ndjson'
  });
  return { blob, name, events, devices, sha256 };
}

/**
 * The hash of a job's journal, as its job file carries it, with the number of events it covers:
 * what a signed verdict names.
 */
export async function journalSha256(
  store: JournalStore,
  jobId: string
): Promise<{ sha256: string; events: number }> {
  const nothing = () => undefined;
  const { sha256, events } = await readOut(store, jobId, nothing, nothing);
  return { sha256, events };
}

interface JournalFigures {
  readonly sha256: string;
  readonly events: number;
  readonly devices: DeviceNumbers;
}

/** Reads all events out as the bytes of their lines, once more if a merge came in between. */
async function readOut(
  store: JournalStore,
  jobId: string,
  begin: () => void,
  take: (batch: readonly StoredEvent[], bytes: Uint8Array<ArrayBuffer>) => void
): Promise<JournalFigures> {
  const encoder = new TextEncoder();
  for (let tries = 0; tries < TRIES; tries++) {
    begin();
    const hash = new Sha256();
    const devices: DeviceNumbers = {};
    let events = 0;
    for await (const batch of store.events(jobId)) {
      const bytes = encoder.encode(batch.map((event) => `${canonicalJson(event)}\n`).join(''));
      hash.update(bytes);
      take(batch, bytes);
      events += batch.length;
      for (const { deviceId, deviceSeq } of batch)
        devices[deviceId] = Math.max(devices[deviceId] ?? 0, deviceSeq);
    }
    // Without a gap, the last numbers of the devices add up to the number of events.
    const expected = Object.values(devices).reduce((sum, last) => sum + last, 0);
    if (events === expected) return { sha256: hash.hex(), events, devices };
  }
  throw new Error('the job kept changing while it was read out');
}

function photosIn(batch: readonly StoredEvent[]): string[] {
  return batch.flatMap((event) => {
    if (event.type !== 'photoAdded') return [];
    const read = readEvent(event);
    return read.kind === 'known' && read.event.type === 'photoAdded'
      ? [read.event.body.photoId]
      : [];
  });
}
