import type { PileStock, PileUse } from '$lib/engine/courses';

/** What becomes of the slates of one pile under a plan: the first three add up to what it has. */
export interface PileRow {
  readonly pile: number;
  /** Left when the roof is laid, beyond all that is kept back. */
  readonly leftOver: number;
  /** Laid on courses and as undereave slates. */
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
 * @param stocks what the plan may use, as its request has it
 * @param undereave slates of each pile for undereave rows, which are not among those; none if left out
 * @param raisedBy slates by which each reserve rises to hold a chance of running out; none if left out
 * @example of 491 slates 399 laid, 35 reserved and 21 more for the chance → 36 left, 56 kept back
 */
export function pileRows(
  uses: readonly PileUse[],
  stocks: readonly PileStock[],
  raisedBy: readonly number[] = [],
  undereave: readonly number[] = []
): PileRow[] {
  return uses.map(({ pile, slates }, index) => {
    const { slates: mayUse, reservedSlates } = stocks[index];
    const under = undereave[index] ?? 0;
    const notLaid = Math.max(0, mayUse - slates);
    const keptBack = Math.min(notLaid, reservedSlates + (raisedBy[index] ?? 0));
    return {
      ...{ pile, lays: slates + under, keptBack, has: mayUse + under },
      leftOver: notLaid - keptBack,
      keptForChance: Math.max(0, keptBack - reservedSlates)
    };
  });
}
