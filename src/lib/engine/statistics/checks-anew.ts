import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import type { Random } from '../random.ts';
import type { CheckedSorter } from './fuse-pallets.ts';
import { type Hand, type SpotCheck, type UnknownHand, learnHand, logPileChances } from './hand.ts';

/** Spot checks are drawn at most so often anew until they give a hand. */
const MOST_DRAWS = 10;
/** 97.5 % quantile of the normal distribution. */
const NORMAL_95 = 1.959963984540054;

/**
 * The hand with its spread widened for how few checks it was learnt from: by checks / degrees of
 * freedom, for the fit of the thresholds to the same checks takes that off the spread, and as
 * Student's t at 95 % exceeds the normal, for the spread itself is known no better.
 */
export function widerHand(hand: Hand): Hand {
  const freedom = Math.max(1, hand.checks - hand.thresholdsMm.length - 1);
  const widening = (hand.checks / freedom) * (tQuantile(0.975, freedom) / NORMAL_95);
  return { ...hand, sdMm: hand.sdMm * widening };
}

/**
 * Lets a sorter's spot checks fall on piles anew and learns the hand from them; undefined where ten
 * such draws give no hand. A sorter whose hand is unknown stays so.
 */
export function checkerOf(
  hand: Hand | UnknownHand,
  checks: readonly SpotCheck[],
  roundTo: number
): (random: Random) => CheckedSorter | undefined {
  const slates = checks.map(({ pile, thicknessMm }) => ({
    pile,
    thicknessMm: (Math.round((thicknessMm * 100) / roundTo) * roundTo) / 100
  }));
  if (!hand.ok) return () => ({ hand, checks: slates });
  const piles = hand.thresholdsMm.length + 1;
  const chances = slates.map(({ thicknessMm }) => logPileChances(hand, thicknessMm).map(Math.exp));
  return (random) => {
    for (let draw = 0; draw < MOST_DRAWS; draw++) {
      const anew = slates.map(({ thicknessMm }, index) => {
        let left = random();
        let pile = 1;
        while (pile < piles && (left -= chances[index][pile - 1]) >= 0) pile++;
        return { pile, thicknessMm };
      });
      const learnt = learnHand(anew, piles);
      if (learnt.ok) return { hand: learnt, checks: anew };
    }
    return undefined;
  };
}
