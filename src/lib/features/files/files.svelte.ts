import {
  type CsvProblem,
  type CsvReadAs,
  type CsvReading,
  type CsvStyle,
  type CsvSum,
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
import { drawInForce, numbersInStock, offeredSlates } from '$lib/job';
import { MOST_PILES } from '$lib/engine/grading';
import { sayCsvProblem } from './say-csv-problem.ts';
import { journalStore } from '$lib/app';
import { words } from '$lib/text';

/** What was taken in of a file. */
export interface CsvTaken {
  readonly slates: number;
  readonly pallets: number;
  /** Pallets that the job did not have, with the size they were given. */
  readonly added: readonly { readonly label: string; readonly slates: number }[];
  /** Rows left out because the job has them. */
  readonly leftOut: number;
  /** Lines left out as means or totals. */
  readonly sums: number;
  /** Slates of the sample that do not judge the delivery. */
  readonly apart: number;
  readonly readAs: CsvReadAs;
}

/** What became of a file of readings. */
export type CsvImport =
  /** Some lines look like means or totals: the person decides. */
  | { kind: 'sums-asked'; sums: readonly CsvSum[] }
  /** So many rows equal readings of the job: the person decides. */
  | { kind: 'asked'; rows: number; known: number }
  | ({ kind: 'taken' } & CsvTaken)
  | { kind: 'left-out' }
  /** The first problems in sentences, of so many. */
  | { kind: 'refused'; problems: string[]; count: number }
  | { kind: 'not-saved' };

/** What to do with a file of which the job has readings already. */
export type CsvChoice = 'new-only' | 'all' | 'nothing';

/** A file as it was read. */
interface ReadFile {
  readonly rows: readonly CsvReading[];
  readonly readAs: CsvReadAs;
  /** Lines that were left out as means or totals. */
  readonly sums: number;
}

/** A file that waits for an answer, with the rows that the job does not have. */
interface WaitingFile extends ReadFile {
  readonly fresh: readonly CsvReading[];
}

/** Readings of a job into and out of files. */
export class FilesState {
  readonly #job: () => JobState;
  #waiting: WaitingFile | undefined;
  /** A file of which it is not known yet what its means and totals are. */
  #unread: { readonly file: File; readonly read: ReadFile } | undefined;
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
   * Takes a CSV file in, whole and in one transaction, or says what is wrong with it. A file with
   * lines that look like means or totals waits for {@link decideSums}; one of which the job seems to
   * have readings already for {@link decide}.
   */
  async importCsv(file: File): Promise<void> {
    this.imported = undefined;
    this.#waiting = undefined;
    this.#unread = undefined;
    this.chosen = file.name;
    await this.#work('reading', () => this.#read(file));
  }

  /** Says whether the lines that look like means or totals are slates. */
  async decideSums(areSlates: boolean): Promise<void> {
    const unread = this.#unread;
    if (!unread) return;
    this.#unread = undefined;
    this.imported = undefined;
    await this.#work('reading', () =>
      areSlates ? this.#read(unread.file, true) : this.#compare(unread.read)
    );
  }

  /** Answers what is to become of the file that waits. */
  async decide(choice: CsvChoice): Promise<void> {
    const waiting = this.#waiting;
    if (!waiting) return;
    this.#waiting = undefined;
    this.imported = choice === 'nothing' ? { kind: 'left-out' } : undefined;
    if (choice === 'nothing') return;
    const taken = choice === 'all' ? waiting.rows : waiting.fresh;
    await this.#work('reading', () => this.#takeIn(waiting, taken));
  }

  /** Makes the file of all readings; it then waits in `ready`. */
  async exportCsv(style: CsvStyle): Promise<void> {
    this.ready = undefined;
    await this.#work('writing', async () => {
      const job = this.#job();
      const blob = await exportReadingsCsv(journalStore(), job.jobId, style);
      if (!blob) return;
      const { fileName } = words.text.files;
      const name = fileName(job.name, style !== 'standard');
      this.ready = { ...readyFile(blob, safeFileName(name, 'csv')), style };
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

  async #read(file: File, takesSums = false): Promise<void> {
    const read = await readReadingsCsvFile(file, takesSums);
    if (!read.ok) {
      this.imported = refusalOf(read.problems);
      return;
    }
    const { rows, readAs, sums } = read;
    const unknown = rows.filter(({ grade = 1 }) => grade > MOST_PILES && !this.#hasPile(grade));
    if (unknown.length > 0) {
      this.imported = refusalOf(
        unknown.map(({ line, grade }) => ({ code: 'unknown-grade', line, text: `${grade}` }))
      );
      return;
    }
    const isPallet = ({ why, pallet }: CsvSum): boolean =>
      why === 'name' && this.#job().pallets.some(({ label }) => label === pallet);
    // A pallet of the job may be called so.
    if (sums.length > 0 && sums.every(isPallet)) return this.#read(file, true);
    const found = { rows, readAs, sums: sums.length };
    if (sums.length === 0) return this.#compare(found);
    this.#unread = { file, read: found };
    this.imported = { kind: 'sums-asked', sums };
  }

  /** Whether a pile with that number stands in the job, as where a file of its own is read back. */
  #hasPile(number: number): boolean {
    const { view, pileNumbers } = this.#job();
    return pileNumbers.includes(number) || numbersInStock(view).includes(number);
  }

  async #compare(read: ReadFile): Promise<void> {
    const { rows } = read;
    if (rows.length === 0) {
      this.imported = { kind: 'left-out' };
      return;
    }
    const compared = await compareReadings(journalStore(), this.#job().jobId, rows);
    if (!compared.isLikelyAgain) return this.#takeIn(read, rows);
    this.#waiting = { ...read, fresh: compared.fresh };
    this.imported = { kind: 'asked', rows: rows.length, known: compared.known };
  }

  async #takeIn({ rows, readAs, sums }: ReadFile, taken: readonly CsvReading[]): Promise<void> {
    const job = this.#job();
    const inForce = { gradesId: job.grades?.gradesId, drawId: drawInForce(job.view)?.id };
    const { acts, pallets, added } = csvActs(taken, job.pallets, inForce, newJobId);
    const stored = await job.act(acts);
    if (!stored) {
      this.imported = { kind: 'not-saved' };
      return;
    }
    // Ids rise, so that what is not older came with this file.
    const apart = offeredSlates(job.view).filter(
      ({ id, standing }) => id >= stored[0].id && standing !== 'judges'
    ).length;
    const leftOut = rows.length - taken.length;
    const slates = taken.length;
    this.imported = { kind: 'taken', slates, pallets, added, leftOut, sums, apart, readAs };
  }
}

function refusalOf(found: readonly CsvProblem[]): CsvImport {
  const more = found.find((problem) => problem.code === 'more-problems')?.count;
  const count = more === undefined ? found.length : found.length - 1 + more;
  return { kind: 'refused', problems: found.map(sayCsvProblem), count };
}
