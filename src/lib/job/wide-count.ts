import type { BodyOf } from '$lib/journal';
import { handCount } from './hand-count.ts';
import type { PlanGround } from './plan-request.ts';

/**
 * The event that counts the slate-and-a-halves that stand with a pile now. Its full slates are left as
 * the tally has them, as surely as before: only what is counted changes.
 *
 * @param pile its place, 1 for the thickest
 * @param slateAndAHalves counted, whole
 */
export function wideCount(
  ground: PlanGround,
  pile: number,
  slateAndAHalves: number,
  gradesId: string | null
): BodyOf<'pileCounted'> {
  const { toCome, countSd } = ground.stock.piles[pile - 1];
  const standing = Math.max(0, ground.left[pile - 1].slates - toCome);
  return handCount(ground, pile, standing, gradesId, {
    slateAndAHalves,
    ...(countSd > 0 && { sdSlates: countSd })
  });
}
