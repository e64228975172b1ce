import { type JobView, minutesOfPallet, palletIds, unpiledMinutesOfPallet } from '$lib/journal';

/** A pause longer than this, in minutes, is a break and no sorting. Ours. */
const BREAK_MINUTES = 6;
/** Fewest minutes of sorting from which a pace is told. Ours. */
const ENOUGH_MINUTES = 5;

/** More slates than this in one minute were typed in from paper, and tell no pace. Ours. */
const MOST_IN_A_MINUTE = 60;

/** How fast the job is sorted, over a stretch of time. Of the job, never of a person. */
export interface Pace {
  readonly slates: number;
  /** Minutes of sorting, breaks left out. */
  readonly minutes: number;
  /** Slates an hour of sorting; null before there is enough to tell. */
  readonly perHour: number | null;
}

/**
 * Slates gauged or sorted in each minute since 1970, all pallets together; hours that lie wholly before
 * `fromMinute` are left out.
 */
export function minutesOf(view: JobView, fromMinute = 0): Map<number, number> {
  const total = new Map<number, number>();
  for (const palletId of palletIds(view)) {
    const minutes = minutesOfPallet(view, palletId, fromMinute);
    for (const key of Object.keys(minutes))
      total.set(Number(key), (total.get(Number(key)) ?? 0) + minutes[key]);
  }
  return total;
}

/**
 * Slates put on a pile or set aside in each minute: `minutesOf` without those that were gauged before
 * there were piles. A minute without any is not there.
 */
export function sortedMinutesOf(view: JobView, fromMinute = 0): Map<number, number> {
  const total = minutesOf(view, fromMinute);
  for (const palletId of palletIds(view)) {
    const unpiled = unpiledMinutesOfPallet(view, palletId, fromMinute);
    for (const key of Object.keys(unpiled)) {
      const left = (total.get(Number(key)) ?? 0) - unpiled[key];
      if (left > 0) total.set(Number(key), left);
      else total.delete(Number(key));
    }
  }
  return total;
}

/**
 * The pace from one minute on: slates over minutes of sorting, where a gap of more than six minutes
 * between two slates is a break. The running minute counts as a whole one. Slates typed in from a
 * tally sheet count as sorted, but not for the pace.
 *
 * @param minutes slates by minute since 1970; not modified
 * @param fromMinute first minute to count, this one included
 * @example ten slates in minute 0 and ten in minute 2 → 20 slates in 3 minutes
 */
export function paceSince(minutes: ReadonlyMap<number, number>, fromMinute: number): Pace {
  const counted = [...minutes].filter(([minute]) => minute >= fromMinute).sort(([a], [b]) => a - b);
  let slates = 0;
  let paced = 0;
  let worked = 0;
  let last: number | undefined;
  for (const [minute, n] of counted) {
    slates += n;
    if (n > MOST_IN_A_MINUTE) continue;
    paced += n;
    const gap = last === undefined ? Infinity : minute - last;
    worked += gap <= BREAK_MINUTES ? gap : 1;
    last = minute;
  }
  return {
    slates,
    minutes: worked,
    perHour: worked >= ENOUGH_MINUTES ? Math.round((paced * 60) / worked) : null
  };
}

/**
 * The pace of a job's sorting, from its first slate on a pile to its last: the one pace that every
 * screen says and works out with. A day's own pace would be another figure under the same words, and
 * there is none in the first minutes of a day.
 */
export function jobPace(view: JobView): Pace {
  return paceSince(sortedMinutesOf(view), 0);
}

/** The first minute since 1970 of the day that holds a moment (ms), in the device's time zone. */
export function firstMinuteOfDay(at: number): number {
  const moment = new Date(at);
  const midnight = new Date(moment.getFullYear(), moment.getMonth(), moment.getDate());
  return Math.floor(midnight.getTime() / 60_000);
}
