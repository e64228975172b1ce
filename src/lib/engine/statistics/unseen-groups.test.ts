import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { countByWeight } from '$lib/engine/sizes';
import { EngineError } from '../errors.ts';
import { rounds } from '../../../../tests/support/rounds.ts';
import { meanOfUnseen } from './unseen-groups.ts';

describe('the mean of pallets that nobody opened', () => {
  it('is the prediction interval of a normal mean, by hand', () => {
    // t of 2 degrees of freedom at 0.975 is 4.3027 (any table); s 0.2
    const found = meanOfUnseen([5.8, 6, 6.2], 1, 0.95);
    expect(found).toMatchObject({ ok: true, mean: 6 });
    if (found.ok) expect(found.high - 6).toBeCloseTo(4.3027 * 0.2 * Math.sqrt(4 / 3), 4);
  });

  it('refuses one pallet, and misuse', () => {
    expect(meanOfUnseen([6], 1, 0.95)).toEqual({ ok: false, reason: 'too-few-groups' });
    expect(() => meanOfUnseen([6, 7], 0, 0.95)).toThrow(EngineError);
    expect(() => meanOfUnseen([6, Number.NaN], 1, 0.95)).toThrow(EngineError);
    expect(() => meanOfUnseen([6, 7], 1, 1)).toThrow(EngineError);
  });

  // Pallets differ by 0.35 mm, slates of one by 0.5 mm; 12 slates are measured on each of 5 pallets,
  // and a sixth is weighed. The rival takes all 60 slates as one pile, as if pallets were alike.
  it('lets a count by weight hold as often as it says, where taking all slates as one does not', () => {
    const random = createRandom(77);
    const size = { lengthMm: 500, widthMm: 250 };
    const density = { value: 2800, low: 2800, high: 2800 };
    const seen = { ours: 0, rival: 0 };
    const all = rounds(2000, 10_000);
    for (let round = 0; round < all; round++) {
      const palletMm = () => 6 + 0.35 * randomNormal(random);
      const slates = Array.from({ length: 5 }, () => {
        const meanMm = palletMm();
        return Array.from({ length: 12 }, () => meanMm + 0.5 * randomNormal(random));
      });
      const mean = (list: readonly number[]) =>
        list.reduce((sum, value) => sum + value, 0) / list.length;
      const weighedMm = palletMm();
      const massKg = (500 * 500 * 250 * weighedMm * 2800) / 1e9; // 500 slates of it
      const holds = (low: number, value: number, high: number): boolean => {
        const count = countByWeight(massKg, size, { value, low, high }, density);
        return count.low <= 500 && 500 <= count.high;
      };
      const ours = meanOfUnseen(slates.map(mean), 1, 0.95);
      if (!ours.ok) throw new Error(ours.reason);
      if (holds(Math.max(1, ours.low), ours.mean, ours.high)) seen.ours++;
      const flat = slates.flat();
      const middle = mean(flat);
      const sd = Math.sqrt(
        flat.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (flat.length - 1)
      );
      const reach = (2 * sd) / Math.sqrt(flat.length);
      if (holds(middle - reach, middle, middle + reach)) seen.rival++;
    }
    expect(seen.ours / all).toBeGreaterThan(0.94);
    expect(seen.ours / all).toBeLessThan(0.985);
    expect(seen.rival / all).toBeLessThan(0.5);
  });
});
