import { describe, expect, it } from 'vitest';
import { pitchOfPile, pulsesOfPile } from './feedback.ts';

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
