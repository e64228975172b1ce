import { describe, expect, it } from 'vitest';
import { kickerBars } from './kicker-bars.ts';

describe('kickerBars', () => {
  it('gives empty bars for no roofs and puts roofs without kickers into the first bar', () => {
    expect(kickerBars([], 10, 3)).toEqual([0, 0, 0]);
    expect(kickerBars([{ kickers: 0, roofs: 4 }], 0, 3)).toEqual([4, 0, 0]);
  });

  it('counts every roof once, the one with most kickers in the last bar', () => {
    const distribution = [
      { kickers: 0, roofs: 3 },
      { kickers: 4, roofs: 2 },
      { kickers: 5, roofs: 6 },
      { kickers: 10, roofs: 1 }
    ];
    expect(kickerBars(distribution, 10, 2)).toEqual([5, 7]);
  });
});
