import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '../index.ts';
import { type SlateOfLayer, layersAlike } from './layers-alike.ts';

const slate = (palletId: string, layer: number, thicknessMm: number): SlateOfLayer => ({
  palletId,
  layer,
  thicknessMm
});

/** Pallets of layers of slates; a share of the variance lies between layers, pallets differ by 1 mm. */
function drawn(seed: number, share: number, each = 4): SlateOfLayer[] {
  const random = createRandom(seed);
  return ['A', 'B', 'C', 'D', 'E'].flatMap((palletId, pallet) =>
    Array.from({ length: 5 }, (_, layer) => {
      const own = 6 + pallet + Math.sqrt(share) * randomNormal(random);
      return Array.from({ length: each }, () =>
        slate(palletId, layer, own + Math.sqrt(1 - share) * randomNormal(random))
      );
    }).flat()
  );
}

describe('layersAlike', () => {
  it('agrees with the sums by hand', () => {
    const found = layersAlike([
      ...[1, 2].map((mm) => slate('A', 1, mm)),
      ...[5, 6].map((mm) => slate('A', 2, mm))
    ]);
    expect(found?.share).toBeCloseTo(15.5 / 16.5, 12);
    expect(found?.worth).toBeCloseTo(4 / (1 + 15.5 / 16.5), 12);
    // F(1, 2) = 32: p = 1 − √(F / (F + 2)), the closed form for 1 and 2 degrees of freedom
    expect(found?.p).toBeCloseTo(1 - Math.sqrt(32 / 34), 10);
  });

  it('says nothing of one slate a layer, of one layer a pallet, or of readings all equal', () => {
    expect(layersAlike([])).toBeUndefined();
    expect(layersAlike([slate('A', 1, 5), slate('A', 2, 6)])).toBeUndefined();
    expect(layersAlike([slate('A', 1, 5), slate('A', 1, 6)])).toBeUndefined();
    expect(layersAlike([1, 1, 2, 2].map((layer) => slate('A', layer, 5)))).toBeUndefined();
  });

  it('finds the share that lies between layers, pallets apart, on average', () => {
    for (const share of [0, 0.2, 0.5]) {
      const found = Array.from({ length: 400 }, (_, seed) => layersAlike(drawn(seed, share))!);
      const mean = found.reduce((sum, own) => sum + own.share, 0) / found.length;
      // no share is told below 0, which lifts the mean of 0 by about 0.05
      expect(Math.abs(mean - share)).toBeLessThan(share === 0 ? 0.07 : 0.03);
      const alarms = found.filter(({ p }) => p < 0.05).length / found.length;
      // binomial(400, 0.05): SD 0.011
      if (share === 0) expect(Math.abs(alarms - 0.05)).toBeLessThan(0.044);
      if (share === 0.5) expect(alarms).toBeGreaterThan(0.95);
    }
  });
});
