import { canonicalJson, type StoredEvent } from '$lib/journal';

/** Whether two events with one id differ: then one of them was tampered with. */
export function findConflict(here: StoredEvent, there: StoredEvent): boolean {
  return canonicalJson(here) !== canonicalJson(there);
}
