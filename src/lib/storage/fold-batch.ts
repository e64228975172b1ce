import {
  type JournalEvent,
  type JobView,
  type StoredEvent,
  ViewDraft,
  foldEvent,
  readEvent
} from '$lib/journal';

/** Fetches stored events by id. */
export type FetchEvents = (ids: string[]) => Promise<(StoredEvent | undefined)[]>;

/**
 * Folds a batch of events onto a view, fetching first what its undos name, along chains of undos.
 * Gives the draft, so that the caller can store the touched parts.
 */
export async function foldBatch(
  base: JobView,
  events: readonly StoredEvent[],
  fetch: FetchEvents
): Promise<ViewDraft> {
  const reads = events.map(readEvent);
  const known = new Map<string, JournalEvent>();
  for (const read of reads) if (read.kind === 'known') known.set(read.event.id, read.event);
  const folded = new Set<string>();
  let wanted = voidsIn([...known.values()]);
  while ((wanted = wanted.filter((id) => !known.has(id))).length > 0) {
    const fetched = (await fetch(wanted))
      .filter((event) => event !== undefined)
      .map(readEvent)
      .filter((read) => read.kind === 'known')
      .map((read) => read.event);
    for (const event of fetched) {
      known.set(event.id, event);
      folded.add(event.id);
    }
    wanted = voidsIn(fetched);
  }
  const draft = new ViewDraft(base);
  const lookup = (id: string) => (folded.has(id) ? known.get(id) : undefined);
  for (const read of reads) {
    foldEvent(draft, read, lookup);
    if (read.kind === 'known') folded.add(read.event.id);
  }
  return draft;
}

function voidsIn(events: readonly JournalEvent[]): string[] {
  return events.flatMap((event) => (event.type === 'entryVoided' ? [event.body.voids] : []));
}
