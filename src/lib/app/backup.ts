import {
  type Copies,
  type DeviceNumbers,
  type ImportResult,
  readJobFile,
  safeFileName,
  writeJobFile
} from '$lib/storage';
import { words } from '$lib/text';
import { type ReadyFile, readyFile } from './file-saving.ts';
import { journalStore } from './store.ts';

/** A backup made and waiting to leave the device. */
export interface ReadyBackup extends ReadyFile {
  jobId: string;
  events: number;
  devices: DeviceNumbers;
  sha256: string;
}

/** Makes the job file of a job; undefined when there is no such job. */
export async function makeBackup(jobId: string): Promise<ReadyBackup | undefined> {
  const made = await writeJobFile(journalStore(), jobId);
  if (!made) return undefined;
  const day = new Date().toISOString().slice(0, 10);
  const name = safeFileName(`${made.name} ${day}`, 'evencourse.jsonl');
  const { events, devices, sha256 } = made;
  return { ...readyFile(made.blob, name), jobId, events, devices, sha256 };
}

/**
 * Notes that a backup left the device, as far as a browser lets one know. On a full device, where a
 * backup is needed most, the note itself may fail: then false, and the entries count as not backed
 * up, which is the safe way round.
 */
export async function noteBackup({ jobId, devices }: ReadyBackup): Promise<boolean> {
  try {
    await journalStore().markExported(jobId, devices, new Date().toISOString());
    return true;
  } catch {
    return false;
  }
}

/** Takes a job file in, whole or not at all. */
export function restore(file: Blob, copies: Copies): Promise<ImportResult> {
  return readJobFile(journalStore(), file, copies);
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
