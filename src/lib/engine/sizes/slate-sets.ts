import { type SlateSpec, largestHeadlapMm, slateSpec } from '../roof/index.ts';

/** Widths of a set: all alike, or whatever came between two bounds. */
export type SetWidths =
  | { readonly kind: 'one'; readonly widthMm: number }
  | {
      readonly kind: 'random';
      readonly fromMm: number;
      readonly toMm: number;
      /** Mean width, mm; the middle of the bounds where nobody measured. */
      readonly meanMm?: number;
    };

/** Slates of one length on a roof that takes several. Plain data. */
export interface SlateSet {
  readonly id: string;
  readonly lengthMm: number;
  readonly widths: SetWidths;
}

/** The most sets one roof may have: ours, more than any slater lays. */
export const MOST_SETS = 8;
/** Least distance of two battens, centre to centre, mm: they would touch. Common practice, no source. */
export const LEAST_BATTEN_STEP_MM = 50;

/** What keeps some sets from going on one roof together. */
export type SetsProblem =
  | { readonly code: 'no-sets' }
  | { readonly code: 'too-many'; readonly sets: number; readonly most: number }
  | { readonly code: 'not-a-length'; readonly id: string }
  | {
      readonly code: 'rising';
      readonly id: string;
      readonly lengthMm: number;
      readonly beforeMm: number;
    }
  | { readonly code: 'same-length'; readonly id: string; readonly lengthMm: number }
  | {
      readonly code: 'below-twice-lap';
      readonly id: string;
      readonly lengthMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: 'headlap-above-third';
      readonly id: string;
      readonly lengthMm: number;
      readonly mostMm: number;
    }
  | {
      readonly code: 'wider-than-long';
      readonly id: string;
      readonly widthMm: number;
      readonly lengthMm: number;
    }
  | {
      readonly code: 'widths-reversed';
      readonly id: string;
      readonly fromMm: number;
      readonly toMm: number;
    }
  | {
      readonly code: 'step-too-large';
      readonly id: string;
      readonly lengthMm: number;
      readonly beforeMm: number;
    };

/**
 * The mean width of a set, mm: as measured, else the middle of its bounds.
 *
 * Source: the middle of the bounds is common practice, no source.
 * @throws nothing; a width that is no number comes back as it is
 */
export function meanWidthMm(widths: SetWidths): number {
  return widths.kind === 'one'
    ? widths.widthMm
    : (widths.meanMm ?? (widths.fromMm + widths.toMm) / 2);
}

/**
 * The slate of one set as the engine takes it: length and width of the set, all else of the roof.
 *
 * @param base how the roof is laid: headlap, nailing, joints; its length and width are not used
 * @param set lengths in mm; random widths stand for their mean
 * @returns a full specification; slate-and-a-half 1.5 times the width
 * @throws nothing; it does not judge, see {@link setsProblems}
 */
export function specOfSet(base: SlateSpec, set: SlateSet): SlateSpec {
  const widthMm = meanWidthMm(set.widths);
  return slateSpec({
    ...base,
    lengthMm: set.lengthMm,
    widthMm,
    slateAndAHalfWidthMm: 1.5 * widthMm,
    narrowestCutMm: Math.min(base.narrowestCutMm, widthMm),
    ...(set.widths.kind === 'random' && {
      randomWidths: { fromMm: set.widths.fromMm, toMm: set.widths.toMm }
    })
  });
}

/**
 * What keeps sets of slates from one roof, first the whole, then set by set from the eave up.
 *
 * Longest first; each shorter than the one before; headlap at most a third of the length and so a
 * length never below twice the headlap; no width above the length; and the shorter set's first
 * batten at least {@link LEAST_BATTEN_STEP_MM} above the batten below it.
 *
 * @param sets eave first; not modified; may hold anything somebody typed
 * @param base how the roof is laid, headlap and nailing in mm
 * @returns all problems; empty when the sets go together
 * @throws nothing
 * Source: order and drop rule as in check figures of several lengths (a stone-roofing society's
 * pages); a third of the length from NHBC Standards 7.2.19, table 12.
 */
export function setsProblems(sets: readonly SlateSet[], base: SlateSpec): SetsProblem[] {
  if (sets.length === 0) return [{ code: 'no-sets' }];
  if (sets.length > MOST_SETS) return [{ code: 'too-many', sets: sets.length, most: MOST_SETS }];
  return sets.flatMap((set, index) => problemsOfSet(set, sets[index - 1], base));
}

function problemsOfSet(
  set: SlateSet,
  before: SlateSet | undefined,
  base: SlateSpec
): SetsProblem[] {
  const { id, lengthMm, widths } = set;
  const numbers = [lengthMm, meanWidthMm(widths)];
  if (widths.kind === 'random') numbers.push(widths.fromMm, widths.toMm);
  if (!numbers.every((value) => Number.isFinite(value) && value > 0))
    return [{ code: 'not-a-length', id }];
  const problems: SetsProblem[] = [];
  const { headlapMm } = base;
  if (before && lengthMm > before.lengthMm)
    problems.push({ code: 'rising', id, lengthMm, beforeMm: before.lengthMm });
  if (before && lengthMm === before.lengthMm) problems.push({ code: 'same-length', id, lengthMm });
  if (lengthMm < 2 * headlapMm)
    problems.push({ code: 'below-twice-lap', id, lengthMm, leastMm: 2 * headlapMm });
  else if (headlapMm > largestHeadlapMm(lengthMm))
    problems.push({
      code: 'headlap-above-third',
      id,
      lengthMm,
      mostMm: largestHeadlapMm(lengthMm)
    });
  if (widths.kind === 'random' && widths.fromMm >= widths.toMm)
    problems.push({ code: 'widths-reversed', id, fromMm: widths.fromMm, toMm: widths.toMm });
  const widest = widths.kind === 'one' ? widths.widthMm : Math.max(widths.fromMm, widths.toMm);
  if (widest > lengthMm) problems.push({ code: 'wider-than-long', id, widthMm: widest, lengthMm });
  if (before && before.lengthMm > lengthMm && !isStepPossible(before.lengthMm, lengthMm, base))
    problems.push({ code: 'step-too-large', id, lengthMm, beforeMm: before.lengthMm });
  return problems;
}

/**
 * Whether a set may follow a longer one: whether its first batten lies high enough above the last.
 *
 * @param lengthMm of the longer and the shorter slate, mm
 * @throws nothing
 * Source: the drop rule; the least step of battens is common practice, no source.
 */
export function isStepPossible(longerMm: number, shorterMm: number, base: SlateSpec): boolean {
  const aboveMm = base.nailing === 'head' ? base.headNailLineMm : 0;
  const gaugeMm = (longerMm - base.headlapMm - aboveMm) / 2;
  return gaugeMm - (longerMm - shorterMm) >= LEAST_BATTEN_STEP_MM;
}
