import { type ReadingUnit, type Reading, parseReading } from './reading-grammar.ts';

/** A decimal point or a decimal comma. */
export type DecimalMark = '.' | ',';

/** Where the thickness stands in a gauge's line, and how it is written there. */
export interface LinePattern {
  /** Which number of the line it is, counted from 0. */
  readonly position: number;
  /** The decimal mark; the other one only separates numbers. */
  readonly mark: DecimalMark;
  /** The line up to the number: numbers as #, runs of spaces as one, none at its end. */
  readonly before: string;
  /** The unit that follows the number, or null where the gauge sends none. */
  readonly unit: ReadingUnit | null;
  /** Decimals of every number, or null where they vary. */
  readonly decimals: number | null;
  /** Digits before the decimal mark where the gauge pads with zeros, else null. */
  readonly paddedTo: number | null;
}

/** A place at which the thickness may stand, with what stood there, for the sorter to choose. */
export interface LineCandidate {
  readonly pattern: LinePattern;
  readonly samples: readonly string[];
}

/** The pattern learnt, or why the lines do not tell. */
export type LineLesson =
  | { readonly ok: true; readonly pattern: LinePattern }
  | { readonly ok: false; readonly reason: 'too-few' | 'no-number' }
  | {
      readonly ok: false;
      readonly reason: 'ambiguous';
      readonly candidates: readonly LineCandidate[];
    };

/** A line that is not one of the gauge's readings. It is reported, never read. */
export interface NoiseLine {
  readonly ok: false;
  /** `other-line`: no number at the place; `other-shape`: its digits or unit differ. */
  readonly reason: 'other-line' | 'other-shape';
  readonly text: string;
}

/** Lines needed to learn a pattern. */
export const LINES_TO_LEARN = 3;

interface NumberInLine {
  readonly position: number;
  readonly text: string;
  readonly before: string;
  readonly unit: ReadingUnit | null;
  readonly decimals: number;
  readonly wholeDigits: string;
}

/**
 * Learns from a few raw lines where the thickness stands.
 *
 * A place counts if the text before it is the same in more than half of the lines, and at least
 * three of them. Among several places one whose numbers all have decimals goes before one whose
 * numbers have none (a channel or a serial number), and one with a unit before one without. If more
 * than one is left, all are returned for the sorter to choose from; none is guessed.
 *
 * @param lines three or more, in any order, without their ends; not modified
 * @returns the pattern, or `ambiguous` with candidates in the order of the line
 * @example learnLinePattern(['01A+006.40', '01A+005.95', '01A+007.10']).pattern.before // '#A'
 */
export function learnLinePattern(lines: readonly string[]): LineLesson {
  if (lines.length < LINES_TO_LEARN) return { ok: false, reason: 'too-few' };
  const byComma = candidatesIn(lines, ',').filter(({ pattern }) => pattern.decimals !== 0);
  const candidates = [...candidatesIn(lines, '.'), ...byComma];
  if (candidates.length === 0) return { ok: false, reason: 'no-number' };

  const withDecimals = candidates.filter(({ pattern }) => pattern.decimals !== 0);
  const likely = withDecimals.length > 0 ? withDecimals : candidates;
  const withUnit = likely.filter(({ pattern }) => pattern.unit !== null);
  const best = withUnit.length > 0 ? withUnit : likely;
  if (best.length > 1) return { ok: false, reason: 'ambiguous', candidates: best };
  return { ok: true, pattern: best[0].pattern };
}

/**
 * Reads the thickness from one line by its pattern, through the common grammar.
 *
 * A number with other decimals, padding or unit than learnt has lost or gained a character on the
 * way, and is noise rather than a thickness. What follows the number and its unit may vary.
 *
 * @param line one whole line without its end
 * @param sessionUnit the unit where the gauge sends none
 * @example readLine(pattern, '01A+006.40', 'mm') // { ok: true, valueMm: 6.4, … }
 */
export function readLine(
  pattern: LinePattern,
  line: string,
  sessionUnit: ReadingUnit
): Reading | NoiseLine {
  const number = numbersInLine(line, pattern.mark)[pattern.position];
  if (!number || number.before !== pattern.before)
    return { ok: false, reason: 'other-line', text: line };
  const hasShape =
    number.unit === pattern.unit &&
    (pattern.decimals === null || number.decimals === pattern.decimals) &&
    (pattern.paddedTo === null || number.wholeDigits.length === pattern.paddedTo);
  if (!hasShape) return { ok: false, reason: 'other-shape', text: line };
  return parseReading(`${number.text} ${pattern.unit ?? ''}`, sessionUnit);
}

/** Every place of the lines that may hold the thickness, in the order of the line. */
function candidatesIn(lines: readonly string[], mark: DecimalMark): LineCandidate[] {
  const places = new Map<string, NumberInLine[]>();
  for (const line of lines)
    for (const number of numbersInLine(line, mark)) {
      const key = `${number.position} ${number.before}`;
      places.set(key, [...(places.get(key) ?? []), number]);
    }
  const needed = Math.max(LINES_TO_LEARN, Math.floor(lines.length / 2) + 1);
  return [...places.values()]
    .filter((numbers) => numbers.length >= needed)
    .map((numbers) => candidateOf(numbers, mark));
}

const NUMBER: Readonly<Record<DecimalMark, RegExp>> = {
  '.': /(?:[+\-−]\s*)?\.?\d[\d.]*/gu,
  ',': /(?:[+\-−]\s*)?,?\d[\d,]*/gu
};

/** Every run of digits and decimal marks with its sign, and what surrounds it. */
function numbersInLine(line: string, mark: DecimalMark): NumberInLine[] {
  return [...line.matchAll(NUMBER[mark])].map((match, position) => {
    const [text] = match;
    const [wholeDigits, ...fractions] = text.replace(/^[+\-−]\s*/u, '').split(mark);
    const after = line.slice(match.index + text.length);
    const unit = /^\s*(mm|inches|inch|in|["″])(?!\p{L})/iu.exec(after)?.[1].toLowerCase();
    return {
      position,
      text,
      before: skeleton(line.slice(0, match.index), mark),
      unit: unit === undefined ? null : unit === 'mm' ? 'mm' : 'inch',
      decimals: fractions.join('').length,
      wholeDigits
    };
  });
}

/** The fixed part of a text: numbers become #, runs of spaces one space, none at the ends. */
function skeleton(text: string, mark: DecimalMark): string {
  return text.replace(NUMBER[mark], '#').replace(/\s+/g, ' ').trim();
}

function candidateOf(numbers: readonly NumberInLine[], mark: DecimalMark): LineCandidate {
  const [first] = numbers;
  const same = <T>(quality: (number: NumberInLine) => T, otherwise: T): T =>
    numbers.every((number) => quality(number) === quality(first)) ? quality(first) : otherwise;
  const isPadded = numbers.some(({ wholeDigits }) => /^0\d/.test(wholeDigits));
  return {
    pattern: {
      position: first.position,
      mark,
      before: first.before,
      unit: same(({ unit }) => unit, null),
      decimals: same<number | null>(({ decimals }) => decimals, null),
      paddedTo: isPadded ? same<number | null>(({ wholeDigits }) => wholeDigits.length, null) : null
    },
    samples: numbers.map(({ text }) => text)
  };
}
