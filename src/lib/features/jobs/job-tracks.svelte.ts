import { SvelteMap } from 'svelte/reactivity';
import type { JobSummary } from '$lib/storage';
import { journalStore } from '$lib/app';
import { type JobTrack, jobTrack } from './job-track.ts';

/** How far the jobs of a list are, read one after another: the list itself does not wait for that. */
export class JobTracks {
  readonly #tracks = new SvelteMap<string, { readonly events: number; readonly track: JobTrack }>();
  readonly #asked: JobSummary[] = [];
  #isReading = false;
  #isClosed = false;

  of(jobId: string): JobTrack | undefined {
    return this.#tracks.get(jobId)?.track;
  }

  /** Asks for a job that has come into sight. */
  want(job: JobSummary): void {
    this.#asked.push(job);
    if (!this.#isReading) void this.#read();
  }

  /** Ends what is still to be read. */
  close(): void {
    this.#isClosed = true;
  }

  /** Reads what is not known yet, or has gone on since. A job that does not open stays without. */
  async #read(): Promise<void> {
    this.#isReading = true;
    for (let job = this.#asked.shift(); job && !this.#isClosed; job = this.#asked.shift()) {
      const { jobId, events } = job;
      if (this.#tracks.get(jobId)?.events === events) continue;
      const opened = await journalStore()
        .open(jobId)
        .catch(() => undefined);
      if (opened) this.#tracks.set(jobId, { events, track: jobTrack(opened.view) });
    }
    this.#isReading = false;
  }
}
