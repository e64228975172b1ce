import { checkJobFile, jobFilesIn, safeFileName } from '$lib/storage';
import { words } from '$lib/text';
import { type ReadyBackup, makeBackup, noteBackup } from './backup.ts';
import { type ReadyFile, readyFile } from './file-saving.ts';
import { journalStore } from './store.ts';

/** A job that the file of all jobs lacks, or holds only in part: why, in sentences. */
export interface NotBackedUp {
  readonly jobId: string;
  readonly name: string;
  readonly sentences: readonly string[];
}

/** The job files of all jobs on this device, one after the other in one file. */
export interface EveryBackup {
  /** Undefined where no job could be put into it. */
  readonly file: ReadyFile | undefined;
  readonly whole: readonly ReadyBackup[];
  readonly notWhole: readonly NotBackedUp[];
}

/**
 * Makes the file of every job and reads it back, each job as an import would.
 *
 * @param tell hears how many jobs of how many are done
 * @throws Error when the file does not read back as it was written
 */
export async function makeEveryBackup(
  tell: (done: number, of: number) => void
): Promise<EveryBackup> {
  const text = words.text.files;
  const jobs = await journalStore().jobs();
  const made: ReadyBackup[] = [];
  const notWhole: NotBackedUp[] = [];
  for (const [at, { jobId, name }] of jobs.entries()) {
    tell(at, jobs.length);
    const backup = await makeBackup(jobId);
    if (backup?.ok) made.push(backup.backup);
    if (backup?.ok && !backup.backup.isWhole)
      notWhole.push({ jobId, name, sentences: [text.notWhole, ...backup.backup.missing] });
    if (backup && !backup.ok) notWhole.push({ jobId, name, sentences: backup.sentences });
  }
  if (made.length === 0) return { file: undefined, whole: [], notWhole };
  const blob = new Blob(
    made.map(({ file }) => file),
    { type: 'application/x-ndjson' }
  );
  const day = new Date().toISOString().slice(0, 10);
  const file = readyFile(blob, safeFileName(`${text.everyJob} ${day}`, 'evencourse.jsonl'));
  const parts = await jobFilesIn(file.file);
  const checks = await Promise.all(parts.map(checkJobFile));
  if (parts.length !== made.length || checks.some(({ ok }) => !ok)) throw new Error(text.notMade);
  return { file, whole: made.filter(({ isWhole }) => isWhole), notWhole };
}

/** Notes what a file of every job backed up, once it left; false when the device could not. */
export async function noteEveryBackup({ whole }: EveryBackup): Promise<boolean> {
  let isNoted = true;
  for (const backup of whole) isNoted = (await noteBackup(backup)) && isNoted;
  return isNoted;
}
