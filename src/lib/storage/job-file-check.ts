import * as v from 'valibot';
import {
  type ReadEvent,
  type StoredEvent,
  LONGEST_UNDO_CHAIN,
  canonicalJson,
  findUndoFault,
  own,
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
import { isEntries } from './missing.ts';
import { NumberRun } from './number-run.ts';
import { sha256Hex } from './sha256.ts';
import type { DeviceNumbers, StoredPhoto } from './store.ts';

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

/**
 * Reads the line of an event as strictly as an import does: what a backup writes passes the same
 * check before it counts as one.
 */
export function readEventLine(
  text: string
): { ok: true; read: Exclude<ReadEvent, { kind: 'broken' }> } | { ok: false; detail: string } {
  const parsed = parseGuarded(text);
  if (!parsed.ok) return parsed;
  const read = readEvent(parsed.value);
  if (read.kind === 'broken') return { ok: false, detail: read.problem };
  // One form only, so that the hash stands for the content and no key hides behind its double.
  if (!isCanonicalLine(parsed.value, text)) return { ok: false, detail: 'not in canonical form' };
  return { ok: true, read };
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
    const line = readEventLine(text);
    if (!line.ok) throw this.#broken(line.detail);
    const { read } = line;
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
    this.#checkNumbers();
    const fault = findUndoFault(this.#voids);
    if (fault !== undefined) throw new MergeRefused('undo-circle', undefined, fault);
  }

  /** The numbers run without a gap but for those that the header says are missing. */
  #checkNumbers(): void {
    const { devices, missing = [] } = this.#header;
    const told = missing.filter(isEntries);
    const toldOf = (id: string) =>
      told.reduce((sum, { device, from, to }) => sum + (device === id ? to - from + 1 : 0), 0);
    const ids = new Set([...this.#numbers.keys(), ...told.map(({ device }) => device)]);
    const counted: DeviceNumbers = {};
    for (const id of ids) {
      const numbers = this.#numbers.get(id) ?? new NumberRun();
      const ranges = told.filter(({ device }) => device === id);
      for (const [from, to] of numbers.gaps(Math.max(numbers.highest, own(devices, id) ?? 0)))
        for (let number = from; number <= to; number++) {
          const range = ranges.find((one) => one.from <= number && number <= one.to);
          if (!range) throw new MergeRefused('gap', undefined, `${id} ${number}`);
          number = range.to;
        }
      counted[id] = numbers.noted + toldOf(id);
    }
    if (canonicalJson(counted) !== canonicalJson(devices))
      throw new MergeRefused('gap', 1, 'the header counts other events of the devices');
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
