import type { BodyOf } from '$lib/journal';
import type { PlanGround } from './plan-request.ts';

/**
 * The event that counts the slate-and-a-halves that stand with a pile now. Its full slates are left as
 * the tally has them: only what is counted changes.
 *
 * @param pile 1 for the thickest
 * @param slateAndAHalves counted, whole
 */
export function wideCount(
  { request, before, stock }: PlanGround,
  pile: number,
  slateAndAHalves: number,
  gradesId: string | null
): BodyOf<'pileCounted'> {
  const left = request.piles[pile - 1].slates;
  const { toCome, tallied } = stock.piles[pile - 1];
  return {
    ...{ gradesId, pile, tallied, slateAndAHalves },
    slates: Math.max(0, left - toCome),
    taken: Math.max(0, before[pile - 1].slates - left)
  };
}
