import type { CrewRecord } from '$lib/sync';
import { journalStore } from '../store.ts';
import { crewRow } from '../is-shared.ts';

/** The key that lets this device start crews at a hub. */
export interface KeptHubKey {
  readonly origin: string;
  readonly key: string;
}

const HUB_KEY = 'hubKey';

/** How far a job is shared, and with which hub; undefined for a job that is on this device alone. */
export async function recallCrew(jobId: string): Promise<CrewRecord | undefined> {
  return (await journalStore().readDevice(crewRow(jobId))) as CrewRecord | undefined;
}

export function keepCrew(state: CrewRecord): Promise<void> {
  return journalStore().writeDevice(crewRow(state.link.jobId), state);
}

/** Forgets the link: the job stays on this device as it is. */
export function forgetCrew(jobId: string): Promise<void> {
  return journalStore().writeDevice(crewRow(jobId), undefined);
}

export async function recallHubKey(): Promise<KeptHubKey | undefined> {
  return (await journalStore().readDevice(HUB_KEY)) as KeptHubKey | undefined;
}

export function keepHubKey(key: KeptHubKey): Promise<void> {
  return journalStore().writeDevice(HUB_KEY, key);
}

/** Where this app's own hub is: beside the app. */
export function ownHub(base: string): string {
  return `${location.origin}${base}`;
}
