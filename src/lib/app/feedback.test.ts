import { describe, expect, it } from 'vitest';
import { SIGNS, pitchOfPile, pulsesOfPile, signOfPile } from './feedback.ts';

describe('signs of a pile', () => {
  it.each([2, 3, 8])('of %i piles each has its own pitch, lower for thicker', (piles) => {
    const pitches = Array.from({ length: piles }, (_, index) => pitchOfPile(index + 1, piles));
    for (let pile = 1; pile < piles; pile++)
      expect(pitches[pile]).toBeGreaterThan(pitches[pile - 1]);
    expect(pitches[piles - 1] / pitches[0]).toBeCloseTo(4, 9);
  });

  it('have a pitch for a single pile', () => {
    expect(pitchOfPile(1, 1)).toBe(262);
  });

  it('have as many pulses as the number, and a long one for four from five on', () => {
    expect(pulsesOfPile(1)).toEqual([70]);
    expect(pulsesOfPile(3)).toEqual([70, 80, 70, 80, 70]);
    expect(pulsesOfPile(6)).toEqual([220, 80, 70, 80, 70]);
    const all = [1, 2, 3, 4, 5, 6, 7, 8].map((pile) => pulsesOfPile(pile).join());
    expect(new Set(all).size).toBe(8);
  });
});

describe('signs of what is no pile', () => {
  const others = Object.values(SIGNS);

  it.each([2, 3, 8])('differ from each other and from those of %i piles', (piles) => {
    const all = [
      ...others,
      ...Array.from({ length: piles }, (_, index) => signOfPile(index + 1, piles))
    ];
    for (const part of ['tonesHz', 'pulses'] as const)
      expect(new Set(all.map((sign) => sign[part].join())).size, part).toBe(all.length);
  });
});
