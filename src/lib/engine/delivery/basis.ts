/**
 * How far a figure can be leant on in an argument, best first.
 *
 * - `published`: read in the named document.
 * - `quoted`: read in a second document that quotes the named one.
 * - `computed`: follows by arithmetic from what is measured or published.
 * - `set by the order`: agreed between buyer and seller, or entered by the user as such.
 * - `common practice`: a custom of the trade; no document is named for it.
 * - `from memory`: remembered and not checked; the reader should look it up before leaning on it.
 * - `not agreed`: nobody has shown that it was agreed, and nothing is assumed in its place.
 */
export type Standing =
  | 'published'
  | 'quoted'
  | 'computed'
  | 'set by the order'
  | 'common practice'
  | 'from memory'
  | 'not agreed';

/** What a figure rests on: its standing, and the document or agreement behind it. */
export interface Basis {
  readonly standing: Standing;
  /** Name of the document, with its clause or table where known; empty for a custom. */
  readonly source: string;
}

/** A range that holds the true value with at least probability `level`. Both ends included. */
export interface Interval {
  readonly low: number;
  readonly high: number;
  /** Confidence, between 0 and 1, such as 0.95. */
  readonly level: number;
}
