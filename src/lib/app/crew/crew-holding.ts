import type { DeviceNumbers } from '$lib/storage';
import type { CrewStanding } from '$lib/sync';
import { journalStore } from '../store.ts';
import { recallCrew } from './crew-memory.ts';

/** What the crew of a job is known to hold of it. */
export interface CrewHolding {
  readonly isShared: boolean;
  /** Whether this device can let others in: the crew must not lose the last one that can. */
  readonly isKeeper: boolean;
  /** By device, the last of its numbers that the hub acknowledged. */
  readonly numbers: DeviceNumbers;
}

/**
 * What a job's hub acknowledged. Of a keeper's job, and of one with photos still to be given, nothing
 * counts: such a job is safe in a backup file alone.
 */
export async function crewHolding(jobId: string): Promise<CrewHolding> {
  const record = await recallCrew(jobId);
  if (!record) return { isShared: false, isKeeper: false, numbers: {} };
  const isKeeper = record.link.role === 'keeper';
  // Runs of a copied phone stand under other numbers at the hub: they tell nothing of those here.
  const isRenamed = (record.renamed?.length ?? 0) > 0;
  const counts = !isKeeper && !isRenamed && record.photosToGive.length === 0;
  const tips = Object.entries(record.tips).filter(([device]) => !record.held[device]);
  return {
    isShared: true,
    isKeeper,
    numbers: counts ? Object.fromEntries(tips.map(([device, { last }]) => [device, last])) : {}
  };
}

/** How far the hub has what this device wrote of a job; undefined for a job without a crew. */
export async function crewStanding(jobId: string): Promise<CrewStanding | undefined> {
  const record = await recallCrew(jobId);
  if (!record) return undefined;
  const { standingOf } = await import('$lib/sync');
  return standingOf(record, await journalStore().numbers(jobId));
}
