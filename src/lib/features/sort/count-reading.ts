import {
  type CountByHeight,
  type PackedThickness,
  type PackingUnknown,
  countByHeight
} from '$lib/engine/thickness';
import { type ShownUnit, readLength } from '$lib/ui';

/** What is typed of a pile: how many slates, or how high they stand. */
export type CountedBy = 'slates' | 'height';

/** Why what was typed is no count. */
export type CellProblem =
  'not-whole' | 'too-many' | 'not-a-height' | 'height-zero' | 'too-high' | PackingUnknown['reason'];

/** A field of the count, read. */
export type CellRead =
  | { readonly kind: 'empty' }
  | { readonly kind: 'wrong'; readonly problem: CellProblem }
  | {
      readonly kind: 'counted';
      readonly slates: number;
      /** Where the height was measured: all stacks together, and how sure the count is. */
      readonly byHeight?: CountByHeight & { readonly heightMm: number };
    };

/** Longest row of slates on edge that is taken as one stack. Ours. */
const HIGHEST_STACK_MM = 20_000;

/** Digits, or groups of three parted alike: 1,200 and 1 200. */
const WHOLE = /^\d+$|^\d{1,3}([ ,.'’\u00a0\u202f])\d{3}$/;

/** A whole number of slates. */
export function readSlates(text: string, most: number): CellRead {
  const typed = text.trim();
  if (typed === '') return { kind: 'empty' };
  if (!WHOLE.test(typed)) return { kind: 'wrong', problem: 'not-whole' };
  const slates = Number(typed.replace(/\D/g, ''));
  return slates > most ? { kind: 'wrong', problem: 'too-many' } : { kind: 'counted', slates };
}

/** The heights of one stack or several, as typed: `640`, `420 + 380`. */
export function readHeights(
  text: string,
  unit: ShownUnit
):
  | { readonly ok: true; readonly heightsMm: readonly number[] }
  | { readonly ok: false; readonly problem: 'not-a-height' | 'height-zero' | 'too-high' } {
  const heightsMm: number[] = [];
  for (const part of text.split(/[+;]/)) {
    const read = readLength(part, unit);
    // 1,200 mm is a height of a stack and no 1.2 mm
    const heightMm = read.ok ? read.value : read.reason === 'ambiguous' ? read.nearest : undefined;
    if (heightMm === undefined || heightMm < 0) return { ok: false, problem: 'not-a-height' };
    if (heightMm === 0) return { ok: false, problem: 'height-zero' };
    if (heightMm > HIGHEST_STACK_MM) return { ok: false, problem: 'too-high' };
    heightsMm.push(heightMm);
  }
  return { ok: true, heightsMm };
}

/** The slates of a pile by the height of its stacks. */
export function readCountByHeight(
  text: string,
  unit: ShownUnit,
  packed: PackedThickness | PackingUnknown
): CellRead {
  if (text.trim() === '') return { kind: 'empty' };
  const read = readHeights(text, unit);
  if (!read.ok) return { kind: 'wrong', problem: read.problem };
  if (!packed.ok) return { kind: 'wrong', problem: packed.reason };
  const counted = countByHeight(read.heightsMm, packed);
  const heightMm = read.heightsMm.reduce((sum, mm) => sum + mm, 0);
  return { kind: 'counted', slates: counted.slates, byHeight: { ...counted, heightMm } };
}
