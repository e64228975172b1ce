import { type StoredEvent, canonicalJson } from '$lib/journal';
import { readEventLine } from './job-file-check.ts';
import {
  JOB_FILE_FORMAT,
  JOB_FILE_VERSION,
  type JobFileHeader,
  toBase64
} from './job-file-format.ts';
import { EventsAudit, countMissing, isReadable } from './missing.ts';
import { Sha256, sha256Hex } from './sha256.ts';
import {
  type DeviceNumbers,
  type JournalStore,
  type Missing,
  type MissingEntries,
  PHOTO_TYPES,
  type StoredPhoto
} from './store.ts';

/** A backup: the file, and what to note once it has left the device (`markExported`). */
export interface JobFile {
  readonly blob: Blob;
  readonly name: string;
  readonly events: number;
  readonly devices: DeviceNumbers;
  readonly sha256: string;
  /** What the job had and the file does not hold; such a file is no backup. */
  readonly missing: readonly Missing[];
}

/** Of a damaged job nothing can be read, so that there is nothing to put into a file. */
export class NothingReadable extends Error {
  override readonly name = 'NothingReadableError';
}

/** A device may merge another's journal while it is read out; then the reading starts again. */
const TRIES = 5;

/**
 * A job with all its events and photos as one file; see `JOB_FILE_FORMAT` for its form. Read out in
 * batches, so the events are never all in memory as objects. What is damaged or gone is left out
 * and told in `missing`.
 *
 * @returns undefined when there is no such job
 * @throws NothingReadable
 */
export async function writeJobFile(
  store: JournalStore,
  jobId: string
): Promise<JobFile | undefined> {
  const opened = await store.open(jobId);
  if (!opened) return undefined;
  const parts: Blob[] = [];
  const hashes = new Map<string, string>();
  const journal = await readOut(
    store,
    jobId,
    () => {
      parts.length = 0;
      hashes.clear();
    },
    (bytes) => parts.push(new Blob([bytes])),
    (photo, sha256) => hashes.set(photo, sha256)
  );
  if (journal.events === 0) throw new NothingReadable(jobId);
  const missing: Missing[] = [...journal.missing];
  const photos: Blob[] = [];
  for (const [photo, sha256] of hashes) {
    const kept = await photoIn(store, photo);
    if (kept && isWholePhoto(kept, sha256)) {
      const base64 = toBase64(new Uint8Array(kept.bytes));
      photos.push(new Blob([canonicalJson({ photo, type: kept.type, base64 }), '\n']));
    } else missing.push({ photo, reason: kept ? 'damaged' : 'gone' });
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
    photos: photos.length,
    ...(missing.length > 0 && { missing })
  };
  const blob = new Blob([`${JSON.stringify(header)}\n`, ...parts, ...photos], {
    type: 'application/x-ndjson'
  });
  return { blob, name, events, devices, sha256, missing };
}

/** A photo as stored; undefined where it is gone or its row can no longer be read. */
async function photoIn(store: JournalStore, photo: string): Promise<StoredPhoto | undefined> {
  return store.photo(photo).catch(() => undefined);
}

function isWholePhoto({ type, bytes }: StoredPhoto, sha256: string): boolean {
  return (
    PHOTO_TYPES.includes(type) &&
    bytes instanceof ArrayBuffer &&
    sha256Hex(new Uint8Array(bytes)) === sha256
  );
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
  const { sha256, events } = await readOut(store, jobId, nothing, nothing, nothing);
  return { sha256, events };
}

interface JournalFigures {
  readonly sha256: string;
  readonly events: number;
  readonly devices: DeviceNumbers;
  readonly missing: readonly MissingEntries[];
}

/**
 * Reads all events out as the bytes of their lines; once more where some are missing, for a merge
 * may have come in between. What is missing twice is missing.
 */
async function readOut(
  store: JournalStore,
  jobId: string,
  begin: () => void,
  take: (bytes: Uint8Array<ArrayBuffer>) => void,
  photo: (photoId: string, sha256: string) => void
): Promise<JournalFigures> {
  const encoder = new TextEncoder();
  let before: string | undefined;
  for (let tries = 0; tries < TRIES; tries++) {
    begin();
    const given = await store.numbers(jobId);
    const hash = new Sha256();
    const audit = new EventsAudit();
    let events = 0;
    for await (const batch of store.events(jobId)) {
      const lines: string[] = [];
      for (const event of batch) {
        const line = lineOf(event, jobId);
        if (!line) {
          audit.noteDamaged(event);
          continue;
        }
        const { read, text } = line;
        lines.push(`${text}\n`);
        audit.note(read.event);
        if (read.kind === 'known' && read.event.type === 'photoAdded')
          photo(read.event.body.photoId, read.event.body.sha256);
      }
      const bytes = encoder.encode(lines.join(''));
      hash.update(bytes);
      take(bytes);
      events += lines.length;
    }
    const missing = audit.missing(given);
    const devices = audit.lastNumbers(given);
    const found = canonicalJson(missing);
    // Each number once, here or missing: together they are as many as the last numbers say.
    const expected = Object.values(devices).reduce((sum, last) => sum + last, 0);
    const isEachOnce = events + countMissing(missing) === expected;
    if (isEachOnce && (missing.length === 0 || found === before))
      return { sha256: hash.hex(), events, devices, missing };
    before = found;
  }
  throw new Error('the job kept changing while it was read out');
}

/** An event as its line, or undefined where no import would take it. */
function lineOf(event: StoredEvent, jobId: string) {
  if (event.jobId !== jobId || !isReadable(event)) return undefined;
  const text = canonicalJson(event);
  const line = readEventLine(text);
  return line.ok ? { read: line.read, text } : undefined;
}
