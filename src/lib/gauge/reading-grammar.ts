import { fromHundredths, inchesToMm, toHundredths } from '$lib/engine';
import { HIGHEST_HUNDREDTHS, LOWEST_HUNDREDTHS } from '$lib/engine/thickness';

/** The two units a gauge can speak. */
export type ReadingUnit = 'mm' | 'inch';

/** A number that was understood, whether or not it is a thickness we accept. */
interface WrittenNumber {
  /** The number as written, in `unit`. */
  readonly value: number;
  /** The unit written behind the number, or else the session's. */
  readonly unit: ReadingUnit;
  /** Whether the unit was written behind the number. */
  readonly isUnitWritten: boolean;
  /** Digits behind the decimal mark, 0 without one. */
  readonly decimals: number;
}

/** One thickness, understood and inside the accepted range. */
export interface AcceptedReading extends WrittenNumber {
  readonly ok: true;
  /** The text it was read from, without spaces at its ends. */
  readonly text: string;
  /** Thickness in whole hundredths of a millimetre. */
  readonly hundredths: number;
  /** Thickness in millimetres, rounded to 0.01. */
  readonly valueMm: number;
}

/** Why a text is no reading when no single number can be made of it. */
export type UnreadableReason =
  | 'empty'
  | 'not-a-number'
  | 'several-numbers'
  | 'several-decimals'
  | 'unfinished'
  | 'too-many-digits';

/** Why a number is no thickness, with what a clear sentence about it needs. */
export type RefusedNumber = WrittenNumber & {
  readonly ok: false;
  readonly text: string;
  /** The number in millimetres, not rounded. */
  readonly valueMm: number;
} & (
    | { readonly reason: 'negative' | 'zero' }
    | { readonly reason: 'too-thin' | 'too-thick'; readonly limitMm: number }
    | {
        readonly reason: 'looks-like-inches' | 'looks-like-mm' | 'missing-decimal';
        readonly limitMm: number;
        /** What may have been meant, thinnest first: to be asked, never taken. */
        readonly perhapsMm: readonly number[];
      }
  );

/** A text that is not taken as a reading. Codes and numbers only; the words are the catalogue's. */
export type RefusedText =
  | { readonly ok: false; readonly reason: UnreadableReason; readonly text: string }
  | {
      readonly ok: false;
      readonly reason: 'unknown-unit';
      readonly text: string;
      readonly unitText: string;
    }
  | RefusedNumber;

export type Reading = AcceptedReading | RefusedText;

/** The finest gauges send five decimals (0.00005 in); more is two readings run together. */
const MOST_DECIMALS = 5;
/** Longest text that can be one reading with its sign, padding and unit. */
const LONGEST_TEXT = 32;
/** Above this, a small number is not taken for inches. Common practice, no source. */
const THICKEST_INCH_GUESS_HUNDREDTHS = 1270;
/** A gauge that reads inches shows no fewer decimals: 0.6 is a slip. Common practice, no source. */
const FEWEST_INCH_DECIMALS = 2;

const UNIT_WORDS: Readonly<Record<string, ReadingUnit>> = {
  mm: 'mm',
  'mm.': 'mm',
  in: 'inch',
  'in.': 'inch',
  inch: 'inch',
  inches: 'inch',
  '"': 'inch',
  '″': 'inch',
  '”': 'inch',
  "''": 'inch'
};

/**
 * Reads one thickness from text: the one grammar for typed numbers, keyboard gauges and serial
 * lines.
 *
 * A reading is an optional sign, digits with at most one decimal mark (point or comma) and an
 * optional unit (mm, in, inch, inches, "), with spaces anywhere between these. A unit in the text
 * wins over the session's. Nothing is ever rescaled: what looks like the other unit or like a lost
 * decimal mark is refused with the lengths that may have been meant, for the sorter to choose.
 *
 * @param text what was typed or sent, without its terminator
 * @param sessionUnit the unit of a number that carries none
 * @returns the thickness rounded to 0.01 mm, halves up; or a refusal. The accepted range, 1.5 to
 * 40 mm with both ends, applies after rounding.
 * @example parseReading(' +006,40 mm', 'mm') // { ok: true, valueMm: 6.4, hundredths: 640, … }
 * @example parseReading('64', 'mm') // { ok: false, reason: 'missing-decimal', perhapsMm: [6.4], … }
 */
