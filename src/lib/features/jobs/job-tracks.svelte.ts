import { SvelteMap } from 'svelte/reactivity';
import type { JobSummary } from '$lib/storage';
import { journalStore } from '$lib/app';
import { type JobTrack, jobTrack } from './job-track.ts';

/** How far each job of a list is, read job after job: the list itself does not wait for that. */
export class JobTracks {
  readonly #tracks = new SvelteMap<string, { readonly events: number; readonly track: JobTrack }>();
  #round = 0;

  of(jobId: string): JobTrack | undefined {
    return this.#tracks.get(jobId)?.track;
  }

  /** Reads what is not known yet, or has gone on since. A job that does not open stays without. */
  async read(jobs: readonly JobSummary[]): Promise<void> {
    const round = ++this.#round;
    for (const { jobId, events } of jobs) {
      if (this.#tracks.get(jobId)?.events === events) continue;
      const opened = await journalStore()
        .open(jobId)
        .catch(() => undefined);
      if (round !== this.#round) return;
      if (opened) this.#tracks.set(jobId, { events, track: jobTrack(opened.view) });
    }
  }

  /** Ends what is still being read. */
  close(): void {
    this.#round++;
  }
}
