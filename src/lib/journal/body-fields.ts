import * as v from 'valibot';
import { isCalendarDay } from './calendar.ts';
import { isUuid } from './ids.ts';

/** Short text that a person typed: trimmed, at most 200 characters. */
export const shortText = v.pipe(v.string(), v.trim(), v.maxLength(200));
export const longText = v.pipe(v.string(), v.maxLength(4000));
/** A key made by the app; letters, digits, dot and dash. */
export const key = v.pipe(v.string(), v.regex(/^[A-Za-z0-9.-]{1,64}$/));
export const uuid = v.pipe(v.string(), v.check(isUuid, 'not a UUID in lower case'));
export const day = v.pipe(
  v.string(),
  v.isoDate(),
  v.check(isCalendarDay, 'no such day in the calendar')
);
export const whole = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(10_000_000));
export const amount = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1e9));
export const lengthMm = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(1_000_000));
export const signedMm = v.pipe(
  v.number(),
  v.finite(),
  v.minValue(-1_000_000),
  v.maxValue(1_000_000)
);
/** Any number that JSON can hold: a backup must give back what was stored. */
export const finite = v.pipe(v.number(), v.finite());
/** The number that stands on a pile: it means the same slates for the whole job. */
export const pile = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(99));
/** A thickness reading in whole hundredths of a millimetre, inside the accepted 1.5 to 40 mm. */
export const reading = v.pipe(v.number(), v.integer(), v.minValue(150), v.maxValue(4000));
export const points = v.pipe(v.array(reading), v.minLength(1), v.maxLength(4));
/** The set of grades a slate was told its pile by: the id of a gradesSet, or null before any. */
export const gradesId = v.nullable(key);
/** Which of several sizes an act belongs to; left out in a job of one size, and by older releases. */
export const sizeId = v.optional(key);
