import type { StoredEvent } from '$lib/journal';
import { EventLinesCheck, checkHeader, checkPhoto } from './job-file-check.ts';
import { type JobFileHeader, MAX_JOB_FILE_BYTES } from './job-file-format.ts';
import { type Line, linesOf } from './lines.ts';
import { LinesHash } from './lines-hash.ts';
import { MergeRefused, orRefusal } from './merge-check.ts';
import { countMissing } from './missing.ts';
import type {
  Copies,
  EventBatches,
  ImportResult,
  JournalStore,
  Refusal,
  StoredPhoto
} from './store.ts';

/** A job file that holds what it promises. */
export interface CheckedJobFile {
  readonly ok: true;
  readonly header: JobFileHeader;
  /**
   * The events, read from the file once more. Fails with MergeRefused `wrong-hash` when the file is
   * no longer the one that was checked.
   */
  readonly events: EventBatches;
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
 * or refused whole with nothing changed; a file in which entries are missing is refused, since its
 * gaps would stand in the job for good (see `rescueJobFile`). Adding it again changes nothing, and it does not matter in
 * which order several files of a job are added.
 */
export async function readJobFile(
  store: JournalStore,
  source: Blob | string,
  copies: Copies = 'refuse'
): Promise<ImportResult> {
  const checked = await checkJobFile(source);
  if (checked.ok && countMissing(checked.header.missing ?? []) > 0)
    return { ok: false, reason: 'incomplete', missing: checked.header.missing };
  return checked.ok ? store.merge(checked.events, checked.photos, 'job-file', copies) : checked;
}

async function check(file: Blob): Promise<CheckedJobFile> {
  if (file.size > MAX_JOB_FILE_BYTES)
    throw new MergeRefused('too-large', undefined, String(file.size));
  const checked = new FileCheck();
  try {
    for await (const lines of linesOf(file)) for (const line of lines) checked.add(line);
  } catch (error) {
    const line = checked.line + 1;
    if (error instanceof RangeError) throw new MergeRefused('broken-line', line, 'too long');
    if (error instanceof TypeError) throw new MergeRefused('broken-line', line, 'not UTF-8');
    throw error;
  }
  const { header, photos } = checked.finish();
  return { ok: true, header, events: () => eventsAgain(file, header), photos };
}

/** Checks the lines of a job file one after the other, and keeps only its photos. */
class FileCheck {
  line = 0;
  #header: JobFileHeader | undefined;
  #eventCheck: EventLinesCheck | undefined;
  #events = 0;
  readonly #photos: StoredPhoto[] = [];

  /** @throws MergeRefused */
  add({ text, isEnded }: Line): void {
    this.line++;
    if (!this.#header || !this.#eventCheck) {
      this.#header = checkHeader(text);
      this.#eventCheck = new EventLinesCheck(this.#header);
      if (!isEnded) throw new MergeRefused('torn', this.line);
      return;
    }
    if (!isEnded) throw new MergeRefused('torn', this.line);
    if (this.#events < this.#header.events) {
      this.#eventCheck.add(text);
      this.#events++;
      // All events are in: their hash is judged before a photo is looked at.
      if (this.#events === this.#header.events) this.#eventCheck.finish();
    } else if (this.#photos.length < this.#header.photos)
      this.#photos.push(checkPhoto(text, this.line, this.#eventCheck.photoHashes));
    else throw new MergeRefused('wrong-count', this.line);
  }

  /** @throws MergeRefused when lines are missing */
  finish(): { header: JobFileHeader; photos: readonly StoredPhoto[] } {
    const [header, photos] = [this.#header, this.#photos];
    if (!header) throw new MergeRefused('not-a-job-file', 1, 'empty');
    if (this.#events < header.events || photos.length < header.photos)
      throw new MergeRefused('wrong-count', this.line);
    return { header, photos };
  }
}

/**
 * Reads the events of a checked file once more: kept in memory, those of a large journal would fill
 * it. The hash at the end shows that they are the same bytes.
 */
async function* eventsAgain(
  file: Blob,
  { events, sha256 }: JobFileHeader
): AsyncGenerator<readonly StoredEvent[]> {
  const hash = new LinesHash();
  let left = events + 1;
  for await (const lines of linesOf(file)) {
    const hasHeader = left > events;
    const texts = lines.slice(0, left).map(({ text }) => text);
    left -= texts.length;
    if (hasHeader) texts.shift();
    for (const text of texts) hash.add(text);
    yield texts.map(parsed);
    if (left === 0) break;
  }
  if (hash.hex() !== sha256) throw new MergeRefused('wrong-hash');
}

function parsed(text: string): StoredEvent {
  try {
    return JSON.parse(text) as StoredEvent;
  } catch {
    throw new MergeRefused('wrong-hash'); // it could be read when it was checked
  }
}
