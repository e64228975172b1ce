import { type StoredEvent, canonicalJson, readEvent } from '$lib/journal';
import {
  type Copies,
  type DeviceNumbers,
  type ImportResult,
  type JournalStore,
  PHOTO_TYPES,
  type StoredPhoto,
  isCanonicalLine,
  parseGuarded,
  sha256Hex
} from '$lib/storage';
import { fromBase64Url, toBase64Url, utf8 } from './bytes.ts';
import type { SyncJournal } from './crew-state.ts';
import { MAX_UNPACKED_BYTES, pack, unpack } from './squeeze.ts';

/** The first words of what is sent to a mate; the rest is for the app. */
const OPENING = 'Evencourse job, part 1.';
const LINE = 76;

/** Why something sent cannot be taken in. */
export type MateFault = 'not-ours' | 'cut' | 'too-new' | 'too-large' | 'broken';

/** What goes from one device to another by hand. */
export interface Handover {
  readonly jobId: string;
  /** In order of id. Of a device of which a part is sent, the last that the receiver has comes too. */
  readonly events: readonly StoredEvent[];
  /** Those among them that the receiver lacks. */
  readonly lacked: number;
  /** Whether it is all of the job, whatever the receiver has. */
  readonly isWhole: boolean;
  readonly photos: readonly StoredPhoto[];
  /** Photos that had no room. */
  readonly photosLeft: number;
}

export type ReadMate =
  | {
      readonly ok: true;
      readonly jobId: string;
      readonly events: readonly StoredEvent[];
      readonly photos: readonly StoredPhoto[];
      readonly isWhole: boolean;
    }
  | { readonly ok: false; readonly fault: MateFault; readonly detail: string };

/** Room for photos in what is sent, bytes: a messenger carries so much, and it is unpacked as one. */
const PHOTO_ROOM_BYTES = 8 * 2 ** 20;

/**
 * The events of a job that a receiver lacks and their photos, as far as there is room; all of them
 * when nothing is known of him. The last event that he has of a device comes too: if it is another
 * there, a phone was copied, and two histories would be joined.
 *
 * @param have by device, the last of its numbers that the receiver has
 * @param room bytes for photos
 */
export async function handoverFor(
  journal: SyncJournal,
  jobId: string,
  have: DeviceNumbers = {},
  room = PHOTO_ROOM_BYTES
): Promise<Handover> {
  const events: StoredEvent[] = [];
  let lacked = 0;
  const fresh: StoredEvent[] = [];
  for await (const batch of journal.events(jobId))
    for (const event of batch) {
      const last = have[event.deviceId] ?? 0;
      if (event.deviceSeq < last) continue;
      events.push(event);
      if (event.deviceSeq === last) continue;
      lacked++;
      if (event.type === 'photoAdded') fresh.push(event);
    }
  const photos: StoredPhoto[] = [];
  let left = room;
  for (const { body } of fresh) {
    const photo = await journal.photo(String(body.photoId));
    if (!photo || photo.bytes.byteLength > left) continue;
    left -= photo.bytes.byteLength;
    photos.push(photo);
  }
  const isWhole = Object.values(have).every((last) => last === 0);
  return { jobId, events, lacked, isWhole, photos, photosLeft: fresh.length - photos.length };
}

/** Packed for a mate: canonical lines of the events and photos by gzip, their hash in front. */
export async function packHandover(
  { jobId, events, isWhole, photos }: Handover,
  withPhotos = true
): Promise<Uint8Array<ArrayBuffer>> {
  const taken = withPhotos ? photos : [];
  const lines = [...events.map(canonicalJson), ...taken.map(photoLine)]
    .map((line) => `${line}\n`)
    .join('');
  const counts = { events: events.length, photos: taken.length };
  const head = canonicalJson({ ...counts, jobId, sha256: sha256Hex(utf8(lines)), whole: isWhole });
  return pack(utf8(`${head}\n${lines}`));
}

