/** The calendar day of a moment where the device is, as YYYY-MM-DD. */
export function dayOf(moment: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}

/** The day it is now. */
export function today(): string {
  return dayOf(new Date());
}
