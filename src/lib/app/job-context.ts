import { getContext, setContext } from 'svelte';
import type { JobState } from './job.svelte.ts';

const KEY = Symbol('job');

/** Makes a job the one that the pages below work on. */
export function provideJob(job: () => JobState): void {
  setContext(KEY, job);
}

/** The job that the page works on. Call while the component is set up. */
export function useJob(): () => JobState {
  return getContext<() => JobState>(KEY);
}
