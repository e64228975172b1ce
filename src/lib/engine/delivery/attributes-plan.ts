import type { Basis } from './basis.ts';
import {
  CODE_LETTERS,
  codeLetter,
  sampleSizeOf,
  type CodeLetter,
  type InspectionLevel
} from './code-letter.ts';

/** Acceptable quality levels that the table here covers, per cent of slates outside. */
export const ATTRIBUTES_AQLS = [0.65, 1, 1.5, 2.5, 4, 6.5, 10, 15] as const;
export type AttributesAql = (typeof ATTRIBUTES_AQLS)[number];

/** How hard the sample is judged. Reduced inspection is left out on purpose. */
export type Severity = 'normal' | 'tightened';

/** What a single-sampling plan by attributes asks: draw, count the slates outside, compare. */
export interface AttributesPlan {
  /** Slates to draw. */
  readonly sampleSize: number;
  /** Accept with this many slates outside, or fewer. */
  readonly acceptAtMost: number;
}

/** A plan looked up in the standard's tables. */
export interface TabulatedPlan extends AttributesPlan {
  /** Refuse from this many slates outside. Always `acceptAtMost` + 1. */
  readonly refuseFrom: number;
  /** Letter of the lot's row. */
  readonly lotLetter: CodeLetter;
  /** Letter whose plan is used; differs from `lotLetter` where the table shows an arrow. */
  readonly planLetter: CodeLetter;
  /** The sample would reach the lot, so every slate is looked at and `sampleSize` is the lot. */
  readonly everySlate: boolean;
  readonly severity: Severity;
  readonly basis: readonly Basis[];
}

export type AttributesPlanResult =
  | { readonly ok: true; readonly plan: TabulatedPlan }
  | {
      readonly ok: false;
      /**
       * `lot-too-small`: fewer than 2 slates; look at the one there is.
       * `cell-in-doubt`: letter A with AQL 10; choose another level, or look at every slate.
       */
      readonly reason: 'lot-too-small' | 'cell-in-doubt';
    };

/**
 * The master table is constant along its diagonals: letter index plus AQL index says everything.
 * Left of the list only arrows down (a larger sample), right of it only arrows up.
 */
type Cell = number | 'down' | 'up';
// prettier-ignore
const NORMAL_DIAGONAL: Record<number, Cell> = {
  5: 0, 6: 'up', 7: 'down', 8: 1, 9: 2, 10: 3, 11: 5, 12: 7, 13: 10, 14: 14, 15: 21
};
// prettier-ignore
const TIGHTENED_DIAGONAL: Record<number, Cell> = {
  6: 0, 7: 'down', 8: 'down', 9: 1, 10: 2, 11: 3, 12: 5, 13: 8, 14: 12, 15: 18
};

function cellAt(severity: Severity, letterIndex: number, aqlIndex: number): Cell {
  const diagonal = letterIndex + aqlIndex;
  const cells = severity === 'normal' ? NORMAL_DIAGONAL : TIGHTENED_DIAGONAL;
  return cells[diagonal] ?? (diagonal > 15 ? 'up' : 'down');
}

/**
 * The single-sampling plan by attributes for a delivery.
 *
 * @param lotSize slates in the lot, whole, 0 or more
 * @param level general inspection level; II unless agreed otherwise
 * @param aql acceptable quality level, per cent of slates outside
 * @param severity `normal` for a first delivery; `tightened` after the switching rule asks for it
 * @returns the plan. Where the table shows an arrow, the plan it points at gives both the sample
 *   size and the acceptance number. Where the sample would reach the lot, every slate is looked at
 *   and the acceptance number stays.
 * @throws EngineError `not-whole`, `out-of-range` for a lot that is not a count
 *
 * Source: MIL-STD-105E tables I, II-A and II-B (single sampling). Letter A with AQL 10 is refused:
 * normal, its arrow would point above the table; tightened, the diagonal gives 0 and a printed
 * table shows no plan. It concerns lots of 2 to 8 only.
 * @example attributesPlan(5000, 'II', 1.5, 'normal') // 200 slates, accept with at most 7
 */
export function attributesPlan(
  lotSize: number,
  level: InspectionLevel,
  aql: AttributesAql,
  severity: Severity
): AttributesPlanResult {
  const start = codeLetter(lotSize, level);
  if (!start.ok) return start;
  if (start.letter === 'A' && aql === 10) return { ok: false, reason: 'cell-in-doubt' };

  const aqlIndex = ATTRIBUTES_AQLS.indexOf(aql);
  let letterIndex = CODE_LETTERS.indexOf(start.letter);
  let cell = cellAt(severity, letterIndex, aqlIndex);
  while (typeof cell !== 'number') {
    letterIndex += cell === 'down' ? 1 : -1;
    cell = cellAt(severity, letterIndex, aqlIndex);
  }
  const planLetter = CODE_LETTERS[letterIndex];
  const sampleSize = sampleSizeOf(planLetter);
  const everySlate = sampleSize >= lotSize;
  return {
    ok: true,
    plan: {
      sampleSize: everySlate ? lotSize : sampleSize,
      acceptAtMost: cell,
      refuseFrom: cell + 1,
      lotLetter: start.letter,
      planLetter,
      everySlate,
      severity,
      basis: [
        start.basis,
        {
          standing: 'published',
          source: `MIL-STD-105E, table II-${severity === 'normal' ? 'A' : 'B'}`
        }
      ]
    }
  };
}
