import { describe, expect, it } from 'vitest';
import { layOutCard } from './go-card.ts';

describe('layOutCard', () => {
  it('gives each threshold a slot of its own width, apart, on a card that holds the check line', () => {
    expect(layOutCard([6, 5])).toEqual({
      widthMm: 120,
      slots: [
        { thresholdMm: 6, leftMm: 14 },
        { thresholdMm: 5, leftMm: 36 }
      ]
    });
  });

  it('widens for seven thresholds without a slot touching another or the edge', () => {
    const { widthMm, slots } = layOutCard([12, 10, 9, 8, 7, 6, 5]);
    for (const [index, { leftMm, thresholdMm }] of slots.entries())
      expect((slots[index + 1]?.leftMm ?? widthMm) - leftMm - thresholdMm).toBeGreaterThanOrEqual(
        14
      );
  });
});
