import type { StoredEvent } from '$lib/journal';
import type { SyncJournal } from './crew-state.ts';

/**
 * The events of one device above a number, up to another, in order of number. Looks at the newest
 * first, so that what was done just now is found at once however long the job is.
 */
export async function eventsOf(
  journal: SyncJournal,
  jobId: string,
  device: string,
  above: number,
  upTo: number
): Promise<StoredEvent[]> {
  const wanted = ({ deviceId, deviceSeq }: StoredEvent) =>
    deviceId === device && deviceSeq > above && deviceSeq <= upTo;
  for (let limit = 64; limit <= 4096; limit *= 8) {
    if (limit < upTo - above) continue;
    const found = (await journal.newest(jobId, limit)).filter(wanted);
    if (found.length === upTo - above) return found.sort(byNumber);
  }
  const found: StoredEvent[] = [];
  for await (const batch of journal.events(jobId)) found.push(...batch.filter(wanted));
  return found.sort(byNumber);
}

function byNumber(one: StoredEvent, other: StoredEvent): number {
  return one.deviceSeq - other.deviceSeq;
}
