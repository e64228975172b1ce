import type { PileStock, PileUse } from '$lib/engine/courses';

/** What becomes of the slates of one pile under a plan: the first three add up to what it has. */
export interface PileRow {
  readonly pile: number;
  /** Left when the roof is laid, beyond all that is kept back. */
  readonly leftOver: number;
  readonly lays: number;
  /** Kept back: breakage, spares, and what holds the chance of running out. */
  readonly keptBack: number;
  /** Of what is kept back, slates that only the chance of running out asks for. */
  readonly keptForChance: number;
  readonly has: number;
}

/**
 * What becomes of each pile, pile 1 first. Where a pile does not hold what it should keep back, the
 * row says what it can, and nothing is left over; that it is short is told by `shortfallsOf`. A pile
 * that holds less than the plan lays keeps nothing back.
 *
 * @param raisedBy slates by which each reserve rises to hold a chance of running out; none if left out
 * @example of 491 slates 399 laid, 35 reserved and 21 more for the chance → 36 left, 56 kept back
 */
export function pileRows(
  uses: readonly PileUse[],
  stocks: readonly PileStock[],
  raisedBy: readonly number[] = []
): PileRow[] {
  return uses.map(({ pile, slates: lays }, index) => {
    const { slates: has, reservedSlates } = stocks[index];
    const notLaid = Math.max(0, has - lays);
    const keptBack = Math.min(notLaid, reservedSlates + (raisedBy[index] ?? 0));
    return {
      ...{ pile, lays, keptBack, has },
      leftOver: notLaid - keptBack,
      keptForChance: Math.max(0, keptBack - reservedSlates)
    };
  });
}
