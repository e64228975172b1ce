import type { BodyOf } from '$lib/journal';

/** A stack whose slates would be so much thinner or thicker than ordered is asked about. Ours. */
const ODD_TIMES = 2;

/** Why a stack may be misread, or mistyped by a zero. */
export interface StackDoubt {
  readonly slates: number;
  readonly totalMm: number;
  /** What a slate of it would measure, mm. */
  readonly slateMm: number;
  /** What a slate should measure, mm, and whether the label says so; else the order does. */
  readonly expectedMm: number;
  readonly isFromLabel: boolean;
  /** The height with a zero more or less, where that one is likely. */
  readonly likelyMm?: number;
}

/**
 * Whether the height of a stack is odd for its slates, by the label or else by the order.
 *
 * @returns undefined where it is not, and where neither says how thick a slate is
 */
export function doubtOf(
  slates: number,
  totalMm: number,
  order: BodyOf<'deliveryDeclared'> | undefined
): StackDoubt | undefined {
  const label = order?.stackOf100Mm;
  const expectedMm = label ? label / 100 : order?.nominalThicknessMm;
  if (!expectedMm || isLikely(totalMm / slates, expectedMm)) return undefined;
  const likelyMm = [totalMm * 10, totalMm / 10].find((mm) => isLikely(mm / slates, expectedMm));
  return {
    ...{ slates, totalMm, expectedMm, isFromLabel: !!label, slateMm: totalMm / slates },
    ...(likelyMm !== undefined && { likelyMm })
  };
}

function isLikely(slateMm: number, expectedMm: number): boolean {
  return slateMm >= expectedMm / ODD_TIMES && slateMm <= expectedMm * ODD_TIMES;
}
