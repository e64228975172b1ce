import { type StoredEvent, canonicalJson, readEvent } from '$lib/journal';
import { type SealedParcel, isHeads } from '../../hub/protocol.ts';
import { type DeviceNumbers, isCanonicalLine, parseGuarded } from '$lib/storage';
import { utf8 } from './bytes.ts';
import { type SpaceKeys, seal, unseal } from './keys.ts';
import { inPieces } from './pieces.ts';
import { MAX_UNPACKED_BYTES, pack, unpack } from './squeeze.ts';

const FORMAT = 'evencourse-parcel';
const VERSION = 1;

/** A run of one device's events, gapless by number. */
export interface Run {
  readonly device: string;
  readonly events: readonly StoredEvent[];
}

/** What a parcel says beside its events. */
export interface ParcelNote {
  /** How far its author had seen each device at the hub. */
  readonly seen: DeviceNumbers;
  /** The mark of the event before the first, so that two histories are never joined. */
  readonly after: string;
}

export interface OpenedParcel extends ParcelNote {
  readonly device: string;
  readonly first: number;
  readonly last: number;
  readonly events: readonly StoredEvent[];
}

/** Why a parcel is not believed. */
export type ParcelFault = 'not-ours' | 'too-large' | 'broken';

/** A mark of an event: the first 16 bytes of SHA-256 of its canonical line; empty for none. */
export async function markOf(event: StoredEvent | undefined): Promise<string> {
  if (!event) return '';
  const hash = await crypto.subtle.digest('SHA-256', utf8(canonicalJson(event)));
  return [...new Uint8Array(hash, 0, 16)]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}

/** Seals a run of events; undefined when it is too much to be unpacked by others. */
export async function sealParcel(
  keys: SpaceKeys,
  space: string,
  { device, events }: Run,
  note: ParcelNote
): Promise<SealedParcel | undefined> {
  const [first, last] = [events[0].deviceSeq, events[events.length - 1].deviceSeq];
  const head = canonicalJson({ after: note.after, seen: note.seen });
  const lines = [head];
  await inPieces(events, (event) => void lines.push(canonicalJson(event)));
  const plain = utf8(lines.map((line) => `${line}\n`).join(''));
  if (plain.length > MAX_UNPACKED_BYTES) return undefined;
  const beside = [FORMAT, VERSION, space, device, first, last];
  return { device, first, last, bytes: await seal(keys.parcel, await pack(plain), beside) };
}

/**
 * Opens a parcel and believes nothing: its seal must be of this job, space, device and numbers, and
 * each line an event of that device in its place. Never throws.
 */
export async function openParcel(
  keys: SpaceKeys,
  space: string,
  jobId: string,
  { device, first, last, bytes }: SealedParcel
): Promise<
  | { readonly ok: true; readonly parcel: OpenedParcel }
  | { readonly ok: false; readonly fault: ParcelFault; readonly detail: string }
> {
  const refuse = (fault: ParcelFault, detail: string) => ({ ok: false, fault, detail }) as const;
  const beside = [FORMAT, VERSION, space, device, first, last];
  const packed = await unseal(keys.parcel, new Uint8Array(bytes), beside);
  if (!packed) return refuse('not-ours', 'the seal does not fit');
  const plain = await unpack(packed);
  if (!plain) return refuse('too-large', 'not packed as it must be, or too large');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(plain);
  } catch {
    return refuse('broken', 'not UTF-8');
  }
  const lines = text.split('\n');
  if (lines.pop() !== '') return refuse('broken', 'torn');
  const head = parseGuarded(lines[0] ?? '');
  const note = head.ok ? (head.value as Partial<ParcelNote> | null) : null;
  if (!note || !isHeads(note.seen) || typeof note.after !== 'string')
    return refuse('broken', 'no head');
  if (lines.length - 1 !== last - first + 1) return refuse('broken', 'miscounted');
  const events: StoredEvent[] = [];
  let fault = '';
  await inPieces(lines.slice(1), (line, at) => {
    const number = first + at;
    const read = fault ? undefined : readLine(line, { jobId, device, number });
    if (typeof read === 'string') fault = `${number}: ${read}`;
    else if (read) events.push(read);
  });
  if (fault) return refuse('broken', fault);
  const { seen, after } = note as ParcelNote;
  return { ok: true, parcel: { device, first, last, events, seen, after } };
}

/** The event of a line, or why it is not the one that should stand there. */
function readLine(
  line: string,
  { jobId, device, number }: { jobId: string; device: string; number: number }
): StoredEvent | string {
  const parsed = parseGuarded(line);
  if (!parsed.ok) return parsed.detail;
  if (!isCanonicalLine(parsed.value, line)) return 'not canonical';
  const read = readEvent(parsed.value);
  if (read.kind === 'broken') return read.problem;
  const event = parsed.value as StoredEvent;
  return event.jobId === jobId && event.deviceId === device && event.deviceSeq === number
    ? event
    : 'not the event that it claims to be';
}
