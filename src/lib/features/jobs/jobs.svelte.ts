import type { JobSummary } from '$lib/storage';
import { newJobId } from '$lib/app';
import { journalStore } from '$lib/app';
import { words } from '$lib/text';

/** From so many jobs on there is a field to find one by its name. */
const MANY = 8;
/** So many are shown at first: what comes after the list is not pushed out of sight. */
const AT_FIRST = 12;

/** A text in small letters without accents, as people type it in haste. */
function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase();
}

/** Where a device keeps which jobs are put away. */
const AWAY = 'jobsPutAway';

/** A job as the list has it. */
export type JobOfList = JobsState['jobs'][number];

/** The list of jobs on this device. */
export class JobsState {
  jobs = $state.raw<JobSummary[]>([]);
  isLoaded = $state(false);
  /** Jobs out of sight on this device: a list for the eye alone, no entry of any journal. */
  away = $state.raw<readonly string[]>([]);
  readonly atHand = $derived(this.jobs.filter(({ jobId }) => !this.away.includes(jobId)));
  readonly putBy = $derived(this.jobs.filter(({ jobId }) => this.away.includes(jobId)));
  /** What was last done with a job of the list, in words. */
  told = $state('');
  /** What the person looks for among the names. */
  wanted = $state('');
  /** So many jobs are found by looking. */
  readonly isSearched = $derived(this.atHand.length >= MANY);
  /** Whether all jobs are shown, however many there are. */
  showsAll = $state(false);
  /** The jobs whose names have every word that is looked for, newest first. */
  readonly found = $derived.by(() => {
    const asked = plain(this.wanted).split(' ').filter(Boolean);
    return this.isSearched
      ? this.atHand.filter(({ name }) => asked.every((word) => plain(name).includes(word)))
      : this.atHand;
  });
  readonly shown = $derived(this.showsAll ? this.found : this.found.slice(0, AT_FIRST));
  readonly hidden = $derived(this.found.length - this.shown.length);
  problem = $state('');

  async load(): Promise<void> {
    try {
      const [jobs, away] = await Promise.all([
        journalStore().jobs(),
        journalStore().readDevice(AWAY)
      ]);
      this.away = Array.isArray(away) ? (away as string[]) : [];
      this.jobs = jobs;
      this.isLoaded = true;
      const lost = await journalStore().repair();
      if (lost.length > 0) this.jobs = await journalStore().jobs();
    } catch (error) {
      this.problem = String(error);
    }
  }

  /** Puts a job out of sight. */
  async putAway({ jobId, name }: JobSummary): Promise<void> {
    await this.#keepAway([...this.away, jobId]);
    this.told = words.text.jobs.isPutAway(name);
  }

  /** Puts a job back among the others. */
  async bringBack(jobId: string): Promise<void> {
    await this.#keepAway(this.away.filter((other) => other !== jobId));
    this.told = '';
  }

  async #keepAway(jobIds: readonly string[]): Promise<void> {
    const there = jobIds.filter((jobId) => this.jobs.some((job) => job.jobId === jobId));
    try {
      await journalStore().writeDevice(AWAY, there);
      this.away = there;
    } catch (error) {
      this.problem = words.text.common.saveFailed(String(error));
    }
  }

  /** What is wrong with a job's name; empty when nothing is. */
  nameProblem(name: string, exceptFor?: string): string {
    const text = words.text.jobs;
    if (!name.trim()) return text.nameMissing;
    const isTaken = this.jobs.some(
      (job) => job.jobId !== exceptFor && this.isSameName(job.name, name)
    );
    return isTaken ? text.nameTaken(name.trim()) : '';
  }

  /** Whether two names are one to whoever types in haste. */
  isSameName(one: string, other: string): boolean {
    return plain(one.trim()) === plain(other.trim());
  }

  /** Shows the list as it is now, and what was done. */
  async tell(what: string): Promise<void> {
    await this.load();
    this.told = what;
  }

  /** Opens a new job and gives its id. */
  async create(name: string): Promise<string> {
    const jobId = newJobId();
    await journalStore().append(jobId, [{ type: 'jobOpened', body: { name } }]);
    return jobId;
  }

  /** Makes a fresh copy of the worked example and gives its id. */
  async createExample(): Promise<string> {
    const { openWorkedExample } = await import('./open-example.ts');
    return openWorkedExample();
  }
}
