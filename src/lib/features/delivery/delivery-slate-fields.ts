import type { OfferedSlate } from '$lib/job';
import type { SampleSlate } from '$lib/journal';
import { readBetween } from './delivery-fields.ts';

/** What the full check measures of a slate, mm, with the largest value that is taken. */
export const SLATE_FIELDS = {
  lengthMm: 2000,
  widthMm: 2000,
  outOfSquareMm: 200,
  edgeBowMm: 200,
  flatnessMm: 200
} as const;
export type SlateField = keyof typeof SLATE_FIELDS;
export const FIELDS = Object.keys(SLATE_FIELDS) as SlateField[];

/** The fields as typed. */
export type TypedFields = Record<SlateField, string>;

/** The fields with what is known of a slate in them; all empty where nothing is. */
export function typedFields(known: Partial<SampleSlate> = {}): TypedFields {
  return Object.fromEntries(FIELDS.map((field) => [field, `${known[field] ?? ''}`])) as TypedFields;
}

/** The fields that hold something which is no such measure. */
export function wrongFields(typed: TypedFields): SlateField[] {
  return FIELDS.filter((field) => !readField(typed, field).ok);
}

/** The fields that hold nothing. */
export function emptyFields(typed: TypedFields): SlateField[] {
  return FIELDS.filter((field) => typed[field].trim() === '');
}

/** What the fields say, mm; an empty one is left out. */
export function readFields(typed: TypedFields): Partial<Record<SlateField, number>> {
  const measures: Partial<Record<SlateField, number>> = {};
  for (const field of FIELDS) {
    const read = readField(typed, field);
    if (read.ok && read.value !== undefined) measures[field] = read.value;
  }
  return measures;
}

/**
 * Whether a slate that chance picked for the full check was gauged and lacks a size. One that could
 * not be gauged is set aside: nobody measures its size.
 */
export function lacksSizes({ standing, isFull, thicknessMm, measured }: OfferedSlate): boolean {
  const { lengthMm, widthMm, squarenessMm, edgeMm, bowMm } = measured;
  const sizes = [lengthMm, widthMm, squarenessMm, edgeMm, bowMm];
  return standing === 'judges' && isFull && thicknessMm !== undefined && sizes.includes(undefined);
}

function readField(typed: TypedFields, field: SlateField): ReturnType<typeof readBetween> {
  return readBetween(typed[field], 0, SLATE_FIELDS[field], 'negative');
}
