import { describe, expect, it } from 'vitest';
import { createRandom, inchesToMm, randomNormal } from '$lib/engine';
import { EngineError } from '../errors.ts';
import { countByWeight, densityOfPallet } from './by-weight.ts';

const exactly = (value: number) => ({ value, low: value, high: value });

describe('slates by weight', () => {
  it('2.1 t of 500 × 250 at 6 mm and 2,800 kg/m³ are 1,000 slates, computed', () => {
    const size = { lengthMm: 500, widthMm: 250 };
    expect(countByWeight(2100, size, exactly(6), exactly(2800))).toEqual(exactly(1000));
  });

  // Modern Buildings, vol. 1, ch. XXI, table of slate sizes: slates and hundredweight of a square.
  // The table gives no thickness: 3/16 in stands for it, as in US practice. Within a fifth, as A6 asks.
  it.each([
    [12, 8, 400, 6],
    [18, 10, 192, 6.5],
    [20, 10, 170, 17 / 3],
    [22, 11, 138, 5.75],
    [24, 12, 115, 5.75],
    [24, 14, 98, 17 / 3]
  ])('a square of %d × %d in: about %d slates', (length, width, slates, hundredweight) => {
    const size = { lengthMm: inchesToMm(length), widthMm: inchesToMm(width) };
    const massKg = hundredweight * 50.80234544;
    const thickness = exactly(inchesToMm(3 / 16));
    const { value, low, high } = countByWeight(massKg, size, thickness);
    expect(Math.abs(value / slates - 1)).toBeLessThan(0.2);
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
  });

  it('the range holds the count as often as its two ranges hold theirs', () => {
    const random = createRandom(12);
    let held = 0;
    const rounds = 4000;
    for (let round = 0; round < rounds; round++) {
      const thickness = 6 * (1 + 0.03 * randomNormal(random));
      const density = 2800 * (1 + 0.02 * randomNormal(random));
      const massKg = (1000 * 500 * 250 * 6 * 2800) / 1e9;
      const of = (value: number, share: number) => ({
        value,
        low: value * (1 - 1.96 * share),
        high: value * (1 + 1.96 * share)
      });
      const { low, high } = countByWeight(
        massKg,
        { lengthMm: 500, widthMm: 250 },
        of(thickness, 0.03),
        of(density, 0.02)
      );
      if (low <= 1000 && 1000 <= high) held++;
    }
    expect(held / rounds).toBeGreaterThan(0.94);
    expect(held / rounds).toBeLessThan(0.97);
  });

  it('a weighed pallet mends the density and narrows the count', () => {
    const size = { lengthMm: 500, widthMm: 250 };
    const thickness = { value: 6, low: 5.9, high: 6.1 };
    const density = densityOfPallet(1006.875, 2, 490, size, thickness);
    expect(density.value).toBeCloseTo(2739.8, 1);
    const customary = countByWeight(2100, size, thickness);
    const mended = countByWeight(2100, size, thickness, density);
    expect(mended.high - mended.low).toBeLessThan(customary.high - customary.low);
  });

  it('refuses what cannot be', () => {
    const size = { lengthMm: 500, widthMm: 250 };
    expect(() => countByWeight(0, size, exactly(6))).toThrow(EngineError);
    expect(() => countByWeight(100, size, { value: 6, low: 7, high: 8 })).toThrow(EngineError);
    expect(() => densityOfPallet(5000, 1, 490, size, exactly(6))).toThrow('density comes to');
    expect(() => densityOfPallet(100, 100, 490, size, exactly(6))).toThrow(EngineError);
  });
});
