import { SET_ASIDE_REASONS, type SetAsideReason } from '$lib/journal';
import { type ColumnCell, readLengthMm } from './csv-cells.ts';
import type { CsvProblem } from './csv-types.ts';

/** The largest length, and the largest deviation, that the app takes of a slate, mm. */
export const LARGEST_SIDE_MM = 2000;
export const LARGEST_DEVIATION_MM = 200;
const LARGEST_WHOLE = 10_000_000;

const CLEAR = /^(clear|good|ok|okay|yes|y|rings|sound|true)$/i;
const DULL = /^(dull|dead|bad|no|n|cracked|false)$/i;
const YES = /^(yes|y|true|x|1)$/i;
const NO = /^(no|n|false|0)$/i;
const NO_FAULT = /^(none|no|nil|ok|clear|-|–|0|no faults?|no defects?)$/i;
/** Words for the faults, without case, spaces and signs; the codes of the export come first. */
const FAULTS: Record<SetAsideReason, readonly string[]> = {
  broken: ['broken', 'brokencorner', 'cracked', 'crack', 'split', 'chipped'],
  dullRing: ['dullring', 'dull', 'deadring'],
  twisted: ['twisted', 'twist', 'bowed', 'bow', 'twistedorbowed', 'warped'],
  tapered: ['tapered', 'taper', 'wedged'],
  wrongSize: ['wrongsize', 'size', 'outofsize'],
  inclusion: ['inclusion', 'inclusions', 'pyrite', 'knot'],
  colour: ['colour', 'color', 'wrongcolour', 'wrongcolor', 'offcolour'],
  other: ['other', 'otherfault']
};
const BETWEEN_FAULTS = /\s*(?:[/|;,+&]|\band\b)\s*/i;

/** Reads a ring: clear or dull, or a word for one of them. */
export function readRing({ line, text }: ColumnCell): 'clear' | 'dull' | CsvProblem {
  if (CLEAR.test(text)) return 'clear';
  return DULL.test(text) ? 'dull' : { code: 'unknown-ring', line, text };
}

/** Reads the faults of a slate: none, or words with a slash, comma, plus or "and" between them. */
export function readFaults({ line, text }: ColumnCell): readonly SetAsideReason[] | CsvProblem {
  if (NO_FAULT.test(text)) return [];
  const found = text.split(BETWEEN_FAULTS).map((word) => {
    const bare = word.toLowerCase().replace(/[^\p{L}]/gu, '');
    return SET_ASIDE_REASONS.find((reason) => FAULTS[reason].includes(bare));
  });
  if (found.includes(undefined)) return { code: 'unknown-fault', line, text };
  return [...new Set(found as SetAsideReason[])];
}

/** Reads the number of a layer or of a place in it. */
export function readWhole({ line, text }: ColumnCell): number | CsvProblem {
  const value = /^\d{1,9}(?:[.,]0+)?$/.test(text)
    ? Math.floor(Number(text.replace(',', '.')))
    : NaN;
  return value <= LARGEST_WHOLE ? value : { code: 'not-whole', line, text };
}

/** Reads yes or no. */
export function readYesNo({ line, text }: ColumnCell): boolean | CsvProblem {
  if (YES.test(text)) return true;
  return NO.test(text) ? false : { code: 'not-yes-or-no', line, text };
}

/** Reads a length, width or deviation from 0 to a limit. */
export function readMeasure(cell: ColumnCell, limitMm: number): number | CsvProblem {
  const { line, text } = cell;
  const value = readLengthMm(cell);
  if (typeof value !== 'number') return value;
  return value >= 0 && value <= limitMm ? value : { code: 'bad-measure', line, text, limitMm };
}
