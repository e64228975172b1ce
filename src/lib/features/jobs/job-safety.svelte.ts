import { journalStore } from '$lib/app';

/** Who has added to a job, as its journal on this device tells it. */
export class JobSafety {
  /** Devices whose entries the job holds; 0 while that is looked up. */
  devices = $state(0);

  async load(jobId: string): Promise<void> {
    this.devices = Object.keys(await journalStore().numbers(jobId)).length;
  }
}
