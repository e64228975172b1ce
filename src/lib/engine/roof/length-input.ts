import { MM_PER_INCH } from '../units.ts';

/** The unit of a number typed without one. */
export type LengthUnit = 'mm' | 'in';

/** A length that was typed, or why it is none. */
export type LengthInput =
  | { readonly ok: true; readonly lengthMm: number }
  | { readonly ok: false; readonly reason: LengthRefusal };

/**
 * `empty`: nothing typed. `negative`: a minus sign. `ambiguous`: a single separator before three
 * digits, such as 2,600, which some read as thousands. `not-a-length`: anything else.
 */
export type LengthRefusal = 'empty' | 'negative' | 'ambiguous' | 'not-a-length';

const MM_PER_UNIT: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: 12 * MM_PER_INCH
};

/** What each spelling means; primes and quotes are feet and inches. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/inches|inch|in\.?|″|”|"|''/g, ' in '],
  [/feet|foot|ft\.?|′|’|'/g, ' ft '],
  [/½/g, ' 1/2'],
  [/¼/g, ' 1/4'],
  [/¾/g, ' 3/4'],
  [/⅛/g, ' 1/8'],
  [/⅜/g, ' 3/8'],
  [/⅝/g, ' 5/8'],
  [/⅞/g, ' 7/8']
];

const NUMBER = String.raw`(?:\d+(?:[.,]\d+)?|[.,]\d+)`;
const MIXED = String.raw`(?:\d+ \d+\/\d+|\d+\/\d+|${NUMBER})`;
const METRIC = new RegExp(`^(${NUMBER}) ?(mm|cm|m)$`);
const FEET_INCHES = new RegExp(`^(?:(${MIXED}) ft)? ?(?:(${MIXED})(?: in)?)?$`);
const INCHES = new RegExp(`^(${MIXED}) in$`);
const BARE = new RegExp(`^${MIXED}$`);

/**
 * Reads a length as people type it: `2600`, `2.6 m`, `260,5 cm`, `102.5 in`, `8 ft 6 1/2 in`,
 * `8′ 6 1/2″`, `8' 6"`, `6½"`.
 *
 * @param text what was typed; point and comma both stand for the decimal sign
 * @param bareUnit the unit of a number without one
 * @returns the length in mm, 0 or more, or a tagged refusal. Inches after feet may lack their sign
 * and must be below 12. Without a unit, one separator before exactly three digits is refused as
 * ambiguous in mm, unless the whole part is 0
 *
 * Accuracy: one rounding for the number, one for the unit. An inch is 25.4 mm, exact.
 * @example parseLength('8 ft 6 1/2 in', 'mm') // { ok: true, lengthMm: 2603.5 }
 */
export function parseLength(text: string, bareUnit: LengthUnit = 'mm'): LengthInput {
  let plain = text.toLowerCase();
  if (plain.trim() === '') return { ok: false, reason: 'empty' };
  if (/^\s*[-−–]/.test(plain)) return { ok: false, reason: 'negative' };
  for (const [spelling, meaning] of SPELLINGS) plain = plain.replace(spelling, meaning);
  plain = plain.replace(/\s+/g, ' ').trim();

  const metric = METRIC.exec(plain);
  if (metric) return lengthOf([metric[1], metric[2]]);
  const inches = INCHES.exec(plain);
  if (inches) return lengthOf([inches[1], 'in']);
  if (BARE.test(plain)) {
    if (bareUnit === 'mm' && /^[1-9]\d{0,2}[.,]\d{3}$/.test(plain))
      return { ok: false, reason: 'ambiguous' };
    return lengthOf([plain, bareUnit]);
  }
  const [, feet, more] = FEET_INCHES.exec(plain) ?? [];
  if (feet === undefined) return { ok: false, reason: 'not-a-length' };
  if (more === undefined) return lengthOf([feet, 'ft']);
  if (numberOf(more) >= 12) return { ok: false, reason: 'not-a-length' };
  return lengthOf([feet, 'ft'], [more, 'in']);
}

function lengthOf(...parts: readonly (readonly [number: string, unit: string])[]): LengthInput {
  const lengthMm = parts.reduce(
    (sum, [number, unit]) => sum + numberOf(number) * MM_PER_UNIT[unit],
    0
  );
  return Number.isFinite(lengthMm) ? { ok: true, lengthMm } : { ok: false, reason: 'not-a-length' };
}

/** A decimal or mixed number: 6, 6.5, 6,5, 1/2, 6 1/2. */
function numberOf(text: string): number {
  const [last, whole] = text.split(' ').reverse();
  const [numerator, denominator] = last.split('/');
  const fraction =
    denominator === undefined
      ? Number(numerator.replace(',', '.'))
      : Number(numerator) / Number(denominator);
  return fraction + (whole === undefined ? 0 : Number(whole));
}
