import {
  type CsvProblem,
  type CsvReading,
  type CsvStyle,
  compareReadings,
  exportReadingsCsv,
  readReadingsCsvFile,
  safeFileName
} from '$lib/storage';
import { type ReadyBackup, makeBackup, noteBackup } from '$lib/app';
import { csvActs } from './csv-acts.ts';
import { type ReadyFile, download, readyFile, share } from '$lib/app';
import type { JobState } from '$lib/app';
import { newJobId } from '$lib/app';
import { sayCsvProblem } from './say-csv-problem.ts';
import { journalStore } from '$lib/app';

/** What became of a file of readings. */
export type CsvImport =
  /** So many rows equal readings of the job: the person decides. */
  | { kind: 'asked'; rows: number; known: number }
  | {
      kind: 'taken';
      slates: number;
      pallets: number;
      leftOut: number;
      ignored: readonly string[];
    }
  | { kind: 'left-out' }
  /** The first problems in sentences, of so many. */
  | { kind: 'refused'; problems: string[]; count: number }
  | { kind: 'not-saved' };

/** What to do with a file of which the job has readings already. */
export type CsvChoice = 'new-only' | 'all' | 'nothing';

/** A file that waits for an answer. */
interface WaitingFile {
  readonly rows: readonly CsvReading[];
  readonly fresh: readonly CsvReading[];
  readonly ignored: readonly string[];
}

/** Readings of a job into and out of files. */
export class FilesState {
  readonly #job: () => JobState;
  #waiting: WaitingFile | undefined;
  /** What is going on; empty when nothing is. */
  doing = $state<'' | 'backup' | 'reading' | 'writing'>('');
  readonly isBusy = $derived(this.doing !== '');
  /** Name of the file last chosen. */
  chosen = $state('');
  imported = $state.raw<CsvImport>();
  ready = $state.raw<ReadyFile & { style: CsvStyle }>();
  backup = $state.raw<ReadyBackup>();
  /** Why there is no backup file, in sentences. */
  backupRefused = $state.raw<readonly string[]>();
  /** Whether the backup that left the device could be noted; undefined before it left. */
  isBackupNoted = $state<boolean>();
  /** The file that the share sheet did not take. */
  notShared = $state<'backup' | 'csv'>();
  problem = $state('');

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /**
   * Takes a CSV file in, whole and in one transaction, or says what is wrong with it. A file of
   * which the job seems to have readings already waits for {@link decide}.
   */
  async importCsv(file: File): Promise<void> {
    this.imported = undefined;
    this.#waiting = undefined;
    this.chosen = file.name;
    await this.#work('reading', async () => {
      const read = await readReadingsCsvFile(file);
      if (!read.ok) {
        this.imported = refusalOf(read.problems);
        return;
      }
      const { rows, ignored } = read;
      const compared = await compareReadings(journalStore(), this.#job().jobId, rows);
      if (compared.isLikelyAgain) {
        this.#waiting = { rows, fresh: compared.fresh, ignored };
        this.imported = { kind: 'asked', rows: rows.length, known: compared.known };
      } else this.imported = await this.#takeIn(rows, 0, ignored);
    });
  }

  /** Answers what is to become of the file that waits. */
  async decide(choice: CsvChoice): Promise<void> {
    const waiting = this.#waiting;
    if (!waiting) return;
    this.#waiting = undefined;
    this.imported = choice === 'nothing' ? { kind: 'left-out' } : undefined;
    if (choice === 'nothing') return;
    const { rows, fresh, ignored } = waiting;
    const taken = choice === 'all' ? rows : fresh;
    await this.#work('reading', async () => {
      this.imported = await this.#takeIn(taken, rows.length - taken.length, ignored);
    });
  }

  /** Makes the file of all readings; it then waits in `ready`. */
  async exportCsv(style: CsvStyle): Promise<void> {
    this.ready = undefined;
    await this.#work('writing', async () => {
      const job = this.#job();
      const blob = await exportReadingsCsv(journalStore(), job.jobId, style);
      if (blob) this.ready = { ...readyFile(blob, safeFileName(job.name, 'csv')), style };
    });
  }

  /** Makes the job file; it then waits in `backup`, so that the next tap can share it at once. */
  async makeBackup(): Promise<void> {
    this.backup = undefined;
    this.backupRefused = undefined;
    this.isBackupNoted = undefined;
    await this.#work('backup', async () => {
      const made = await makeBackup(this.#job().jobId);
      if (made?.ok) this.backup = made.backup;
      else this.backupRefused = made?.sentences;
    });
  }

  /** Hands the backup to downloads or to the share sheet, and notes it as made if it is whole. */
  async saveBackup(way: 'download' | 'share'): Promise<void> {
    if (!this.backup) return;
    if (!(await this.#handOver(this.backup, 'backup', way))) return;
    if (this.backup.isWhole) this.isBackupNoted = await noteBackup(this.backup);
  }

  /** Hands the file of readings to downloads or to the share sheet. */
  async saveCsv(way: 'download' | 'share'): Promise<void> {
    if (this.ready) await this.#handOver(this.ready, 'csv', way);
  }

  async #handOver(
    file: ReadyFile,
    what: 'backup' | 'csv',
    way: 'download' | 'share'
  ): Promise<boolean> {
    this.notShared = undefined;
    if (way === 'download') download(file);
    else if (!(await share(file))) {
      this.notShared = what;
      return false;
    }
    return true;
  }

  /** Does some work and says what went wrong with it; what is on the device stays as it was. */
  async #work(doing: 'backup' | 'reading' | 'writing', work: () => Promise<void>): Promise<void> {
    this.doing = doing;
    this.problem = '';
    this.notShared = undefined;
    try {
      await work();
    } catch (error) {
      this.problem = String(error);
    } finally {
      this.doing = '';
    }
  }

  async #takeIn(
    rows: readonly CsvReading[],
    leftOut: number,
    ignored: readonly string[]
  ): Promise<CsvImport> {
    const job = this.#job();
    const { acts, pallets } = csvActs(rows, job.pallets, job.grades?.gradesId, newJobId);
    const stored = await job.act(acts);
    if (!stored) return { kind: 'not-saved' };
    return { kind: 'taken', slates: rows.length, pallets, leftOut, ignored };
  }
}

function refusalOf(found: readonly CsvProblem[]): CsvImport {
  const more = found.find((problem) => problem.code === 'more-problems')?.count;
  const count = more === undefined ? found.length : found.length - 1 + more;
  return { kind: 'refused', problems: found.map(sayCsvProblem), count };
}
