import { type StoredEvent, canonicalJson, readEvent } from '$lib/journal';
import {
  type DeviceNumbers,
  type ImportResult,
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

export type ReadMate =
  | { readonly ok: true; readonly jobId: string; readonly events: readonly StoredEvent[] }
  | { readonly ok: false; readonly fault: MateFault; readonly detail: string };

/** The events of a job that a receiver lacks, in order of id; all of them when nothing is known. */
export async function eventsLacked(
  journal: SyncJournal,
  jobId: string,
  have: DeviceNumbers = {}
): Promise<StoredEvent[]> {
  const lacked: StoredEvent[] = [];
  for await (const batch of journal.events(jobId))
    lacked.push(...batch.filter(({ deviceId, deviceSeq }) => deviceSeq > (have[deviceId] ?? 0)));
  return lacked;
}

/** Events packed for a mate: their canonical lines by gzip, with their hash in front. */
export async function packEvents(
  jobId: string,
  events: readonly StoredEvent[]
): Promise<Uint8Array<ArrayBuffer>> {
  const lines = events.map((event) => `${canonicalJson(event)}\n`).join('');
  const head = canonicalJson({ events: events.length, jobId, sha256: sha256Hex(utf8(lines)) });
  return pack(utf8(`${head}\n${lines}`));
}

/** Reads what {@link packEvents} made, and believes nothing. Never throws. */
export async function unpackEvents(packed: Uint8Array<ArrayBuffer>): Promise<ReadMate> {
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
  if (lines.length !== told.events) return refuse('broken', 'miscounted');
  const events: StoredEvent[] = [];
  for (const [at, line] of lines.entries()) {
    const parsed = parseGuarded(line);
    const problem = parsed.ok ? problemOf(parsed.value, line, told.jobId) : parsed.detail;
    if (!parsed.ok || problem) return refuse('broken', `${at + 1}: ${problem}`);
    events.push(parsed.value as StoredEvent);
  }
  return { ok: true, jobId: told.jobId, events };
}

/**
 * A text to send, as `text/plain` in a `.txt`: any messenger carries lines of base64url.
 *
 * @param sentence what the receiver is to do, in his language
 */
export async function writeMateText(
  jobId: string,
  events: readonly StoredEvent[],
  sentence: string
): Promise<string> {
  const packed = await packEvents(jobId, events);
  const body = toBase64Url(packed).replace(new RegExp(`.{${LINE}}`, 'g'), '$&\n');
  const check = sha256Hex(packed).slice(0, 8);
  return `${OPENING} ${sentence}\n\n${body}\n.${check}\n`;
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
  return unpackEvents(packed);
}

/** Takes in what was read, by the same checks as any merge. */
export function mergeMate(
  journal: SyncJournal,
  read: ReadMate & { readonly ok: true }
): Promise<ImportResult> {
  return journal.merge(read.events);
}

function problemOf(value: unknown, line: string, jobId: string): string | undefined {
  if (!isCanonicalLine(value, line)) return 'not canonical';
  const read = readEvent(value);
  if (read.kind === 'broken') return read.problem;
  return read.event.jobId === jobId ? undefined : 'of another job';
}
