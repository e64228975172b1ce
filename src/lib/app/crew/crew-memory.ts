import type { CrewRecord, Mate } from '$lib/sync';
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
export async function forgetCrew(jobId: string): Promise<void> {
  await journalStore().writeDevice(matesRow(jobId), undefined);
  await journalStore().writeDevice(crewRow(jobId), undefined);
}

const matesRow = (jobId: string): string => `mates:${jobId}`;

/** Who was in the crew when the hub was last asked: without signal that is said as well. */
export async function recallMates(jobId: string): Promise<readonly Mate[]> {
  return ((await journalStore().readDevice(matesRow(jobId))) as Mate[] | undefined) ?? [];
}

export function keepMates(jobId: string, mates: readonly Mate[]): Promise<void> {
  return journalStore().writeDevice(matesRow(jobId), mates);
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
