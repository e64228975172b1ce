import type { PlanGround } from './plan-request.ts';

/** One pile by the book of laying: full slates, as counted, laid and lost. */
export interface PileLeft {
  readonly pile: number;
  /** Left to lay, those not sorted yet among them. */
  readonly left: number;
  /** Of these, slates not sorted yet, as far as slates were logged. */
  readonly toCome: number;
  /** Of these, slates that stand there sorted. */
  readonly standing: number;
  readonly laid: number;
  readonly lost: number;
}

/**
 * What is left of each pile and what became of the rest, pile 1 first. A count by hand holds from
 * its moment on; slates laid and lost are told of the whole job, undereave slates among them.
 *
 * @example of 100 slates, 60 of them sorted, 25 laid and 5 broken → 70 left: 30 stand there, 40 to come
 */
export function pilesLeft({
  left: leftOf,
  stock,
  laid,
  partLaid,
  undereaveLaid,
  lostOfPile
}: PlanGround): PileLeft[] {
  return stock.piles.map(({ pile, toCome: expected }, index) => {
    const left = leftOf[index].slates;
    const toCome = Math.min(left, expected);
    return {
      pile,
      left,
      toCome,
      standing: left - toCome,
      laid: [...laid, ...partLaid, ...undereaveLaid]
        .flatMap(({ parts }) => parts)
        .filter((part) => part.pile === pile)
        .reduce((sum, { slates }) => sum + slates, 0),
      lost: lostOfPile[index]
    };
  });
}
