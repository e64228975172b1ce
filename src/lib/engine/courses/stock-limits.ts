import { EngineError } from '../errors.ts';
import type { RoofHeights } from './heights.ts';
import { BILLIONTHS } from './kick-chances.ts';
import { commonNeed } from './laying-order.ts';
import type { PileStock, PlanRequest } from './plan-types.ts';
import type { PileLimit } from './search.ts';

/** What each pile may give: its stock less its reserve. */
export function limitsOf({ piles, common }: PlanRequest): PileLimit[] {
  return piles.map((pile) => ({
    slates: pile.slates - pile.reservedSlates,
    slateAndAHalves: common ? Infinity : pile.slateAndAHalves - pile.reservedSlateAndAHalves
  }));
}

/** Whether no pile is asked to keep back more than it has. */
export function keepsEveryReserve({ piles, common }: PlanRequest): boolean {
  const fits = (pile: PileStock) =>
    pile.reservedSlates <= pile.slates &&
    (common !== undefined || pile.reservedSlateAndAHalves <= pile.slateAndAHalves);
  return piles.every(fits);
}

/** Whether a common stock, where there is one, has the slate-and-a-halves that the courses take. */
export function hasEnoughCommon({ common, courses }: PlanRequest): boolean {
  if (!common) return true;
  return commonNeed(courses) <= common.slateAndAHalves - common.reservedSlateAndAHalves;
}

/**
 * Throws where sums of chances would not be exact any more.
 *
 * @throws EngineError `out-of-range`
 */
export function requireExact({ total }: RoofHeights, piles: number): void {
  const joints = total.joints + total.commonJoints;
  if ((joints + 1) * BILLIONTHS * Math.max(1, piles) > Number.MAX_SAFE_INTEGER)
    throw new EngineError(
      'out-of-range',
      `${joints} joints and ${piles} piles are too many to plan`
    );
}
