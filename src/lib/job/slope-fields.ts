import { type SlopeInput, makeSlope } from '$lib/engine/roof';
import type { SlopeBody } from '$lib/journal';

interface SlopeFieldOfKind<Kind extends string> {
  readonly kind: Kind;
  /** Whether a person must give it; the others start with the engine's customary value. */
  readonly isGiven: boolean;
  /** Whether it stands under "more", since most roofs keep its customary value. */
  readonly isMore: boolean;
}

/** A field that takes one of a few words. */
interface SlopeChoice<Choice extends string> extends SlopeFieldOfKind<'choice'> {
  readonly choices: readonly Choice[];
}

type Field = SlopeFieldOfKind<'length' | 'number'> | SlopeChoice<string>;

const given = { isGiven: true, isMore: false } as const;
const more = { isGiven: false, isMore: true } as const;

/**
 * The fields of a slope beside its name, edges and openings, in the order of its form. Form,
 * reading, drafts kept, a change of unit and the example roofs all go through this table.
 */
export const SLOPE_FIELDS = {
  rafterLengthMm: { kind: 'length', ...given },
  eaveWidthMm: { kind: 'length', ...given },
  pitchDegrees: { kind: 'number', ...given },
  eaveHeightMm: { kind: 'length', ...more },
  ridgeGapMm: { kind: 'length', ...more },
  setOutFrom: { kind: 'choice', choices: ['left', 'right'], ...more },
  rafterLeftMm: { kind: 'length', ...more },
  rafterRightMm: { kind: 'length', ...more },
  ridgeWidthMm: { kind: 'length', ...more },
  diagonalMm: { kind: 'length', ...more }
} as const satisfies Partial<Record<keyof SlopeBody, Field>>;

/** Name of a field in the table of a slope's fields. */
export type SlopeField = keyof typeof SLOPE_FIELDS;

/** What a slope's form keeps of each field: the text as typed, or the word chosen. */
export type SlopeTexts = {
  -readonly [Name in SlopeField]: (typeof SLOPE_FIELDS)[Name] extends SlopeChoice<infer Choice>
    ? Choice
    : string;
};

/** The names of all fields of a slope, in the order of its form. */
export const SLOPE_FIELD_NAMES = Object.keys(SLOPE_FIELDS) as readonly SlopeField[];

/** The words that a field may take; undefined for a length or a number. */
export function choicesOf(field: SlopeField): readonly string[] | undefined {
  const entry: Field = SLOPE_FIELDS[field];
  return entry.kind === 'choice' ? entry.choices : undefined;
}

/** Something of every field, by its name. */
export function eachSlopeField<Value>(
  make: (field: SlopeField) => Value
): Record<SlopeField, Value> {
  const entries = SLOPE_FIELD_NAMES.map((field) => [field, make(field)]);
  return Object.fromEntries(entries) as Record<SlopeField, Value>;
}

/** What the engine takes where a person gives nothing; a field that must be given has none. */
export function customaryOf(field: SlopeField): number | string | undefined {
  if (SLOPE_FIELDS[field].isGiven) return undefined;
  return makeSlope({ id: '', rafterLengthMm: 0, eaveWidthMm: 0, pitchDegrees: 0 })[field];
}

/** A slope of the engine as it is entered in a job, with every field that it names. */
export function slopeBody(slope: SlopeInput, slopeId: string): SlopeBody {
  const measures = eachSlopeField((field) => slope[field] ?? customaryOf(field));
  const { left, right, openings } = makeSlope(slope);
  return {
    slopeId,
    name: slope.name ?? slopeId,
    ...(measures as Pick<SlopeBody, SlopeField>),
    left: { ...left },
    right: { ...right },
    openings: openings.map((opening) => ({ ...opening }))
  };
}
