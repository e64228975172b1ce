import { type JobView, ViewDraft, isVoided, meanHundredths, readEvent } from '$lib/journal';
import type { FarReading } from '$lib/job';
import type { JournalStore } from '$lib/storage';

/**
 * The id of the entry that a reading came with, the newest where several measure the same; undefined
 * where none is in force. One pass over the events: to be asked on a tap, not before.
 */
export async function eventOfReading(
  store: Pick<JournalStore, 'events'>,
  jobId: string,
  view: JobView,
  { palletId, hundredths }: Pick<FarReading, 'palletId' | 'hundredths'>
): Promise<string | undefined> {
  const voids = new ViewDraft(view);
  let found: string | undefined;
  for await (const batch of store.events(jobId))
    for (const stored of batch) {
      if (stored.type !== 'slateGauged' || isVoided(voids, stored.id)) continue;
      const read = readEvent(stored);
      if (read.kind !== 'known' || read.event.type !== 'slateGauged') continue;
      const { body } = read.event;
      const isIt = body.palletId === palletId && meanHundredths(body.points) === hundredths;
      if (isIt && !body.sample) found = stored.id;
    }
  return found;
}
