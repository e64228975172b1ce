/** What can be wrong with one field of a slate or a slope that somebody typed. */
export type FieldProblemCode =
  | 'not-a-number'
  | 'too-small'
  | 'too-large'
  | 'headlap-above-third'
  | 'range-reversed'
  | 'not-wider-than-slate'
  | 'narrower-than-slate'
  | 'no-course'
  | 'joints-too-close'
  | 'closes-before-ridge'
  | 'wrong-way'
  | 'outside-slope'
  | 'overlaps-opening'
  | 'square-sides-only'
  | 'out-by-a-course'
  | 'no-such-diagonal'
  | 'same-id';

/**
 * One field that cannot stand, in a form that a screen turns into a sentence in any language.
 *
 * `field` is the path of the field, `left.insetAtTopMm` or `openings.0.widthMm`. `nearest` is the
 * value closest to `value` that removes this problem while every other field stays as it is; it is
 * left out where no such value exists.
 */
export interface FieldProblem {
  readonly field: string;
  readonly code: FieldProblemCode;
  /** What was given; NaN is written as null, so that the problem survives JSON. */
  readonly value: number | null;
  /** The limit that was passed, in the field's own unit. */
  readonly limit?: number;
  readonly nearest?: number;
}

/** Least and greatest value of a field, both allowed. */
export interface FieldRange {
  readonly least: number;
  readonly most: number;
}

/**
 * The problems of plain numeric fields: not a number, below its least, above its most.
 *
 * @param values the field's path and what was given
 * @param ranges the range of each field; a field without a range is only tested to be a number
 * @returns one problem at most for a field, in the order of `values`; the nearest value is the limit
 * @example
 * rangeProblems({ widthMm: -3 }, { widthMm: { least: 100, most: 1000 } });
 * // [{ field: 'widthMm', code: 'too-small', value: -3, limit: 100, nearest: 100 }]
 */
export function rangeProblems(
  values: Readonly<Record<string, number>>,
  ranges: Readonly<Record<string, FieldRange>>
): FieldProblem[] {
  const problems: FieldProblem[] = [];
  for (const [field, value] of Object.entries(values)) {
    const range = ranges[field];
    if (!Number.isFinite(value)) problems.push({ field, code: 'not-a-number', value: null });
    else if (range && value < range.least)
      problems.push({ field, code: 'too-small', value, limit: range.least, nearest: range.least });
    else if (range && value > range.most)
      problems.push({ field, code: 'too-large', value, limit: range.most, nearest: range.most });
  }
  return problems;
}
