import { requireFinite, requireWhole } from '../errors.ts';
import type { Basis } from './basis.ts';
import { requirePositive } from './requirements.ts';

/** Slates packed together and measured across. */
export interface MeasuredStack {
  readonly slates: number;
  readonly totalMm: number;
}

/** How measured stacks compare with the label. */
export interface StackComparison {
  /** Stacks measured. */
  readonly stacks: number;
  /** Packed thickness per 100 slates over all stacks, mm. */
  readonly measuredMmPer100: number;
  /** The thinnest and the thickest stack, each per 100 slates, mm. */
  readonly lowestMmPer100: number;
  readonly highestMmPer100: number;
  readonly labelMmPer100: number;
  /** Measured less label, mm per 100 slates. */
  readonly differenceMmPer100: number;
  /** The same in per cent of the label. */
  readonly differencePercent: number;
  /** Departure that the order allows, per cent of the label; undefined where it names none. */
  readonly allowedPercent?: number;
  /** Whether it is within what the order allows; `no limit set` where it names none. */
  readonly outcome: 'pass' | 'fail' | 'no limit set';
  readonly basis: Basis;
}

export type StackCheckResult =
  | { readonly ok: true; readonly stack: StackComparison }
  | { readonly ok: false; readonly reason: 'label-missing' | 'stack-not-measured' };

/**
 * Compares stacks measured on site with the packed thickness on the label.
 *
 * @param stacks each at least 1 slate and above 0 mm; any order
 * @param labelMmPer100 packed thickness of 100 slates on the label, mm; undefined or 0: missing
 * @param allowedPercent departure that the order allows, per cent of the label; there is no
 *   published figure, so none is assumed
 * @returns the comparison; refused where the label is missing or no stack was measured
 * @throws EngineError `not-finite`, `not-whole`, `out-of-range`
 *
 * Source: the label gives packed thickness per 100 slates (EN 12326-1, quoted). A packed stack is
 * thicker than the sum of its slates, so it is compared with the label only, never with a gauge.
 * @example checkStack([{ slates: 50, totalMm: 290 }], 560) // 580 per 100, 20 over, 3.571 %
 */
export function checkStack(
  stacks: readonly MeasuredStack[],
  labelMmPer100: number | undefined,
  allowedPercent?: number
): StackCheckResult {
  for (const { slates, totalMm } of stacks) {
    requireWhole(slates, 1, 'slates in a stack');
    requirePositive(totalMm, 'height of a stack');
  }
  if (!labelMmPer100) return { ok: false, reason: 'label-missing' };
  requirePositive(labelMmPer100, 'label');
  if (stacks.length === 0) return { ok: false, reason: 'stack-not-measured' };

  const slates = stacks.reduce((sum, stack) => sum + stack.slates, 0);
  const each = stacks.map((stack) => (stack.totalMm * 100) / stack.slates).sort((a, b) => a - b);
  const heights = stacks.map(({ totalMm }) => totalMm).sort((a, b) => a - b);
  const measuredMmPer100 = (heights.reduce((sum, mm) => sum + mm, 0) * 100) / slates;
  const differenceMmPer100 = measuredMmPer100 - labelMmPer100;
  const differencePercent = (differenceMmPer100 / labelMmPer100) * 100;
  return {
    ok: true,
    stack: {
      stacks: stacks.length,
      measuredMmPer100,
      lowestMmPer100: each[0],
      highestMmPer100: each[each.length - 1],
      labelMmPer100,
      differenceMmPer100,
      differencePercent,
      ...(allowedPercent !== undefined && { allowedPercent }),
      outcome: outcomeOf(differencePercent, allowedPercent),
      basis:
        allowedPercent === undefined
          ? { standing: 'quoted', source: 'EN 12326-1, packed thickness on the label' }
          : { standing: 'set by the order', source: 'the order' }
    }
  };
}

function outcomeOf(percent: number, allowed: number | undefined): StackComparison['outcome'] {
  if (allowed === undefined) return 'no limit set';
  requireFinite(allowed, 'allowed departure');
  return Math.abs(percent) <= allowed + 1e-9 ? 'pass' : 'fail';
}

/** How the count compares with the order. */
export interface CountComparison {
  readonly ordered: number;
  readonly delivered: number;
  /** Slates missing; 0 when none is. */
  readonly short: number;
  /** Slates beyond the order; 0 when none is. */
  readonly over: number;
}

/**
 * Compares the delivered count with the order.
 *
 * @returns refused as `count-zero` where nothing was ordered or nothing delivered
 * @throws EngineError `not-whole`, `out-of-range` unless both counts are whole and 0 or more
 * @example checkCount(2000, 1960) // 40 short
 */
export function checkCount(
  ordered: number,
  delivered: number
):
  | { readonly ok: true; readonly count: CountComparison }
  | { readonly ok: false; readonly reason: 'count-zero' } {
  requireWhole(ordered, 0, 'slates ordered');
  requireWhole(delivered, 0, 'slates delivered');
  if (ordered === 0 || delivered === 0) return { ok: false, reason: 'count-zero' };
  return {
    ok: true,
    count: {
      ordered,
      delivered,
      short: Math.max(0, ordered - delivered),
      over: Math.max(0, delivered - ordered)
    }
  };
}
