import type { SetAsideReason, SetAsideUse } from '$lib/journal';

export type CsvSeparator = ',' | ';' | '\t';
export type CsvDecimal = '.' | ',';

/** A larger file is refused before it is read. */
export const MAX_CSV_BYTES = 20 * 1024 * 1024;
/** More rows than a large job holds slates. */
export const MAX_CSV_ROWS = 200_000;

/** One row of a file of readings: a slate that was gauged, tapped, both, or set aside. */
export interface CsvReading {
  /** Line of the file on which the row begins; the heading is usually line 1. */
  readonly line: number;
  readonly pallet: string;
  readonly thicknessHundredths?: number;
  /** Pile number, 1 the thickest; `thick`, `medium` and `thin` are 1, 2 and 3. */
  readonly grade?: number;
  readonly setAside?: { readonly reason: SetAsideReason; readonly use: SetAsideUse };
}

/** What is wrong with a file, as a code with its data; the words are the catalogue's. */
export type CsvProblem =
  | { readonly code: 'too-large'; readonly bytes: number; readonly limitBytes: number }
  | { readonly code: 'too-many-rows'; readonly rows: number; readonly limitRows: number }
  /** Control characters: a picture, an archive, a spreadsheet's own format. */
  | { readonly code: 'binary' }
  | { readonly code: 'empty' }
  /** Headings, and nothing below them. */
  | { readonly code: 'no-rows' }
  | {
      readonly code: 'missing-column';
      readonly column: 'pallet' | 'thickness_mm or grade';
      readonly found: readonly string[];
    }
  | { readonly code: 'duplicate-column'; readonly column: string }
  /** The headings can be cut in two ways. */
  | { readonly code: 'ambiguous-separator' }
  /** Every row has one cell too many: the comma parts cells and marks decimals. */
  | { readonly code: 'comma-twice'; readonly line: number }
  | { readonly code: 'unclosed-quote' | 'stray-quote'; readonly line: number }
  | {
      readonly code: 'columns-differ';
      readonly line: number;
      readonly found: number;
      readonly expected: number;
    }
  /** The last line is cut off: the file was not written to its end. */
  | { readonly code: 'torn-last-line'; readonly line: number }
  | { readonly code: 'missing-pallet' | 'pallet-too-long'; readonly line: number }
  /** Neither a thickness nor a grade, and not set aside. */
  | { readonly code: 'no-reading'; readonly line: number }
  | {
      readonly code:
        | 'not-a-number'
        | 'several-decimals'
        | 'negative'
        | 'zero'
        | 'unknown-grade'
        | 'unknown-set-aside';
      readonly line: number;
      readonly text: string;
    }
  | {
      readonly code: 'too-thin' | 'too-thick';
      readonly line: number;
      readonly text: string;
      readonly limitMm: number;
    }
  | { readonly code: 'mixed-decimals'; readonly pointLine: number; readonly commaLine: number }
  /** `1,234` may be one and a quarter or twelve hundred, and no other cell tells. */
  | { readonly code: 'ambiguous-decimal'; readonly line: number; readonly text: string }
  /** Every number is a thickness only if read as inches. */
  | {
      readonly code: 'looks-like-inches';
      readonly line: number;
      readonly text: string;
      readonly perhapsMm: number;
    }
  /** Thick, medium and thin beside pile numbers above 3. */
  | { readonly code: 'mixed-grades'; readonly line: number; readonly text: string }
  /** Problems beyond the first hundred. */
  | { readonly code: 'more-problems'; readonly count: number };

export type CsvResult =
  | {
      readonly ok: true;
      readonly rows: readonly CsvReading[];
      readonly separator: CsvSeparator;
      /** Null when no number has decimals. */
      readonly decimal: CsvDecimal | null;
      /** Headings of columns that were not read. */
      readonly ignored: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly CsvProblem[] };
