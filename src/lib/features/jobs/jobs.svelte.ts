import type { JobSummary } from '$lib/storage';
import { newJobId } from '$lib/app';
import { journalStore } from '$lib/app';
import type { JobTrack } from './job-track.ts';

/** The list of jobs on this device. */
export class JobsState {
  /** Newest first. */
  jobs = $state.raw<JobSummary[]>([]);
  /** How far each job is, by id; filled in once the list stands. */
  tracks = $state.raw<ReadonlyMap<string, JobTrack>>(new Map());
  isLoaded = $state(false);
  problem = $state('');
  #isClosed = false;

  async load(): Promise<void> {
    try {
      this.jobs = await journalStore().jobs();
      this.isLoaded = true;
      const lost = await journalStore().repair();
      if (lost.length > 0) this.jobs = await journalStore().jobs();
      await this.#readTracks();
    } catch (error) {
      this.problem = String(error);
    }
  }

  /** Ends what is still being read. */
  close(): void {
    this.#isClosed = true;
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

  /** Reads job after job how far it is: the list itself does not wait for that. */
  async #readTracks(): Promise<void> {
    if (this.jobs.length === 0) return;
    const { jobTrack } = await import('./job-track.ts');
    for (const { jobId } of this.jobs) {
      if (this.#isClosed) return;
      const opened = await journalStore().open(jobId);
      if (opened) this.tracks = new Map([...this.tracks, [jobId, jobTrack(opened.view)]]);
    }
  }
}
