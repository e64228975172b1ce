import type { JobSummary } from '$lib/storage';
import { newJobId } from '$lib/app';
import { journalStore } from '$lib/app';

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

/** A job as the list has it. */
export type JobOfList = JobsState['jobs'][number];

/** The list of jobs on this device. */
export class JobsState {
  jobs = $state.raw<JobSummary[]>([]);
  isLoaded = $state(false);
  /** What the person looks for among the names. */
  wanted = $state('');
  /** So many jobs are found by looking. */
  readonly isSearched = $derived(this.jobs.length >= MANY);
  /** Whether all jobs are shown, however many there are. */
  showsAll = $state(false);
  /** The jobs whose names have every word that is looked for, newest first. */
  readonly found = $derived.by(() => {
    const asked = plain(this.wanted).split(' ').filter(Boolean);
    return this.isSearched
      ? this.jobs.filter(({ name }) => asked.every((word) => plain(name).includes(word)))
      : this.jobs;
  });
  readonly shown = $derived(this.showsAll ? this.found : this.found.slice(0, AT_FIRST));
  readonly hidden = $derived(this.found.length - this.shown.length);
  problem = $state('');

  async load(): Promise<void> {
    try {
      this.jobs = await journalStore().jobs();
      this.isLoaded = true;
      const lost = await journalStore().repair();
      if (lost.length > 0) this.jobs = await journalStore().jobs();
    } catch (error) {
      this.problem = String(error);
    }
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

  /** Makes a fresh copy of the chapel roof, the example of several lengths, and gives its id. */
  async createChapel(): Promise<string> {
    const { openChapelRoof } = await import('./open-example.ts');
    return openChapelRoof();
  }
}
