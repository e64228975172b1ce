import { ViewDraft } from './draft.ts';
import { count } from './effects.ts';
import type { JournalEvent, ReadEvent } from './events.ts';
import type { JobView } from './view.ts';

/** Finds an event by id among those already folded, or undefined. */
export type Lookup = (id: string) => JournalEvent | undefined;

/** A view of no events. */
export const EMPTY_VIEW: JobView = new Map();

/**
 * Folds one event into a draft. The same event must not be folded twice.
 *
 * An undo (entryVoided) takes out what it names, or brings it back when what it names is itself an
 * undo. An undo that arrives before what it names (devices merged in any order) takes effect when
 * that arrives.
 *
 * @param lookup must find every known event folded before that an undo names, also along a chain
 * of undos
 */
export function foldEvent(draft: ViewDraft, read: ReadEvent, lookup: Lookup): void {
  if (read.kind === 'broken') return;
  if (read.kind === 'unknown') {
    const { unknown } = draft.part('voids');
    unknown[read.event.type] = (unknown[read.event.type] ?? 0) + 1;
    return;
  }
  const event = read.event;
  if (event.type !== 'entryVoided') {
    if (!isVoided(draft, event.id)) count(draft, event, 1);
    return;
  }
  const root = rootOf(event.body.voids, lookup);
  const wasVoided = root ? isVoided(draft, root.id) : false;
  const { voidedBy } = draft.part('voids');
  const voiders = Object.hasOwn(voidedBy, event.body.voids) ? voidedBy[event.body.voids] : [];
  voidedBy[event.body.voids] = [...voiders, event.id].sort();
  if (!root) return;
  const isNowVoided = isVoided(draft, root.id);
  if (isNowVoided !== wasVoided) count(draft, root, isNowVoided ? -1 : 1);
}

/** Folds many events; ids must be distinct. Linear. */
export function foldAll(reads: readonly ReadEvent[], base: JobView = EMPTY_VIEW): JobView {
  const draft = new ViewDraft(base);
  const known = new Map<string, JournalEvent>();
  for (const read of reads) {
    foldEvent(draft, read, (id) => known.get(id));
    if (read.kind === 'known') known.set(read.event.id, read.event);
  }
  return draft.finish();
}

/** Whether an event is out of force: some undo names it that is not itself undone. */
export function isVoided(draft: Pick<ViewDraft, 'peek'>, id: string): boolean {
  return voidedIn(draft.peek('voids').voidedBy, id, new Set());
}

function voidedIn(
  voidedBy: Readonly<Record<string, readonly string[]>>,
  id: string,
  seen: Set<string>
): boolean {
  if (seen.has(id) || !Object.hasOwn(voidedBy, id)) return false;
  seen.add(id);
  return voidedBy[id].some((voider) => !voidedIn(voidedBy, voider, seen));
}

/** The event at the end of a chain of undos, if all of the chain is known. */
function rootOf(id: string, lookup: Lookup): JournalEvent | undefined {
  const seen = new Set<string>();
  let event = lookup(id);
  while (event?.type === 'entryVoided' && !seen.has(event.id)) {
    seen.add(event.id);
    event = lookup(event.body.voids);
  }
  return event?.type === 'entryVoided' ? undefined : event;
}
