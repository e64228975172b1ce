/**
 * Whether a text that has the form of an ISO date, or begins with one, names a day of the calendar
 * (proleptic Gregorian): browsers differ in whether they refuse 30 February or count on into March.
 *
 * @example isCalendarDay('2026-02-30') // false
 */
export function isCalendarDay(text: string): boolean {
  const [year, month, day] = text.slice(0, 10).split('-').map(Number);
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}
