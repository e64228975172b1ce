import {
  type Copies,
  type DeviceNumbers,
  type ImportResult,
  type JobFile,
  type Missing,
  NothingReadable,
  checkJobFile,
  isEntries,
  jobFilesIn,
  readJobFile,
  rescueJobFile,
  safeFileName,
  writeJobFile
} from '$lib/storage';
import type { ReadMate } from '$lib/sync';
import { words } from '$lib/text';
import { type ReadyFile, readyFile } from './file-saving.ts';
import { journalStore } from './store.ts';

/** A job's file made, read back and waiting to leave the device. */
export interface ReadyBackup extends ReadyFile {
  jobId: string;
  events: number;
  devices: DeviceNumbers;
  sha256: string;
  /** Whether it holds all of the job. If not, it is no backup, and `missing` says why. */
  isWhole: boolean;
  missing: readonly string[];
}

export type MadeBackup =
  | { readonly ok: true; readonly backup: ReadyBackup }
  /** Why there is no file, in sentences. */
  | { readonly ok: false; readonly sentences: readonly string[] };

/**
 * Makes the job file of a job, and reads it back as an import would before anything is said of it.
 * Undefined when there is no such job.
 */
export async function makeBackup(jobId: string): Promise<MadeBackup | undefined> {
  const text = words.text.files;
  let made: JobFile | undefined;
  try {
    made = await writeJobFile(journalStore(), jobId);
  } catch (error) {
    if (!(error instanceof NothingReadable)) throw error;
    return { ok: false, sentences: [text.nothingReadable, text.askOtherFile] };
  }
  if (!made) return undefined;
  const day = new Date().toISOString().slice(0, 10);
  const name = safeFileName(`${made.name} ${day}`, 'evencourse.jsonl');
  const ready = readyFile(made.blob, name);
  const readBack = await checkJobFile(ready.file);
  if (!readBack.ok) {
    const { reason, line } = readBack;
    const where = line === undefined ? [] : [text.atLine(line)];
    return { ok: false, sentences: [text.notMade, text.restoreReasons[reason], ...where] };
  }
  const { events, devices, sha256 } = made;
  const missing = await sayWhatIsMissing(made.missing);
  const isWhole = missing.length === 0;
  return { ok: true, backup: { ...ready, jobId, events, devices, sha256, isWhole, missing } };
}

/**
 * Notes that a backup left the device, as far as a browser lets one know. On a full device, where a
 * backup is needed most, the note itself may fail: then false, and the entries count as not backed
 * up, which is the safe way round. A file that lacks anything of the job is noted as nothing.
 */
export async function noteBackup({ jobId, devices, isWhole }: ReadyBackup): Promise<boolean> {
  if (!isWhole) return false;
  try {
    await journalStore().markExported(jobId, devices, new Date().toISOString());
    return true;
  } catch {
    return false;
  }
}

/** What of a job is missing, in sentences; none where nothing is. */
export async function sayWhatIsMissing(missing: readonly Missing[]): Promise<string[]> {
  if (missing.length === 0) return [];
  const text = words.text.files;
  const here = await journalStore().deviceId();
  const entries = missing
    .filter(isEntries)
    .map(({ device, from, to, reason }) => text.missingEntries(from, to, reason, device === here));
  const photos = missing.length - entries.length;
  return [...entries, ...(photos > 0 ? [text.missingPhotos(photos)] : [])];
}

/** Takes a job file in, or what a mate sent from hand to hand: whole or not at all. */
export async function restore(file: Blob, copies: Copies): Promise<ImportResult> {
  const sent = await readMate(file);
  if (!sent) return readJobFile(journalStore(), file, copies);
  if (!sent.ok) return { ok: false, reason: MATE_REASONS[sent.fault] };
  const { mergeMate } = await import('$lib/sync');
  const result = await mergeMate(journalStore(), sent, copies);
  // Of a copied phone a part does not do: all of the job must be sent before both can be kept.
  return result.ok || sent.isWhole || !result.copiedDevice ? result : { ok: false, reason: 'part' };
}

const MATE_REASONS = {
  'not-ours': 'not-a-job-file',
  cut: 'torn',
  'too-new': 'too-new',
  'too-large': 'too-large',
  broken: 'wrong-hash'
} as const;

/** What a mate sent, as a text or as read off his codes; undefined for any other file. */
async function readMate(file: Blob): Promise<ReadMate | undefined> {
  const start = new Uint8Array(await file.slice(0, 4_096).arrayBuffer());
  const isPacked = start[0] === 0x1f && start[1] === 0x8b;
  const isText = start[0] !== OPEN_BRACE && /Evencourse job, part/.test(textOf(start));
  if ((!isPacked && !isText) || file.size > MOST_SENT_BYTES) return undefined;
  const { readMateText, unpackHandover } = await import('$lib/sync');
  return isPacked
    ? unpackHandover(new Uint8Array(await file.arrayBuffer()))
    : readMateText(await file.text());
}

/** A job file begins with this. */
const OPEN_BRACE = 0x7b;
/** Twice what a mate's text can come to. */
const MOST_SENT_BYTES = 32 * 2 ** 20;
const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

/** What became of a file of several jobs: each is taken in whole, or not at all. */
export interface RestoredJobs {
  readonly taken: number;
  readonly added: number;
  /** By the name in their headers, why the others were not taken in. */
  readonly refused: readonly { readonly name: string; readonly result: ImportResult }[];
}

/** Takes in each job of a file that holds several; undefined for a file of one job. */
export async function restoreEach(file: Blob): Promise<RestoredJobs | undefined> {
  const parts = await jobFilesIn(file);
  if (parts.length < 2) return undefined;
  let [taken, added] = [0, 0];
  const refused: { name: string; result: ImportResult }[] = [];
  for (const part of parts) {
    const result = await readJobFile(journalStore(), part);
    if (result.ok) {
      taken++;
      added += result.added;
    } else {
      const checked = await checkJobFile(part);
      refused.push({ name: checked.ok ? checked.header.name : '', result });
    }
  }
  return { taken, added, refused };
}

/** Takes the file of a damaged job in as a job of its own. */
export function rescue(file: Blob): Promise<ImportResult> {
  return rescueJobFile(journalStore(), file);
}

/** What became of a restore, in sentences. */
export function sayRestore(result: ImportResult): string[] {
  const text = words.text.files;
  if (!result.ok) {
    const where = result.line === undefined ? [] : [text.atLine(result.line)];
    return [text.restoreReasons[result.reason], ...where, text.restoreRefused];
  }
  const unknown = result.unknown > 0 ? [text.restoreUnknown(result.unknown)] : [];
  const branched = result.branched > 0 ? [text.keptBoth(result.branched)] : [];
  return [text.restored(result.added, result.already), ...branched, ...unknown];
}
