import { EngineError, requireWhole } from '../errors.ts';

/** How long a claim can still be made. */
export type ClaimClock =
  | {
      readonly ok: true;
      /** Last day on which a claim counts, as YYYY-MM-DD. */
      readonly lastDay: string;
      /** Calendar days from today to the last day; 0 on the last day, below 0 once it is past. */
      readonly daysLeft: number;
      readonly state: 'open' | 'last day' | 'over';
    }
  | { readonly ok: false; readonly reason: 'not-arrived-yet' };

const MS_PER_DAY = 86_400_000;

/**
 * Days left to claim. Whole calendar days, no hours and no time zones: give the dates as read on
 * the wall where the slates lie.
 *
 * @param arrivalDate day of arrival, YYYY-MM-DD; it is day 0
 * @param daysToClaim days allowed after it, whole, 0 or more
 * @param today YYYY-MM-DD
 * @returns the last day is arrival plus the days allowed; `not-arrived-yet` when today is earlier
 * @throws EngineError `inconsistent` for a date that is not in the calendar, `not-whole`
 *
 * The length of the claim is what the contract says; no figure is assumed.
 * @example claimClock('2028-02-25', 7, '2028-03-01') // last day 2028-03-03, 2 days left
 */
export function claimClock(arrivalDate: string, daysToClaim: number, today: string): ClaimClock {
  requireWhole(daysToClaim, 0, 'days to claim');
  const arrival = dayNumber(arrivalDate, 'arrival date');
  const now = dayNumber(today, 'today');
  if (now < arrival) return { ok: false, reason: 'not-arrived-yet' };
  const last = arrival + daysToClaim;
  const daysLeft = last - now;
  return {
    ok: true,
    lastDay: new Date(last * MS_PER_DAY).toISOString().slice(0, 10),
    daysLeft,
    state: daysLeft > 0 ? 'open' : daysLeft === 0 ? 'last day' : 'over'
  };
}

/** Days since 1970-01-01 of a calendar date, and proof that the date exists. */
function dayNumber(date: string, name: string): number {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date)
    throw new EngineError('inconsistent', `${name} '${date}' is not a day of the calendar`);
  return time / MS_PER_DAY;
}
