import { ckmeans } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { naturalBreaks, splitIntoPiles } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';
import { SEED, slatesOf, sumOfSquares } from './grading-cases.ts';

const READINGS = 6000;

/** A large sample, mm: two beds, one bed, a flat spread, and one with a long thick tail. */
const SHAPES = {
  'two beds': (random: () => number) => (random() < 0.6 ? 5.4 : 7.1) + 0.8 * randomNormal(random),
  'one bed': (random: () => number) => 6.2 + 0.95 * randomNormal(random),
  flat: (random: () => number) => 3 + 7 * random(),
  'long tail': (random: () => number) => 4 - 1.1 * Math.log(1 - random())
};

describe('natural breaks of thousands of readings', () => {
  it.each(Object.keys(SHAPES) as (keyof typeof SHAPES)[])(
    '%s: the optimum of ckmeans on the raw list, for 2 to 8 piles',
    (shape) => {
      const random = createRandom(SEED);
      const readings = Array.from({ length: READINGS }, () =>
        Math.round(100 * Math.min(15, Math.max(2, SHAPES[shape](random))))
      );
      const bins = binsFromPairs(readings.map((hundredths) => [hundredths, 1] as const));
      expect(bins.hundredths.length).toBeGreaterThan(400);
      const list = readings.map((hundredths) => hundredths / 100);
      for (let piles = 2; piles <= 8; piles++) {
        const theirs = ckmeans(list, piles).reduce((sum, one) => sum + sumOfSquares(one), 0);
        const result = naturalBreaks(bins, piles);
        if (!result.ok) throw new Error(result.reason);
        const reached = splitIntoPiles(bins, result.thresholdsMm)
          .map((pile) => sumOfSquares(slatesOf(pile)))
          .reduce((sum, within) => sum + within, 0);
        expect(Math.abs(result.withinSumOfSquares - theirs)).toBeLessThan(1e-9 * theirs);
        expect(Math.abs(reached - theirs)).toBeLessThan(1e-9 * theirs);
      }
    }
  );
});
