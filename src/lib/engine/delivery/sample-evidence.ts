import type { ProductLimits } from './product-tolerances.ts';
import {
  checkSlate,
  isCertain,
  isUsable,
  slateOutcome,
  slateThicknessMm,
  type MeasuredSlate,
  type SlateCheck
} from './slate-conformity.ts';

/** A slate that judges the delivery, with what its checks said. */
export interface JudgedSlate {
  readonly palletId: string;
  readonly checks: readonly SlateCheck[];
  /** Some check failed: the slate is outside the order. */
  readonly isOutside: boolean;
  /** Some check failed on a limit that the order states or the buyer confirmed from it. */
  readonly isOutsideForCertain: boolean;
  /** Chance picked it for the full check. */
  readonly isFullCheck: boolean;
  /** Defects seen, each once. */
  readonly defects: readonly string[];
  /** It can go on the roof as a full slate, whatever its thickness. */
  readonly isUsable: boolean;
  /** Mean of its points, mm; undefined where none was taken. */
  readonly thicknessMm?: number;
}

/** Slates of the unsorted sample, and how many others were measured and listed apart. */
export interface SampleEvidence {
  readonly judged: readonly JudgedSlate[];
  /** Measured, but not drawn before sorting: shown, never counted. */
  readonly listedApart: number;
}

/**
 * Thickness of the sampled slates that are inside the order, mm, in the order given, and how many of
 * those that judge are inside: what sorting is foretold from.
 *
 * @throws EngineError as `productLimits` and `checkSlate`
 */
export function thicknessInsideOrder(
  slates: readonly MeasuredSlate[],
  limits: ProductLimits
): { readonly thicknessesMm: readonly number[]; readonly inside: number; readonly judged: number } {
  const { judged } = sampleEvidence(slates, limits);
  const inside = judged.filter(({ isOutside }) => !isOutside);
  return {
    thicknessesMm: inside.flatMap(({ thicknessMm }) => thicknessMm ?? []),
    inside: inside.length,
    judged: judged.length
  };
}

/**
 * Picks the slates that may judge a delivery: drawn at random before sorting, and measured.
 *
 * Others may be good readings, but whoever picked them may have picked the worst.
 */
export function sampleEvidence(
  slates: readonly MeasuredSlate[],
  limits: ProductLimits
): SampleEvidence {
  const measured = slates
    .map((slate) => ({ slate, checks: checkSlate(slate, limits) }))
    .filter(({ checks }) => slateOutcome(checks) !== 'not measured');
  const sample = measured.filter(({ slate }) => slate.drawnAs === 'unsorted sample');
  return {
    judged: sample.map(({ slate, checks }) => ({
      palletId: slate.palletId,
      checks,
      isOutside: slateOutcome(checks) === 'fail',
      isOutsideForCertain: checks.some(
        ({ outcome, basis }) => outcome === 'fail' && isCertain(basis)
      ),
      isFullCheck: slate.isFullCheck === true,
      defects: [...new Set(slate.defects)],
      isUsable: isUsable(checks),
      thicknessMm: slateThicknessMm(slate)
    })),
    listedApart: measured.length - sample.length
  };
}
