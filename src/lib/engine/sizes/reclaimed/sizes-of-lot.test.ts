import { describe, expect, it } from 'vitest';
import { createRandom, shuffled } from '$lib/engine';
import { countInLot } from '$lib/engine/delivery';
import { rounds } from '../../../../../tests/support/rounds.ts';
import { EngineError } from '../../errors.ts';
import type { SlateSet } from '../slate-sets.ts';
import { sizesOfLot } from './sizes-of-lot.ts';

const SETS: SlateSet[] = [
  { id: 'long', lengthMm: 500, widths: { kind: 'one', widthMm: 250 } },
  { id: 'short', lengthMm: 400, widths: { kind: 'random', fromMm: 150, toMm: 250 } }
];
const slate = (lengthMm: number, widthMm: number) => ({ lengthMm, widthMm });

describe('sizes of a reclaimed lot', () => {
  it('each slate goes to the longest size that can be cut from it', () => {
    const { sizes, unfit } = sizesOfLot(
      [slate(502, 251), slate(498, 249), slate(510, 220), slate(420, 260), slate(390, 200)],
      SETS,
      { found: 10, sampled: 20, lotSize: 200 }
    );
    // 510 × 220 is too narrow for the long size; 390 is too short for both.
    expect(sizes.map(({ found }) => found)).toEqual([2, 2]);
    expect(unfit).toBe(1);
    // two fifths of about 100 sound ones
    expect(sizes.map(({ slates }) => slates)).toEqual([40, 40]);
    // 260 is cut to 250 at most
    expect(sizes.map(({ meanWidthMm }) => meanWidthMm)).toEqual([249.5, 235]);
    for (const { low, slates, high } of sizes) {
      expect(low).toBeLessThan(slates);
      expect(high).toBeGreaterThan(slates);
    }
  });

  it('the whole lot tried and measured leaves no doubt', () => {
    const measured = [...Array.from({ length: 30 }, () => slate(500, 250)), slate(400, 200)];
    const { sizes } = sizesOfLot(measured, SETS, { found: 31, sampled: 50, lotSize: 50 });
    expect(sizes).toMatchObject([
      { slates: 30, low: 30, high: 30 },
      { slates: 1, low: 1, high: 1, meanWidthMm: 200 }
    ]);
  });

  it('refuses nothing measured, and more measured than sound', () => {
    const sound = { found: 1, sampled: 20, lotSize: 200 };
    expect(() => sizesOfLot([], SETS, sound)).toThrow(EngineError);
    expect(() => sizesOfLot([slate(500, 250), slate(500, 250)], SETS, sound)).toThrow(EngineError);
  });

  // 600 slates, 380 sound of which 150 long; 60 tried, 20 of the sound ones measured. The rival takes
  // the likeliest number of sound slates as if it were known.
  it('the range holds the true number as often as it says, and oftener than the rival', () => {
    const random = createRandom(9);
    const lot = Array.from({ length: 600 }, (_, n) => (n < 150 ? 500 : n < 380 ? 400 : 0));
    const held = { ours: 0, rival: 0 };
    const all = rounds(800, 6000);
    for (let round = 0; round < all; round++) {
      const good = shuffled(lot, random)
        .slice(0, 60)
        .filter((lengthMm) => lengthMm > 0);
      const measured = good.slice(0, 20).map((lengthMm) => slate(lengthMm, 250));
      const sound = { found: good.length, sampled: 60, lotSize: 600 };
      const [long] = sizesOfLot(measured, SETS, sound).sizes;
      if (long.low <= 150 && 150 <= long.high) held.ours++;
      const likeliest = Math.round((good.length / 60) * 600);
      const plain = countInLot({ found: long.found, sampled: 20, lotSize: likeliest }, 0.95);
      if (plain.ok && plain.count.low <= 150 && 150 <= plain.count.high) held.rival++;
    }
    expect(held.ours / all).toBeGreaterThanOrEqual(0.95);
    expect(held.ours).toBeGreaterThan(held.rival);
  });
});
