import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import type { PalletSample } from './pallet-sample.ts';
import { sampleAdvice } from './sample-advice.ts';
import { estimateGrade } from './two-stage.ts';

const pallet = (palletId: string, slates: number, ...pairs: [number, number][]): PalletSample =>
  Object.freeze({ palletId, slates, bins: binsFromPairs(pairs) });

const three = [
  pallet('A', 300, [450, 3], [550, 5], [650, 4]),
  pallet('B', 200, [450, 2], [550, 6], [650, 4]),
  pallet('C', 250)
];

describe('sampleAdvice', () => {
  it('begins with five slates of each of five pallets, the largest', () => {
    const fresh = [3, 900, 500, 400, 300, 200, 100].map((size, i) => pallet(`p${i}`, size));
    expect(sampleAdvice(fresh, [6, 5], 30)).toEqual({
      ok: false,
      reason: 'nothing-gauged',
      draws: ['p1', 'p2', 'p3', 'p4', 'p5'].map((palletId) => ({ palletId, slates: 5 }))
    });
  });

  it('completes a first sample that was begun', () => {
    expect(sampleAdvice([pallet('A', 90, [600, 1]), pallet('B', 3)], [6], 30)).toEqual({
      ok: false,
      reason: 'one-pallet-of-many',
      draws: [
        { palletId: 'A', slates: 4 },
        { palletId: 'B', slates: 3 }
      ]
    });
  });

  it('refuses a ± of nothing and thresholds out of order', () => {
    expect(() => sampleAdvice(three, [6, 5], 0)).toThrow(/out-of-range/);
    expect(() => sampleAdvice(three, [5, 6], 10)).toThrow(/wrong-order/);
  });

  it('to know each count within 60 of 750 asks for 70 more slates, most from the new pallet', () => {
    expect(sampleAdvice(three, [6, 5], 60)).toMatchObject({
      slates: 70,
      draws: [
        { palletId: 'A', slates: 26 },
        { palletId: 'B', slates: 13 },
        { palletId: 'C', slates: 31 }
      ]
    });
  });

  it('asks for nothing where the sample is enough', () => {
    expect(sampleAdvice(three, [6, 5], 700)).toMatchObject({ ok: true, slates: 0, draws: [] });
  });

  it('asks for more the nearer the counts must be, and for every slate at last', () => {
    const slates = [300, 150, 80, 40, 20, 0.001].map((within) => {
      const advice = sampleAdvice(three, [6, 5], within);
      if (!advice.ok) throw new Error(advice.reason);
      expect(Math.max(...advice.expectedReach)).toBeLessThanOrEqual(within);
      expect(advice.slates).toBe(advice.draws.reduce((sum, draw) => sum + draw.slates, 0));
      return advice.slates;
    });
    expect([...slates].sort((one, other) => one - other)).toEqual(slates);
    expect(slates[slates.length - 1]).toBe(750 - 24);
  });

  it('opens a third pallet where the two opened differ', () => {
    const apart = [
      pallet('A', 300, [450, 10], [650, 2]),
      pallet('B', 300, [450, 2], [650, 10]),
      pallet('C', 300)
    ];
    const advice = sampleAdvice(apart, [5.5], 60);
    if (!advice.ok) throw new Error(advice.reason);
    expect(advice.draws.map((draw) => draw.palletId)).toContain('C');
  });

  it('forecasts what the estimate then says, within a quarter', () => {
    const advice = sampleAdvice(three, [6, 5], 60);
    if (!advice.ok) throw new Error(advice.reason);
    const more = new Map(advice.draws.map((draw) => [draw.palletId, draw.slates]));
    // gauge them, with the shares that were seen: a quarter thin, a half medium, a quarter thick
    const later = three.map(({ palletId, slates, bins }) => {
      const gauged = bins.counts.reduce((sum, count) => sum + count, 0) + (more.get(palletId) ?? 0);
      const thin = Math.round(gauged / 4);
      return pallet(palletId, slates, [450, thin], [550, gauged - 2 * thin], [650, thin]);
    });
    const medium = estimateGrade(later, { fromMm: 5, toMm: 6 }, 0.9);
    if (!medium.ok) throw new Error(medium.reason);
    const reach = (medium.countHigh - medium.countLow) / 2;
    expect(Math.abs(reach / advice.expectedReach[1] - 1)).toBeLessThan(0.25);
  });
});
