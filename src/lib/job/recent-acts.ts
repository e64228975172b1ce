import { type JobView, type StoredEvent, isVoided, partOf } from '$lib/journal';

/** How many acts can be taken back from the list. */
export const MOST_UNDOABLE = 10;

/** Slates only: one Undo too many must not take away the pallet that the sorter stands at. */
const UNDOABLE = ['slateGauged', 'readingHeld', 'slateTapped', 'slateSetAside', 'slateChecked'];

/**
 * The acts of this device that the sorter can take back: the last ten that are in force, newest
 * first.
 *
 * @param newest events of the job, newest first; not modified
 */
export function undoableActs(
  newest: readonly StoredEvent[],
  view: JobView,
  deviceId: string
): StoredEvent[] {
  const draft = { peek: (key: 'voids') => partOf(view, key) } as Parameters<typeof isVoided>[0];
  const acts: StoredEvent[] = [];
  for (const event of newest) {
    if (acts.length === MOST_UNDOABLE) break;
    const isOwn = event.deviceId === deviceId && UNDOABLE.includes(event.type);
    if (isOwn && !isVoided(draft, event.id)) acts.push(event);
  }
  return acts;
}
