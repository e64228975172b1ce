import { type CsvStyle, exportReadingsCsv, readReadingsCsvFile, safeFileName } from '$lib/storage';
import { type ReadyBackup, makeBackup, noteBackup } from './backup.ts';
import { csvActs } from './csv-acts.ts';
import { type ReadyFile, download, readyFile, share } from './file-saving.ts';
import type { JobState } from './job.svelte.ts';
import { newJobId } from './new-job.ts';
import { sayCsvProblem } from './say-csv-problem.ts';
import { journalStore } from './store.ts';

/** What became of a file of readings. */
export type CsvImport =
  | { kind: 'taken'; slates: number; pallets: number; ignored: readonly string[] }
  | { kind: 'refused'; problems: string[] }
  | { kind: 'not-saved' };

/** Readings of a job into and out of files. */
export class FilesState {
  readonly #job: () => JobState;
  isBusy = $state(false);
  imported = $state.raw<CsvImport>();
  ready = $state.raw<ReadyFile>();
  backup = $state.raw<ReadyBackup>();
  /** Whether the backup that left the device could be noted; undefined before it left. */
  isBackupNoted = $state<boolean>();
  problem = $state('');

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /** Takes a CSV file in, whole and in one transaction, or says what is wrong with it. */
  async importCsv(file: Blob): Promise<void> {
    this.imported = undefined;
    await this.#work(async () => {
      this.imported = await this.#import(file);
    });
  }

  /** Makes the file of all readings; it then waits in `ready`. */
  async exportCsv(style: CsvStyle): Promise<void> {
    await this.#work(async () => {
      const job = this.#job();
      const blob = await exportReadingsCsv(journalStore(), job.jobId, style);
      if (blob) this.ready = readyFile(blob, safeFileName(job.name, 'csv'));
    });
  }

  /** Makes the job file; it then waits in `backup`, so that the next tap can share it at once. */
  async makeBackup(): Promise<void> {
    this.isBackupNoted = undefined;
    await this.#work(async () => {
      this.backup = await makeBackup(this.#job().jobId);
    });
  }

  /** Hands the backup to downloads or to the share sheet and notes it as made. */
  async saveBackup(way: 'download' | 'share'): Promise<void> {
    if (!this.backup) return;
    if (way === 'download') download(this.backup);
    else if (!(await share(this.backup))) return;
    this.isBackupNoted = await noteBackup(this.backup);
  }

  /** Does some work and says what went wrong with it; what is on the device stays as it was. */
  async #work(work: () => Promise<void>): Promise<void> {
    this.isBusy = true;
    this.problem = '';
    try {
      await work();
    } catch (error) {
      this.problem = String(error);
    } finally {
      this.isBusy = false;
    }
  }

  async #import(file: Blob): Promise<CsvImport> {
    const read = await readReadingsCsvFile(file);
    if (!read.ok) return { kind: 'refused', problems: read.problems.map(sayCsvProblem) };
    const job = this.#job();
    const { acts, pallets } = csvActs(read.rows, job.pallets, job.grades?.gradesId, newJobId);
    const stored = await job.act(acts);
    if (!stored) return { kind: 'not-saved' };
    return { kind: 'taken', slates: read.rows.length, pallets, ignored: read.ignored };
  }
}
