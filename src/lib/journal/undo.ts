import type { ViewDraft } from './draft.ts';
import type { JournalEvent } from './events.ts';

/** Finds an event by id among those already folded, or undefined. */
export type Lookup = (id: string) => JournalEvent | undefined;

/** No honest job undoes undos of undos deeper than this, and folding stays quick up to it. */
export const LONGEST_UNDO_CHAIN = 1000;

/**
 * Whether an event is out of force: some undo names it that is not itself undone. Works on a chain
 * of undos of any length; in a circle, which import refuses, it comes to an end all the same.
 */
export function isVoided(draft: Pick<ViewDraft, 'peek'>, id: string): boolean {
  const { voidedBy } = draft.peek('voids');
  const undosOf = (voided: string) => (Object.hasOwn(voidedBy, voided) ? voidedBy[voided] : []);
  const out = new Map<string, boolean>([[id, false]]);
  const path = [{ id, next: 0 }];
  for (let here = path.at(-1); here; here = path.at(-1)) {
    const undos = undosOf(here.id);
    if (here.next === undos.length) {
      path.pop();
      continue;
    }
    const undo = undos[here.next];
    const isUndone = out.get(undo);
    if (isUndone === undefined) {
      out.set(undo, false);
      path.push({ id: undo, next: 0 });
    } else if (isUndone) here.next++;
    else {
      out.set(here.id, true);
      path.pop();
    }
  }
  return out.get(id) ?? false;
}

/** The event at the end of a chain of undos, if all of the chain is known. */
export function rootOf(id: string, lookup: Lookup): JournalEvent | undefined {
  const seen = new Set<string>();
  let event = lookup(id);
  while (event?.type === 'entryVoided' && !seen.has(event.id)) {
    seen.add(event.id);
    event = lookup(event.body.voids);
  }
  return event?.type === 'entryVoided' ? undefined : event;
}

/**
 * An undo that stands in a circle of undos, or at the end of a chain longer than
 * {@link LONGEST_UNDO_CHAIN}; undefined when there is none. Linear.
 *
 * @param voids by the id of each undo, the id that it names
 */
export function findUndoFault(voids: ReadonlyMap<string, string>): string | undefined {
  const depths = new Map<string, number>();
  for (const start of voids.keys()) {
    const path: string[] = [];
    const onPath = new Set<string>();
    let id: string | undefined = start;
    while (id !== undefined && voids.has(id) && !depths.has(id)) {
      if (onPath.has(id)) return id;
      onPath.add(id);
      path.push(id);
      id = voids.get(id);
    }
    let depth = (id !== undefined && depths.get(id)) || 0;
    for (const undo of path.reverse()) {
      depth++;
      if (depth > LONGEST_UNDO_CHAIN) return undo;
      depths.set(undo, depth);
    }
  }
  return undefined;
}