export function parseReading(text: string, sessionUnit: ReadingUnit): Reading {
  const trimmed = text.trim();
  const unreadable = (reason: UnreadableReason): Reading => ({ ok: false, reason, text: trimmed });

  if (trimmed === '') return unreadable('empty');
  if (trimmed.length > LONGEST_TEXT) return unreadable('not-a-number');
  const parts = /^([+\-−]?)\s*([\d.,]*\d[\d.,]*)\s*(.*)$/su.exec(trimmed);
  if (!parts) return unreadable('not-a-number');
  const [, sign, digits, unitText] = parts;

  const [, fraction, ...more] = digits.split(/[.,]/);
  if (more.length > 0) return unreadable('several-decimals');
  if (fraction === '') return unreadable('unfinished');
  if ((fraction ?? '').length > MOST_DECIMALS) return unreadable('too-many-digits');

  const writtenUnit = UNIT_WORDS[unitText.toLowerCase()];
  if (unitText !== '' && !writtenUnit) {
    if (/^[^\p{L}\d]*\d/u.test(unitText)) return unreadable('several-numbers');
    if (!/^[\p{L}%°]+\.?$/u.test(unitText)) return unreadable('not-a-number');
    return { ok: false, reason: 'unknown-unit', text: trimmed, unitText };
  }

  const magnitude = Number(digits.replace(',', '.'));
  return judgeNumber(trimmed, {
    value: sign === '' || sign === '+' || magnitude === 0 ? magnitude : -magnitude,
    unit: writtenUnit ?? sessionUnit,
    isUnitWritten: writtenUnit !== undefined,
    decimals: (fraction ?? '').length
  });
}

/** Whether whole hundredths of a millimetre lie in the accepted range. */
function isAccepted(hundredths: number): boolean {
  return hundredths >= LOWEST_HUNDREDTHS && hundredths <= HIGHEST_HUNDREDTHS;
}

/** Takes or refuses a number that was understood. */
function judgeNumber(text: string, number: WrittenNumber): Reading {
  const { value, unit, isUnitWritten } = number;
  const valueMm = unit === 'mm' ? value : inchesToMm(value);
  const refused = { ok: false as const, text, ...number, valueMm };
  if (value < 0) return { ...refused, reason: 'negative' };
  if (value === 0) return { ...refused, reason: 'zero' };

  const hundredths = toHundredths(valueMm);
  if (isAccepted(hundredths))
    return { ok: true, text, ...number, hundredths, valueMm: fromHundredths(hundredths) };

  if (hundredths < LOWEST_HUNDREDTHS) {
    const limitMm = fromHundredths(LOWEST_HUNDREDTHS);
    const asInches = toHundredths(inchesToMm(value));
    if (
      unit === 'mm' &&
      !isUnitWritten &&
      number.decimals >= FEWEST_INCH_DECIMALS &&
      isAccepted(asInches) &&
      asInches <= THICKEST_INCH_GUESS_HUNDREDTHS
    )
      return {
        ...refused,
        reason: 'looks-like-inches',
        limitMm,
        perhapsMm: [fromHundredths(asInches)]
      };
    return { ...refused, reason: 'too-thin', limitMm };
  }

  const limitMm = fromHundredths(HIGHEST_HUNDREDTHS);
  const asMm = toHundredths(value);
  if (unit === 'inch' && !isUnitWritten && isAccepted(asMm))
    return { ...refused, reason: 'looks-like-mm', limitMm, perhapsMm: [fromHundredths(asMm)] };
  const perhapsMm = number.decimals === 0 ? withLostDecimal(valueMm) : [];
  if (perhapsMm.length > 0) return { ...refused, reason: 'missing-decimal', limitMm, perhapsMm };
  return { ...refused, reason: 'too-thick', limitMm };
}

/** The accepted lengths that lose their decimal mark to give `valueMm`, thinnest first. */
function withLostDecimal(valueMm: number): number[] {
  return [10_000, 1_000, 100, 10]
    .map((divisor) => toHundredths(valueMm / divisor))
    .filter(isAccepted)
    .map(fromHundredths);
}
