import * as v from 'valibot';
import {
  type StoredEvent,
  LONGEST_UNDO_CHAIN,
  canonicalJson,
  findUndoFault,
  readEvent
} from '$lib/journal';
import {
  type JobFileHeader,
  JOB_FILE_VERSION,
  anyHeader,
  fromBase64,
  header,
  photoLine
} from './job-file-format.ts';
import { isCanonicalLine } from './canonical-line.ts';
import { parseGuarded } from './json-guard.ts';
import { LinesHash } from './lines-hash.ts';
import { MergeRefused } from './merge-check.ts';
import { NumberRun } from './number-run.ts';
import { sha256Hex } from './sha256.ts';
import type { StoredPhoto } from './store.ts';

/** Checks the first line. @throws MergeRefused */
export function checkHeader(text: string): JobFileHeader {
  const parsed = parseGuarded(text);
  const refuse = (detail?: string) => new MergeRefused('not-a-job-file', 1, detail);
  if (!parsed.ok) throw refuse(parsed.detail);
  const outer = v.safeParse(anyHeader, parsed.value);
  if (!outer.success) throw refuse();
  const { version } = outer.output;
  if (version > JOB_FILE_VERSION) throw new MergeRefused('too-new', 1, String(version));
  const inner = v.safeParse(header, parsed.value);
  if (!inner.success) throw refuse(inner.issues[0].message);
  return inner.output;
}

/** Checks the event lines of a job file one after the other, then together. */
export class EventLinesCheck {
  readonly #header: JobFileHeader;
  readonly #hash = new LinesHash();
  readonly #numbers = new Map<string, NumberRun>();
  readonly #voids = new Map<string, string>();
  readonly #undoCount = new Map<string, number>();
  /** By photoId, the hash that its event gives. */
  readonly photoHashes = new Map<string, string>();
  #lastId = '';
  #line = 1;

  constructor(fileHeader: JobFileHeader) {
    this.#header = fileHeader;
  }

  /** @throws MergeRefused */
  add(text: string): void {
    this.#line++;
    this.#hash.add(text);
    const parsed = parseGuarded(text);
    if (!parsed.ok) throw this.#broken(parsed.detail);
    const read = readEvent(parsed.value);
    if (read.kind === 'broken') throw this.#broken(read.problem);
    // One form only, so that the hash stands for the content and no key hides behind its double.
    if (!isCanonicalLine(parsed.value, text)) throw this.#broken('not in canonical form');
    const { event } = read;
    if (event.jobId !== this.#header.jobId)
      throw new MergeRefused('mixed-jobs', this.#line, event.jobId);
    if (event.id <= this.#lastId) throw this.#broken('not in order of id');
    this.#lastId = event.id;
    this.#noteNumber(event);
    if (read.kind !== 'known') return;
    if (read.event.type === 'entryVoided') this.#noteUndo(event.id, read.event.body.voids);
    if (read.event.type === 'photoAdded')
      this.photoHashes.set(read.event.body.photoId, read.event.body.sha256);
  }

  /** @throws MergeRefused */
  finish(): void {
    if (this.#hash.hex() !== this.#header.sha256) throw new MergeRefused('wrong-hash');
    for (const [deviceId, { missing }] of this.#numbers)
      if (missing !== undefined) throw new MergeRefused('gap', undefined, `${deviceId} ${missing}`);
    const counted = Object.fromEntries([...this.#numbers].map(([id, { noted }]) => [id, noted]));
    if (canonicalJson(counted) !== canonicalJson(this.#header.devices))
      throw new MergeRefused('gap', 1, 'the header counts other events of the devices');
    const fault = findUndoFault(this.#voids);
    if (fault !== undefined) throw new MergeRefused('undo-circle', undefined, fault);
  }

  #noteNumber({ deviceId, deviceSeq }: StoredEvent): void {
    const numbers = this.#numbers.get(deviceId) ?? new NumberRun();
    this.#numbers.set(deviceId, numbers);
    if (!numbers.note(deviceSeq))
      throw new MergeRefused('conflict', this.#line, `${deviceId} ${deviceSeq}`);
  }

  #noteUndo(id: string, voided: string): void {
    this.#voids.set(id, voided);
    const count = (this.#undoCount.get(voided) ?? 0) + 1;
    if (count > LONGEST_UNDO_CHAIN) throw new MergeRefused('undo-circle', this.#line, voided);
    this.#undoCount.set(voided, count);
  }

  #broken(detail: string): MergeRefused {
    return new MergeRefused('broken-line', this.#line, detail);
  }
}

/** Checks a photo line against the hash that the photo's event gives. @throws MergeRefused */
export function checkPhoto(
  text: string,
  line: number,
  hashes: ReadonlyMap<string, string>
): StoredPhoto {
  const refuse = (detail?: string) => new MergeRefused('bad-photo', line, detail);
  const parsed = parseGuarded(text);
  if (!parsed.ok) throw refuse(parsed.detail);
  const checked = v.safeParse(photoLine, parsed.value);
  if (!checked.success) throw refuse(checked.issues[0].message);
  const { photo, type, base64 } = checked.output;
  const bytes = fromBase64(base64);
  if (!bytes || sha256Hex(bytes) !== hashes.get(photo)) throw refuse(photo);
  return { photoId: photo, type, bytes: bytes.buffer };
}
