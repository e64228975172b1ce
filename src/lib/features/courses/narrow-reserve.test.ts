import { describe, expect, it } from 'vitest';
import type { PileBefore } from '$lib/job';
import { sharesThatRelease } from './narrow-reserve.ts';

const NOW = Object.freeze({ breakageShare: 0.025, sparesShare: 0.02 });

/** A pile as the journal reckons it: shares in whole slates, rounded up. */
function pile(number: number, slates: number, shares = NOW): PileBefore {
  const whole = (share: number) => Math.ceil(Number((slates * share).toFixed(6)));
  return {
    pile: number,
    slates,
    reservedSlates: whole(shares.breakageShare + shares.sparesShare),
    sparesForRepairs: whole(shares.sparesShare)
  };
}

const release = (number: number, slates: number) => [{ pile: number, slates, slateAndAHalves: 0 }];

describe('sharesThatRelease', () => {
  it('changes nothing when nothing is released', () => {
    expect(sharesThatRelease(NOW, [pile(1, 1000)], [])).toEqual(NOW);
  });

  it('takes 10 of 1,000 slates from the spares: 2 % become 1 %', () => {
    expect(sharesThatRelease(NOW, [pile(1, 1000)], release(1, 10))).toEqual({
      breakageShare: 0.025,
      sparesShare: 0.01
    });
  });

  it('touches the breakage only when the spares are used up', () => {
    expect(sharesThatRelease(NOW, [pile(1, 1000)], release(1, 30))).toEqual({
      breakageShare: 0.015,
      sparesShare: 0
    });
    expect(sharesThatRelease(NOW, [pile(1, 1000)], release(1, 45))).toEqual({
      breakageShare: 0,
      sparesShare: 0
    });
  });

  it('releases what is asked of every pile, whatever its size', () => {
    for (const slates of [7, 61, 156, 333, 1000, 4093])
      for (let least = 1; least <= pile(1, slates).reservedSlates; least++) {
        const before = [pile(1, slates), pile(2, 500)];
        const shares = sharesThatRelease(NOW, before, release(1, least));
        const after = pile(1, slates, shares as typeof NOW);
        expect(before[0].reservedSlates - after.reservedSlates).toBeGreaterThanOrEqual(least);
      }
  });

  it('releases counted slate-and-a-halves as well', () => {
    const before = [{ ...pile(1, 1000), slateAndAHalves: 40 }];
    const asked = [{ pile: 1, slates: 0, slateAndAHalves: 1 }];
    const { breakageShare, sparesShare } = sharesThatRelease(NOW, before, asked);
    // 4.5 % of 40 are 2 kept back; one released leaves 1, which is 2.5 %
    expect(breakageShare + sparesShare).toBeCloseTo(0.025, 9);
  });
});
