import type { JobSummary } from '$lib/storage';
import { newJobId } from '$lib/app';
import { journalStore } from '$lib/app';

/** The list of jobs on this device. */
export class JobsState {
  jobs = $state.raw<JobSummary[]>([]);
  isLoaded = $state(false);
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
}
