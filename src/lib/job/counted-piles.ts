import { type BodyOf, type JobView, type Setting, partOf } from '$lib/journal';
import { pileOfKey } from './queries.ts';

type Count = Setting<BodyOf<'pileCounted'>>;

/** The counts by hand of a pile, under whatever grades, oldest first. */
function countsOf(view: JobView, number: number): Count[] {
  return Object.entries(partOf(view, 'laying').counted)
    .flatMap(([place, register]) => (pileOfKey(place) === number ? register : []))
    .sort((one, other) => (one.id < other.id ? -1 : 1));
}

/** The last count by hand of a pile, under whatever grades; undefined before one. */
export function lastCountOf(view: JobView, number: number): Count | undefined {
  return countsOf(view, number).at(-1);
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
  return movedAbout(view, number, lastCountOf(view, number)?.id ?? '');
}

function movedAbout(
  view: JobView,
  number: number,
  countedBy: string
): { before: number; since: number } {
  const sums = { before: 0, since: 0 };
  for (const { id, value } of partOf(view, 'laying').moved) {
    const gains = (of: number): number => (of === number ? value.slates : 0);
    sums[id < countedBy ? 'before' : 'since'] += gains(value.toPile) - gains(value.fromPile);
  }
  return sums;
}

/**
 * Slates that hand counts, with what was laid and lost before them, found on a pile beyond its tally: they
 * came off the pallets without being logged, so as many fewer are still to come. A later count that finds
 * fewer puts none back on the pallets, once some were laid or lost in between; else it mends the count
 * before it.
 */
export function unlogged(view: JobView, number: number): number {
  return foundBy(view, number, countsOf(view, number));
}

/** Slates that the last hand count of a pile should have found and did not. */
export function notFoundOf(view: JobView, number: number, talliedNow: number): number {
  const counts = countsOf(view, number);
  const last = counts.at(-1);
  if (!last) return 0;
  const { slates, tallied = talliedNow, taken = 0 } = last.value;
  const earlier = foundBy(view, number, counts.slice(0, -1), last);
  return Math.max(0, tallied + movedTo(view, number).before + earlier - taken - slates);
}

/** @param next the count that follows them, where there is one */
function foundBy(view: JobView, number: number, counts: readonly Count[], next?: Count): number {
  const found = counts.map(({ id, value: { slates, tallied, taken = 0 } }, at) => {
    const later = counts[at + 1] ?? next;
    if (tallied === undefined || (later && (later.value.taken ?? 0) <= taken)) return 0;
    return slates + taken - tallied - movedAbout(view, number, id).before;
  });
  return Math.max(0, ...found);
}
