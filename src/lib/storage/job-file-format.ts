import * as v from 'valibot';
import { isUuid } from '$lib/journal';
import { PHOTO_TYPES } from './store.ts';

/**
 * The job file: UTF-8 text, every line a JSON value ended by one line feed.
 *
 * Line 1 is the header. Then `events` lines, one event each in canonical JSON (keys in order, no
 * spaces), in strictly rising order of id. Then `photos` lines, `{"base64":…,"photo":ID,"type":…}`.
 *
 * A file of a damaged journal carries `missing`: the events and photos that could not be read. It can
 * only be taken in as a job of its own.
 *
 * `sha256` is the SHA-256 of the bytes of the event lines, their line feeds included, so anyone can
 * work it out: `head -n $((1 + EVENTS)) FILE | tail -n +2 | sha256sum`. It is the journal's hash
 * that a signed verdict names. A photo is held to the hash in its photoAdded event.
 */
export const JOB_FILE_FORMAT = 'evencourse-job';
export const JOB_FILE_VERSION = 1;

/** A larger file is refused before it is read: four million events have about as much. */
export const MAX_JOB_FILE_BYTES = 2 ** 30;
/** Room for the largest photo; the longest event, a plan of 5,000 courses, needs a tenth. */
export const MAX_LINE_LENGTH = 12 * 2 ** 20;

const whole = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(10_000_000));
const uuid = v.pipe(v.string(), v.check(isUuid, 'not a UUID in lower case'));

/** The first line, so far as every version has it. */
export const anyHeader = v.object({
  format: v.literal(JOB_FILE_FORMAT),
  version: v.pipe(v.number(), v.integer(), v.minValue(1))
});

const number = v.pipe(whole, v.minValue(1));
const reason = v.picklist(['gone', 'damaged']);
const missing = v.union([
  v.pipe(
    v.object({ device: uuid, from: number, to: number, reason }),
    v.check(({ from, to }) => from <= to, 'a range that ends before it begins')
  ),
  v.object({ photo: v.pipe(v.string(), v.regex(/^[A-Za-z0-9.-]{1,64}$/)), reason })
]);

export const header = v.object({
  format: v.literal(JOB_FILE_FORMAT),
  version: v.literal(JOB_FILE_VERSION),
  jobId: uuid,
  /** For people who look into the file; the name in force is that of the events. */
  name: v.pipe(v.string(), v.maxLength(200)),
  events: v.pipe(whole, v.minValue(1)),
  sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
  /** The last deviceSeq of each device, which is also how many events it has. */
  devices: v.record(uuid, v.pipe(whole, v.minValue(1))),
  photos: whole,
  /** What a damaged journal could not give; the numbers of these events are in `devices` too. */
  missing: v.optional(v.pipe(v.array(missing), v.minLength(1), v.maxLength(10_000)))
});

export type JobFileHeader = v.InferOutput<typeof header>;

export const photoLine = v.object({
  photo: v.pipe(v.string(), v.regex(/^[A-Za-z0-9.-]{1,64}$/)),
  type: v.picklist(PHOTO_TYPES),
  base64: v.pipe(v.string(), v.regex(/^[A-Za-z0-9+/]*={0,2}$/))
});

/** Bytes as base64 (RFC 4648), in pieces that fit a function's arguments. */
export function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += 0x8000)
    binary += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(binary);
}

/** Bytes from base64, or undefined when it is none. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | undefined {
  try {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  } catch {
    return undefined;
  }
}
