import { type FieldProblem, type FieldRange, rangeProblems } from './field-problem.ts';

/** Where the nails go: just above the slate's middle, or near its head. */
export type Nailing = 'centre' | 'head';

/** The slate of a job and how it is to be laid. Plain data; lengths in mm. */
export interface SlateSpec {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Width of the wider slate that starts alternate courses at a verge. */
  readonly slateAndAHalfWidthMm: number;
  readonly nailing: Nailing;
  /** Distance of the nail line from the head of a head-nailed slate. */
  readonly headNailLineMm: number;
  /** Distance of an undereave slate's hole from its head when the roof is centre-nailed. */
  readonly undereaveHoleFromHeadMm: number;
  /** How far a centre-nailed slate's hole clears the head of the slate below. */
  readonly holeClearanceMm: number;
  /** The least headlap asked for; equal courses usually give a little more. */
  readonly headlapMm: number;
  readonly jointMinMm: number;
  readonly jointMaxMm: number;
  /** No piece is cut narrower than this where it can be helped. */
  readonly narrowestCutMm: number;
  readonly densityKgPerM3: number;
  /** Bounds of random widths; `widthMm` is then their mean. Left out where all are of one width. */
  readonly randomWidths?: { readonly fromMm: number; readonly toMm: number };
}

/** What must be given of a slate; the rest has a customary value. */
export type SlateSpecInput = Partial<SlateSpec> &
  Pick<SlateSpec, 'lengthMm' | 'widthMm' | 'headlapMm'>;

/** Density of slate where nobody says another, kg/m³. Common practice, no source. */
export const USUAL_DENSITY_KG_PER_M3 = 2800;

const CUSTOMARY = {
  nailing: 'centre',
  headNailLineMm: 25,
  undereaveHoleFromHeadMm: 20,
  holeClearanceMm: 10,
  jointMinMm: 3,
  jointMaxMm: 5,
  narrowestCutMm: 150,
  densityKgPerM3: USUAL_DENSITY_KG_PER_M3
} as const;

const RANGES: Readonly<Record<string, FieldRange>> = {
  lengthMm: { least: 150, most: 1200 },
  widthMm: { least: 75, most: 1000 },
  slateAndAHalfWidthMm: { least: 75, most: 2000 },
  headNailLineMm: { least: 10, most: 60 },
  undereaveHoleFromHeadMm: { least: 5, most: 60 },
  holeClearanceMm: { least: 0, most: 30 },
  headlapMm: { least: 1, most: 400 },
  jointMinMm: { least: 0, most: 20 },
  jointMaxMm: { least: 0, most: 20 },
  narrowestCutMm: { least: 0, most: 500 },
  densityKgPerM3: { least: 2000, most: 3500 }
};

/**
 * A full slate specification from the fields given, the rest at their customary values.
 *
 * Slate-and-a-half 1.5 times the slate's width; centre-nailed; nail line 25 mm from the head of a
 * head-nailed slate; undereave hole 20 mm from its head; hole clearance 10 mm; joint 3 to 5 mm;
 * no cut narrower than 150 mm; density 2800 kg/m³. Does not judge: see {@link slateSpecProblems}.
 *
 * Source: joint and hole clearance from trade guides, narrowest cut from BS 5534:2014 as reported by
 * trade guides; the rest is common practice, no source.
 *
 * @example slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 }).slateAndAHalfWidthMm // 375
 */
export function slateSpec(given: SlateSpecInput): SlateSpec {
  return Object.freeze({
    slateAndAHalfWidthMm: 1.5 * given.widthMm,
    ...CUSTOMARY,
    ...given
  });
}

/**
 * The greatest headlap a slate allows: a third of its length, to the nearest whole mm.
 *
 * Source: NHBC Standards 7.2.19, table 12.
 * @example largestHeadlapMm(500) // 167
 */
export function largestHeadlapMm(lengthMm: number): number {
  return Math.round(lengthMm / 3);
}

/**
 * Everything that keeps a slate from being laid out, field by field; empty when nothing does.
 *
 * @param spec as typed; not modified; may hold NaN
 * @returns problems in the order of the fields; fields that are not numbers are reported alone,
 * because what depends on them cannot be judged
 *
 * Limits of length, width and density are ours, wide enough for any slate. A headlap above a third
 * of the length is refused (NHBC Standards 7.2.19, table 12).
 * @example
 * slateSpecProblems(slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 200 }));
 * // [{ field: 'headlapMm', code: 'headlap-above-third', value: 200, limit: 167, nearest: 167 }]
 */
export function slateSpecProblems(spec: SlateSpec): FieldProblem[] {
  const numbers = Object.entries(spec).filter(([field]) => field in RANGES);
  const problems = rangeProblems(Object.fromEntries(numbers), RANGES);
  const isSound = (...fields: string[]) =>
    !problems.some((problem) => fields.includes(problem.field));

  const mostHeadlap = largestHeadlapMm(spec.lengthMm);
  if (isSound('lengthMm', 'headlapMm') && spec.headlapMm > mostHeadlap)
    problems.push({
      field: 'headlapMm',
      code: 'headlap-above-third',
      value: spec.headlapMm,
      limit: mostHeadlap,
      nearest: mostHeadlap
    });
  if (isSound('jointMinMm', 'jointMaxMm') && spec.jointMinMm > spec.jointMaxMm)
    problems.push({
      field: 'jointMaxMm',
      code: 'range-reversed',
      value: spec.jointMaxMm,
      limit: spec.jointMinMm,
      nearest: spec.jointMinMm
    });
  if (isSound('widthMm', 'slateAndAHalfWidthMm')) {
    const { widthMm, slateAndAHalfWidthMm: value } = spec;
    const least = Math.ceil(1.25 * widthMm);
    const most = Math.floor(1.75 * widthMm);
    const field = 'slateAndAHalfWidthMm';
    if (value < least)
      problems.push({ field, code: 'not-wider-than-slate', value, limit: least, nearest: least });
    if (value > most)
      problems.push({ field, code: 'too-large', value, limit: most, nearest: most });
  }
  return problems;
}
