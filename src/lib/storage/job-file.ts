import type { StoredEvent } from '$lib/journal';
import { EventLinesCheck, checkHeader, checkPhoto } from './job-file-check.ts';
import { type JobFileHeader, MAX_JOB_FILE_BYTES } from './job-file-format.ts';
import { linesOf } from './lines.ts';
import { MergeRefused, orRefusal } from './merge-check.ts';
import type { ImportResult, JournalStore, Refusal, StoredPhoto } from './store.ts';

/** A job file that holds what it promises. */
export interface CheckedJobFile {
  readonly ok: true;
  readonly header: JobFileHeader;
  /** The events in order of id, made from their lines as they are asked for. */
  readonly events: Iterable<StoredEvent>;
  readonly photos: readonly StoredPhoto[];
}

/**
 * Reads a job file and verifies all of it: header, count, hash, every line, one job, the devices'
 * numbers without a gap, no undos in a circle, photos by their hashes. Nothing is stored.
 */
export async function checkJobFile(source: Blob | string): Promise<CheckedJobFile | Refusal> {
  return orRefusal(() => check(typeof source === 'string' ? new Blob([source]) : source));
}

/**
 * Adds a job file to the journals of this device: verified first, then added in one transaction,
 * or refused whole with nothing changed. Adding it again changes nothing, and it does not matter in
 * which order several files of a job are added.
 */
export async function readJobFile(
  store: JournalStore,
  source: Blob | string
): Promise<ImportResult> {
  const checked = await checkJobFile(source);
  return checked.ok ? store.merge(checked.events, checked.photos) : checked;
}

async function check(file: Blob): Promise<CheckedJobFile> {
  if (file.size > MAX_JOB_FILE_BYTES)
    throw new MergeRefused('too-large', undefined, String(file.size));
  let header: JobFileHeader | undefined;
  let eventCheck: EventLinesCheck | undefined;
  const lines: string[] = [];
  const photos: StoredPhoto[] = [];
  let line = 0;
  try {
    for await (const { text, isEnded } of linesOf(file)) {
      line++;
      if (!header || !eventCheck) {
        header = checkHeader(text);
        eventCheck = new EventLinesCheck(header);
        if (!isEnded) throw new MergeRefused('torn', line);
        continue;
      }
      if (!isEnded) throw new MergeRefused('torn', line);
      if (lines.length < header.events) {
        eventCheck.add(text);
        lines.push(text);
        // All events are in: their hash is judged before a photo is looked at.
        if (lines.length === header.events) eventCheck.finish();
      } else if (photos.length < header.photos)
        photos.push(checkPhoto(text, line, eventCheck.photoHashes));
      else throw new MergeRefused('wrong-count', line);
    }
  } catch (error) {
    if (error instanceof RangeError) throw new MergeRefused('broken-line', line + 1, 'too long');
    if (error instanceof TypeError) throw new MergeRefused('broken-line', line + 1, 'not UTF-8');
    throw error;
  }
  if (!header) throw new MergeRefused('not-a-job-file', 1, 'empty');
  if (lines.length < header.events || photos.length < header.photos)
    throw new MergeRefused('wrong-count', line);
  return { ok: true, header, events: parsedAgain(lines), photos };
}

/** Kept as text and parsed again in turn: a large journal as objects would fill the memory. */
function parsedAgain(lines: readonly string[]): Iterable<StoredEvent> {
  return {
    *[Symbol.iterator]() {
      for (const text of lines) yield JSON.parse(text) as StoredEvent;
    }
  };
}
