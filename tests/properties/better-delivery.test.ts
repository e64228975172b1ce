import { describe, expect, it } from 'vitest';
import { betterDelivery } from '$lib/engine/delivery';
import { type Random, createRandom } from '$lib/engine';
import { mostShare, leastShare, report, rounds } from '../support/rounds.ts';

const FULL = 4000;
const TRIED = rounds(600, FULL);

/** A sample of one delivery: each slate outside with the same chance. */
function sampled(slates: number, share: number, random: Random) {
  let outside = 0;
  for (let slate = 0; slate < slates; slate++) if (random() < share) outside++;
  return { sampled: slates, outside, sdMm: 0.6 };
}

/** How often a difference is called shown; and how often the bare shares differ. */
function rates(shares: readonly number[], slates: number, seed: number) {
  const random = createRandom(seed);
  let shown = 0;
  let rightly = 0;
  let differ = 0;
  for (let round = 0; round < TRIED; round++) {
    const deliveries = shares.map((share) => ({ share, ...sampled(slates, share, random) }));
    const told = betterDelivery(deliveries);
    if (!told) throw new Error('nothing was compared');
    if (told.isShown) shown++;
    if (told.isShown && told.best.share < told.against.share) rightly++;
    if (new Set(deliveries.map(({ outside }) => outside)).size > 1) differ++;
  }
  return { shown: shown / TRIED, rightly: rightly / TRIED, differ: differ / TRIED };
}

describe('which delivery is better, over simulated samples', () => {
  it.each([2, 3, 6, 12])(
    'of %i equally good ones none is called better more than one time in twenty',
    (count) => {
      for (const [at, [slates, share]] of [
        [40, 0.1],
        [80, 0.04],
        [100, 0.3]
      ].entries()) {
        const equal = new Array<number>(count).fill(share);
        const { shown, differ } = rates(equal, slates, 100 * count + at);
        report(`${count} equal deliveries, ${slates} slates, ${share} outside`, {
          shown,
          'bare shares differ': differ
        });
        expect(shown).toBeLessThan(mostShare(0.05, TRIED, FULL));
        // The simplest rival, the smaller share alone, calls one better nearly every time.
        expect(differ).toBeGreaterThan(leastShare(0.7, TRIED, FULL));
      }
    }
  );

  it('a delivery that is much better is found, and hardly ever the wrong one', () => {
    const { shown, rightly } = rates([0.02, 0.2], 80, 7);
    const { shown: ofFour, rightly: rightlyOfFour } = rates([0.02, 0.2, 0.2, 0.2], 80, 8);
    report('2 % against 20 % outside, 80 slates', { shown, 'one of four': ofFour });
    expect(rightly).toBeGreaterThan(leastShare(0.9, TRIED, FULL));
    expect(rightlyOfFour).toBeGreaterThan(leastShare(0.85, TRIED, FULL));
    expect(shown - rightly).toBeLessThan(0.005);
  });
});
