import { getContext, setContext } from 'svelte';
import type { SharingState } from './crew/index.ts';

const KEY = Symbol('crew');

/** What the pages of a job know of its sharing: nothing until it is loaded. */
export interface CrewOfJob {
  readonly sharing: SharingState | undefined;
  /** Loads it, whether or not the job is shared. */
  load(): Promise<SharingState>;
}

export function provideCrew(crew: CrewOfJob): void {
  setContext(KEY, crew);
}

/** Call while the component is set up. */
export function useCrew(): CrewOfJob {
  return getContext<CrewOfJob>(KEY);
}
