import type { SampleSlate, SetAsideReason, SetAsideUse } from '$lib/journal';

export type CsvSeparator = ',' | ';' | '\t';
export type CsvDecimal = '.' | ',';

/** A larger file is refused before it is read. */
export const MAX_CSV_BYTES = 20 * 1024 * 1024;
/** More rows than a large job holds slates. */
export const MAX_CSV_ROWS = 200_000;

/** What was measured and seen of a slate of the sample; a file need not say on which list it is. */
export type CsvSample = Omit<SampleSlate, 'drawId'> & Partial<Pick<SampleSlate, 'drawId'>>;

/** One row of a file of readings: a slate that was gauged, tapped, both, or set aside. */
export interface CsvReading {
  /** Line of the file on which the row begins; the heading is usually line 1. */
  readonly line: number;
  readonly pallet: string;
  /** Of a slate gauged at several points, their mean. */
  readonly thicknessHundredths?: number;
  /** Two to four points; left out where there is one. */
  readonly pointsHundredths?: readonly number[];
  /** Pile number, 1 the thickest; `thick`, `medium` and `thin` are 1, 2 and 3. */
  readonly grade?: number;
  readonly setAside?: { readonly reason: SetAsideReason; readonly use: SetAsideUse };
  readonly sample?: CsvSample;
  /** Whether it rocks on a flat board. */
  readonly rocks?: boolean;
}

/** A line of the file that is no slate, with what stands on it. */
export interface CsvNote {
  readonly line: number;
  readonly text: string;
}

/**
 * A line that looks like a mean or a total of the lines above: it is called so, or it has no pallet
 * and its number is their mean or sum.
 */
export interface CsvSum extends CsvNote {
  readonly why: 'name' | 'value';
  /** The pallet it would be on. */
  readonly pallet: string;
}

/** What of a file was not taken as it stands; a person is told. */
export interface CsvReadAs {
  /** Lines above the headings, notes between the readings, headings that come again. */
  readonly notes: readonly CsvNote[];
  /** Lines whose pallet is that of the line above. */
  readonly filled: readonly number[];
  /** Headings that were read under another name. */
  readonly headings: readonly { readonly heading: string; readonly column: string }[];
  /** A length in inches and what it became, where there are any. */
  readonly inches?: { readonly text: string; readonly mm: number };
  /** Headings of columns that were not read; empty for a column without one. */
  readonly ignored: readonly string[];
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
  /** A heading in centimetres or another unit that is not read. */
  | { readonly code: 'unknown-unit'; readonly column: string }
  /** More columns of points than a slate has points: perhaps one column a slate. */
  | { readonly code: 'too-many-point-columns'; readonly found: number }
  /** A first line `sep=` that names no separator that is read. */
  | { readonly code: 'unknown-separator'; readonly text: string }
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
  /** Ring, faults or a size of a slate without a thickness, which a tap cannot keep. */
  | { readonly code: 'marks-without-thickness'; readonly line: number }
  | { readonly code: 'too-many-points'; readonly line: number; readonly found: number }
  /** The file's mean of a slate is not that of its points. */
  | {
      readonly code: 'mean-differs';
      readonly line: number;
      readonly text: string;
      readonly meanMm: number;
    }
  /** A length or width that is no number from 0 to the limit. */
  | {
      readonly code: 'bad-measure';
      readonly line: number;
      readonly text: string;
      readonly limitMm: number;
    }
  /** Neither a thickness nor a grade, and not set aside. */
  | { readonly code: 'no-reading'; readonly line: number }
  | {
      readonly code:
        | 'not-a-number'
        | 'several-decimals'
        | 'negative'
        | 'zero'
        | 'unknown-grade'
        /** T, or th: thick or thin. */
        | 'ambiguous-grade'
        | 'unknown-set-aside'
        | 'unknown-ring'
        | 'unknown-fault'
        | 'not-whole'
        | 'not-yes-or-no'
        /** `#DIV/0!` and its like. */
        | 'spreadsheet-error'
        /** `3/8`: a fraction of an inch, or two points. */
        | 'like-a-fraction'
        /** Inches in a column whose heading says mm, or the other way round. */
        | 'unit-differs';
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
      readonly readAs: CsvReadAs;
      /** Lines left out of the rows until a person says that they are slates. */
      readonly sums: readonly CsvSum[];
    }
  | { readonly ok: false; readonly problems: readonly CsvProblem[] };
