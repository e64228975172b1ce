import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal, shuffled } from '$lib/engine';
import { naturalBreaks, pileOf } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';
import { EngineError } from '../errors.ts';
import { compareBoundaries } from './shared-boundaries.ts';

const random = createRandom(4);
const slates = (meanMm: number, sdMm: number, n: number) =>
  Array.from({ length: n }, () => Math.round(100 * (meanMm + sdMm * randomNormal(random))));
const binsOf = (hundredths: readonly number[]) =>
  binsFromPairs(hundredths.map((value): [number, number] => [value, 1]));

/** Kickers per 100 joints by laying each pile of each size many times in a random order. */
function laid(
  sizes: readonly number[][],
  thresholdsOf: (size: number) => readonly number[]
): number {
  let [kicks, joints] = [0, 0];
  for (const [size, list] of sizes.entries()) {
    const thresholds = thresholdsOf(size);
    const piles = [0, 1, 2].map((pile) =>
      list.filter((mm) => pileOf(mm / 100, thresholds) === pile + 1)
    );
    for (const pile of piles)
      for (let round = 0; round < 60; round++) {
        const row = shuffled(pile, random);
        for (let at = 1; at < row.length; at++) {
          joints++;
          if (Math.abs(row[at] - row[at - 1]) > 100) kicks++;
        }
      }
  }
  return (100 * kicks) / joints;
}

describe('boundaries of each size or the same for all', () => {
  const thick = slates(8, 0.6, 600);
  const thin = slates(5, 0.6, 900);

  it('sizes that lie apart are better cut each for itself; the figures agree with laying them', () => {
    const compared = compareBoundaries([binsOf(thick), binsOf(thin)], 3, 1);
    if (!compared.ok) throw new Error(compared.reason);
    expect(compared.better).toBe('own');
    const own = [thick, thin].map((list) => {
      const breaks = naturalBreaks(binsOf(list), 3);
      if (!breaks.ok) throw new Error('too few');
      return breaks.thresholdsMm;
    });
    expect(laid([thick, thin], (size) => own[size])).toBeCloseTo(compared.ownPer100, 0);
    expect(laid([thick, thin], () => compared.sharedThresholdsMm)).toBeCloseTo(
      compared.sharedPer100,
      0
    );
  });

  it('sizes of one thickness share their boundaries', () => {
    const one = binsOf(slates(6, 0.6, 3000));
    expect(compareBoundaries([one, one], 3, 1)).toMatchObject({ ok: true, better: 'shared' });
  });

  it('a size with too few readings is told, no size is refused', () => {
    expect(compareBoundaries([binsOf([600]), binsOf(thin)], 3, 1)).toEqual({
      ok: false,
      reason: 'too-few'
    });
    expect(() => compareBoundaries([], 3, 1)).toThrow(EngineError);
  });
});
