import {
  type JobView,
  type JournalEvent,
  type ReadEvent,
  type StoredEvent,
  ViewDraft,
  findUndoFault,
  applyEvent,
  readEvent
} from '$lib/journal';

/** Fetches stored events by id. */
export type FetchEvents = (ids: string[]) => Promise<(StoredEvent | undefined)[]>;

export interface FoldedBatch {
  /** Holds the touched parts, for storage. */
  readonly draft: ViewDraft;
  /** An undo in a circle of undos or too far along a chain of them: such events must not be kept. */
  readonly undoFault: string | undefined;
  /** The events that can be read, and those that cannot. */
  readonly readable: readonly StoredEvent[];
  readonly damaged: readonly StoredEvent[];
  /** What is wrong with an event that cannot be read, which must not be kept either. */
  readonly broken: string | undefined;
}

/**
 * Folds a batch of events onto a view, fetching first what its undos name, along chains of undos.
 */
export async function foldBatch(
  base: JobView,
  events: readonly StoredEvent[],
  fetch: FetchEvents
): Promise<FoldedBatch> {
  const reads = events.map(readEvent);
  const known = new Map(knownOf(reads).map((event) => [event.id, event]));
  const folded = new Set<string>();
  const asked = new Set<string>();
  let wanted = namedIn([...known.values()]);
  while ((wanted = wanted.filter((id) => !known.has(id) && !asked.has(id))).length > 0) {
    for (const id of wanted) asked.add(id);
    const stored = (await fetch(wanted)).filter((event) => event !== undefined);
    const fetched = knownOf(stored.map(readEvent));
    for (const event of fetched) {
      known.set(event.id, event);
      folded.add(event.id);
    }
    wanted = namedIn(fetched);
  }
  const draft = new ViewDraft(base);
  const undoFault = findUndoFault(voidsIn(known));
  const broken = reads.find((read) => read.kind === 'broken')?.problem;
  const readable = events.filter((_event, at) => reads[at].kind !== 'broken');
  const damaged = events.filter((_event, at) => reads[at].kind === 'broken');
  const batch = { draft, undoFault, broken, readable, damaged };
  if (undoFault !== undefined) return batch;
  const lookup = (id: string) => (folded.has(id) ? known.get(id) : undefined);
  for (const read of reads) {
    applyEvent(draft, read, lookup);
    if (read.kind === 'known') folded.add(read.event.id);
  }
  return batch;
}

function knownOf(reads: readonly ReadEvent[]): JournalEvent[] {
  return reads.flatMap((read) => (read.kind === 'known' ? [read.event] : []));
}

function namedIn(events: readonly JournalEvent[]): string[] {
  return events.flatMap((event) => (event.type === 'entryVoided' ? [event.body.voids] : []));
}

function voidsIn(known: ReadonlyMap<string, JournalEvent>): Map<string, string> {
  const voids = new Map<string, string>();
  for (const event of known.values())
    if (event.type === 'entryVoided') voids.set(event.id, event.body.voids);
  return voids;
}
