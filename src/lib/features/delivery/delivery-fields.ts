import { readLength, readNumber } from '$lib/ui';

/** Why a field of the order cannot stand. */
export type OrderProblem =
  | 'not-a-number'
  | 'separators'
  | 'count-zero'
  | 'not-whole'
  | 'too-large'
  | 'tolerance-over-100'
  | 'tolerance-zero'
  | 'where-missing'
  | 'arrived-before-order'
  | 'answer-before-arrival'
  | 'limit-range'
  | 'over-100'
  | 'thickness-range'
  | 'size-range'
  | 'date'
  | 'negative';

/** A field read: its number, nothing where it is empty, or why it cannot stand. */
export type NumberRead =
  | { readonly ok: true; readonly value: number | undefined }
  | { readonly ok: false; readonly problem: OrderProblem };

/** Largest count and sum that a field takes. */
export const LARGEST_COUNT = 1_000_000;
export const LARGEST_AMOUNT = 1_000_000_000;

/** A number, or nothing. One group of three digits after a mark may be thousands: refused. */
export function readAmount(text: string, limit = LARGEST_AMOUNT): NumberRead {
  if (/^\s*\d{1,3}([ .,']\d{3})+\s*$/.test(text)) return { ok: false, problem: 'separators' };
  const read = readNumber(text);
  if (!read.ok)
    return read.reason === 'empty'
      ? { ok: true, value: undefined }
      : { ok: false, problem: 'not-a-number' };
  if (read.value < 0) return { ok: false, problem: 'negative' };
  return read.value > limit ? { ok: false, problem: 'too-large' } : { ok: true, value: read.value };
}

/** Thousands parted by one kind of mark that is no decimal point: 5,000, 5 000, 5'000. */
const GROUPED = /^\d{1,3}(?:([ ,'’\u00a0\u202f])\d{3})(?:\1\d{3})*$/;

/** A whole number, or nothing. A count has no decimals, so 5,000 and 5 000 are five thousand. */
export function readCount(text: string, limit = LARGEST_COUNT): NumberRead {
  const plain = text.trim();
  const read = readAmount(GROUPED.test(plain) ? plain.replace(/\D/g, '') : text, limit);
  if (!read.ok || read.value === undefined || Number.isInteger(read.value)) return read;
  return { ok: false, problem: 'not-whole' };
}

/** Slates ordered: an order of none cannot be judged. */
export function readOrdered(text: string): NumberRead {
  const read = readCount(text);
  return read.ok && read.value === 0 ? { ok: false, problem: 'count-zero' } : read;
}

/** A length in millimetres between bounds, or nothing; other units may be named. */
export function readBetween(
  text: string,
  lowMm: number,
  highMm: number,
  problem: OrderProblem
): NumberRead {
  const read = readLength(text, 'mm');
  if (!read.ok) {
    if (read.reason === 'empty') return { ok: true, value: undefined };
    return { ok: false, problem: read.reason === 'ambiguous' ? 'separators' : 'not-a-number' };
  }
  const isInside = read.value >= lowMm && read.value <= highMm;
  return isInside ? { ok: true, value: read.value } : { ok: false, problem };
}

/** A share in per cent, 0 to 100, or nothing. */
export function readPercent(text: string, problem: OrderProblem): NumberRead {
  const read = readAmount(text.replace(/%\s*$/, ''));
  if (!read.ok || read.value === undefined || read.value <= 100) return read;
  return { ok: false, problem };
}

/** A tolerance in per cent, above 0 and at most 100, or nothing. */
export function readTolerance(text: string): NumberRead {
  const read = readPercent(text, 'tolerance-over-100');
  return read.ok && read.value === 0 ? { ok: false, problem: 'tolerance-zero' } : read;
}

/** A day of the calendar as YYYY-MM-DD, or nothing. */
export function readDay(
  text: string
): { ok: true; value: string | undefined } | { ok: false; problem: 'date' } {
  if (text.trim() === '') return { ok: true, value: undefined };
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : NaN;
  const isDay = !Number.isNaN(time) && new Date(time).toISOString().slice(0, 10) === text;
  return isDay ? { ok: true, value: text } : { ok: false, problem: 'date' };
}