/** Reads what {@link packHandover} made, and believes nothing. Never throws. */
export async function unpackHandover(packed: Uint8Array<ArrayBuffer>): Promise<ReadMate> {
  const refuse = (fault: MateFault, detail: string) => ({ ok: false, fault, detail }) as const;
  const plain = await unpack(packed);
  if (!plain) return refuse('cut', `no whole gzip of at most ${MAX_UNPACKED_BYTES} bytes`);
  const text = new TextDecoder().decode(plain);
  const end = text.indexOf('\n');
  const head = parseGuarded(text.slice(0, end));
  const told = head.ok ? (head.value as Record<string, unknown> | null) : null;
  const body = text.slice(end + 1);
  if (typeof told?.jobId !== 'string' || told.sha256 !== sha256Hex(utf8(body)))
    return refuse('broken', 'the hash does not fit');
  const lines = body.split('\n');
  lines.pop();
  const count = Number(told.events);
  if (lines.length !== count + Number(told.photos)) return refuse('broken', 'miscounted');
  const events: StoredEvent[] = [];
  for (const [at, line] of lines.slice(0, count).entries()) {
    const parsed = parseGuarded(line);
    const problem = parsed.ok ? problemOf(parsed.value, line, told.jobId) : parsed.detail;
    if (!parsed.ok || problem) return refuse('broken', `${at + 1}: ${problem}`);
    events.push(parsed.value as StoredEvent);
  }
  const photos = photosOf(lines.slice(count), events);
  if (!photos) return refuse('broken', 'a photo is not what its entry says');
  return { ok: true, jobId: told.jobId, events, photos, isWhole: told.whole === true };
}

/**
 * A text to send, as `text/plain` in a `.txt`: any messenger carries lines of base64url.
 *
 * @param sentence what the receiver is to do, in his language
 */
export async function writeMateText(hand: Handover, sentence: string): Promise<string> {
  const packed = await packHandover(hand);
  const body = toBase64Url(packed).replace(new RegExp(`.{${LINE}}`, 'g'), '$&\n');
  const check = sha256Hex(packed).slice(0, 8);
  return `${OPENING} ${sentence}\n\n${body}\n.${check}\n`;
}

/** Whether a text claims to be a job sent by hand. */
export function isMateText(text: string): boolean {
  return /Evencourse job, part \d+\./.test(text);
}

/** Reads a text that was sent, also with words around it or its lines broken anew. Never throws. */
export async function readMateText(text: string): Promise<ReadMate> {
  const refuse = (fault: MateFault, detail: string) => ({ ok: false, fault, detail }) as const;
  const opening = /Evencourse job, part (\d+)\./.exec(text);
  if (!opening) return refuse('not-ours', 'no such beginning');
  if (opening[1] !== '1') return refuse('too-new', `part ${opening[1]}`);
  const rest = text.slice(opening.index).replaceAll('\r', '');
  const found = /\n\s*\n([\sA-Za-z0-9_-]+)\.([0-9a-f]{8})/.exec(rest);
  if (!found) return refuse('cut', 'the end is missing');
  const packed = fromBase64Url(found[1].replace(/\s/g, ''));
  if (!packed || sha256Hex(packed).slice(0, 8) !== found[2])
    return refuse('cut', 'some of it is missing or changed');
  return unpackHandover(packed);
}

/**
 * Takes in what was read, by the same checks as any merge. Of a part nothing is kept beside what is
 * here: of a copied phone the whole job is needed.
 */
export function mergeMate(
  journal: Pick<JournalStore, 'merge'>,
  { events, photos, isWhole }: ReadMate & { readonly ok: true },
  copies: Copies = 'refuse'
): Promise<ImportResult> {
  return journal.merge(events, photos, 'made-here', isWhole ? copies : 'refuse');
}

function photoLine({ photoId, type, bytes }: StoredPhoto): string {
  return canonicalJson({ base64url: toBase64Url(new Uint8Array(bytes)), photo: photoId, type });
}

/** Photos, each held to the hash in its event; undefined when one does not fit. */
function photosOf(
  lines: readonly string[],
  events: readonly StoredEvent[]
): StoredPhoto[] | undefined {
  const acts = events.filter(({ type }) => type === 'photoAdded').map(({ body }) => body);
  const photos: StoredPhoto[] = [];
  for (const line of lines) {
    const parsed = parseGuarded(line);
    const told = parsed.ok ? (parsed.value as Record<string, unknown> | null) : null;
    const type = PHOTO_TYPES.find((one) => one === told?.type);
    const bytes = fromBase64Url(String(told?.base64url));
    const act = acts.find(({ photoId }) => photoId === told?.photo);
    if (!type || !bytes || !act || sha256Hex(bytes) !== act.sha256) return undefined;
    photos.push({ photoId: String(act.photoId), type, bytes: bytes.buffer });
  }
  return photos;
}

function problemOf(value: unknown, line: string, jobId: string): string | undefined {
  if (!isCanonicalLine(value, line)) return 'not canonical';
  const read = readEvent(value);
  if (read.kind === 'broken') return read.problem;
  return read.event.jobId === jobId ? undefined : 'of another job';
}
