import { type BodyOf, type JobView, type Setting, partOf } from '$lib/journal';
import { pileOfKey } from './queries.ts';

/** The last count by hand of a pile, under whatever grades; undefined before one. */
export function lastCountOf(
  view: JobView,
  number: number
): Setting<BodyOf<'pileCounted'>> | undefined {
  let last: Setting<BodyOf<'pileCounted'>> | undefined;
  for (const [place, register] of Object.entries(partOf(view, 'laying').counted)) {
    const count = register.at(-1);
    if (count && pileOfKey(place) === number && !(last && last.id > count.id)) last = count;
  }
  return last;
}

/** What that count says. */
export function countOfPile(view: JobView, number: number): BodyOf<'pileCounted'> | undefined {
  return lastCountOf(view, number)?.value;
}

/**
 * Slates on a pile: its tally, or its hand count and what was tallied after that; with what was moved
 * to it, less what was moved away, since then.
 */
export function standing(view: JobView, number: number, tallied: number): number {
  const count = countOfPile(view, number);
  const onIt = count ? count.slates + Math.max(0, tallied - (count.tallied ?? tallied)) : tallied;
  return Math.max(0, onIt + movedTo(view, number).since);
}

/** Slates moved to a pile less those moved away: before it was counted by hand, and since. */
export function movedTo(view: JobView, number: number): { before: number; since: number } {
  const countedBy = lastCountOf(view, number)?.id ?? '';
  const sums = { before: 0, since: 0 };
  for (const { id, value } of partOf(view, 'laying').moved) {
    const gains = (of: number): number => (of === number ? value.slates : 0);
    sums[id < countedBy ? 'before' : 'since'] += gains(value.toPile) - gains(value.fromPile);
  }
  return sums;
}

/**
 * Slates that a hand count, with what was laid and lost before it, found on a pile beyond its tally:
 * they came off the pallets without being logged, so as many fewer are still to come.
 */
export function unlogged(view: JobView, number: number): number {
  const count = countOfPile(view, number);
  if (count?.tallied === undefined) return 0;
  const known = count.tallied + movedTo(view, number).before;
  return Math.max(0, count.slates + (count.taken ?? 0) - known);
}
