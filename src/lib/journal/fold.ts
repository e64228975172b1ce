import { ViewDraft } from './draft.ts';
import { count } from './effects.ts';
import type { JournalEvent, ReadEvent } from './events.ts';
import { type Lookup, isVoided, rootOf } from './undo.ts';
import type { JobView } from './view.ts';

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
export function applyEvent(draft: ViewDraft, read: ReadEvent, lookup: Lookup): void {
  if (read.kind === 'broken') return;
  if (read.kind === 'unknown') {
    const { unknown } = draft.part('voids');
    const before = Object.hasOwn(unknown, read.event.type) ? unknown[read.event.type] : 0;
    unknown[read.event.type] = before + 1;
    return;
  }
  const event = read.event;
  if (event.type !== 'entryVoided') {
    if (!isVoided(draft, event.id)) count(draft, event, 1);
    return;
  }
  const root = rootOf(event.body.voids, lookup);
  const wasVoided = root ? isVoided(draft, root.id) : false;
  noteUndo(draft, event.body.voids, event.id);
  if (!root) return;
  const isNowVoided = isVoided(draft, root.id);
  if (isNowVoided !== wasVoided) count(draft, root, isNowVoided ? -1 : 1);
}

/** Folds many events; ids must be distinct. Linear. */
export function foldAll(reads: readonly ReadEvent[], base: JobView = EMPTY_VIEW): JobView {
  const draft = new ViewDraft(base);
  const known = new Map<string, JournalEvent>();
  for (const read of reads) {
    applyEvent(draft, read, (id) => known.get(id));
    if (read.kind === 'known') known.set(read.event.id, read.event);
  }
  return draft.finish();
}

/** Notes which undo names which event, undos in the order of their ids. */
function noteUndo(draft: ViewDraft, voided: string, undo: string): void {
  const { voidedBy } = draft.part('voids');
  if (!Object.hasOwn(voidedBy, voided)) voidedBy[voided] = [];
  const undos = voidedBy[voided];
  let place = undos.length;
  while (place > 0 && undos[place - 1] > undo) place--;
  undos.splice(place, 0, undo);
}
