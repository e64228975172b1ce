import { describe, expect, it } from 'vitest';
import { createRandom, randomBelow, randomNormal, shuffled } from './random.ts';

describe('createRandom', () => {
  it('gives the same run for the same seed and another for another', () => {
    const run = (seed: number) => Array.from({ length: 5 }, createRandom(seed));
    expect(run(7)).toEqual(run(7));
    expect(run(7)).not.toEqual(run(8));
  });

  it('refuses a seed that is not whole', () => {
    expect(() => createRandom(0.5)).toThrow(/whole number/);
  });

  it('spreads evenly: 100,000 draws over 10 cells, chi-square below its 99.9 % point', () => {
    const random = createRandom(1);
    const cells = new Array<number>(10).fill(0);
    for (let draw = 0; draw < 100_000; draw++) cells[randomBelow(random, 10)]++;
    const chiSquare = cells.reduce((sum, n) => sum + (n - 10_000) ** 2 / 10_000, 0);
    expect(chiSquare).toBeLessThan(27.88); // 9 degrees of freedom, from memory
  });

  it('draws a normal of mean 0 and SD 1 within five standard errors', () => {
    const random = createRandom(2);
    const draws = Array.from({ length: 40_000 }, () => randomNormal(random));
    const mean = draws.reduce((sum, x) => sum + x, 0) / draws.length;
    const variance = draws.reduce((sum, x) => sum + (x - mean) ** 2, 0) / draws.length;
    expect(Math.abs(mean)).toBeLessThan(5 / Math.sqrt(draws.length));
    expect(Math.abs(variance - 1)).toBeLessThan(5 * Math.sqrt(2 / draws.length));
  });

  it('shuffles a copy and keeps every item', () => {
    const items = Object.freeze([1, 2, 3, 4, 5]);
    expect([...shuffled(items, createRandom(3))].sort()).toEqual([1, 2, 3, 4, 5]);
  });
});
