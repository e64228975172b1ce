import { commonNeed } from './laying-order.ts';
import { leastPair } from './least.ts';
import type { PileCount, PileStock, PlanRequest, Shortage } from './plan-types.ts';
import type { Sums } from './heights.ts';

/** Whether a plan fits the given piles, the common stock being ample. */
type Fits = (piles: readonly PileStock[]) => boolean;

/**
 * How much is missing when no plan fits: overall, in reserves, and the least that each pile alone
 * would have to gain. A shortage can have nothing missing overall: piles too small to hold whole
 * courses, or too few slate-and-a-halves where they are needed, still need more of one kind.
 *
 * @param request courses in any order
 * @param total what the whole roof takes
 * @param fits the planner's own test
 *
 * More stock never makes a plan impossible, so the least gain is found by doubling and halving:
 * some twenty tests per pile at most, usually two.
 */
export function shortage(request: PlanRequest, total: Sums, fits: Fits): Shortage {
  const { piles, common } = request;
  const needed = total.slates;
  const neededWide = total.slateAndAHalves;
  const missingSlates = missing(needed, piles.map(spareSlates));
  const missingWide = missing(neededWide, piles.map(spareWide));
  const commonSpare = common ? common.slateAndAHalves - common.reservedSlateAndAHalves : 0;
  return {
    status: 'short',
    missingSlates,
    missingSlateAndAHalves: common
      ? missing(commonNeed(request.courses), [commonSpare])
      : missingWide,
    missingReserve: piles.flatMap((pile, index) => reserveGap(pile, index, common !== undefined)),
    missingCommonReserve: Math.max(0, -commonSpare),
    mendedBy: mendedBy(
      piles.map(withWholeReserve),
      { needed, neededWide, missingSlates, missingWide },
      fits
    )
  };
}

interface Need {
  readonly needed: number;
  readonly neededWide: number;
  readonly missingSlates: number;
  readonly missingWide: number;
}

function mendedBy(piles: readonly PileStock[], need: Need, fits: Fits): PileCount[] {
  if (fits(piles)) return [];
  return piles.flatMap((pile, index) => {
    const fitsWith = (slates: number, slateAndAHalves: number) =>
      fits(piles.with(index, grown(pile, slates, slateAndAHalves)));
    const gain = leastPair(
      { slates: need.missingSlates, slateAndAHalves: need.missingWide },
      { slates: need.needed, slateAndAHalves: need.neededWide },
      fitsWith
    );
    return gain ? [{ pile: index + 1, ...gain }] : [];
  });
}

function missing(needed: number, spares: readonly number[]): number {
  return Math.max(0, needed - spares.reduce((sum, spare) => sum + Math.max(0, spare), 0));
}

function spareSlates(pile: PileStock): number {
  return pile.slates - pile.reservedSlates;
}

function spareWide(pile: PileStock): number {
  return pile.slateAndAHalves - pile.reservedSlateAndAHalves;
}

function reserveGap(pile: PileStock, index: number, hasCommonStock: boolean): PileCount[] {
  const slates = Math.max(0, -spareSlates(pile));
  const slateAndAHalves = hasCommonStock ? 0 : Math.max(0, -spareWide(pile));
  return slates + slateAndAHalves > 0 ? [{ pile: index + 1, slates, slateAndAHalves }] : [];
}

/** The pile once its missing reserve is made good. */
function withWholeReserve(pile: PileStock): PileStock {
  return grown(pile, Math.max(0, -spareSlates(pile)), Math.max(0, -spareWide(pile)));
}

function grown(pile: PileStock, slates: number, slateAndAHalves: number): PileStock {
  return {
    ...pile,
    slates: pile.slates + slates,
    slateAndAHalves: pile.slateAndAHalves + slateAndAHalves
  };
}
