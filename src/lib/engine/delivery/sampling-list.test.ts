import { describe, expect, it } from 'vitest';
import { createRandom } from '../random.ts';
import { drawSamplingList } from './sampling-list.ts';

const full = Object.freeze({ id: 'A', layers: 3, perLayer: 4, count: 12 });
const short = Object.freeze({ id: 'B', layers: 2, perLayer: 4, count: 6 });

describe('drawSamplingList', () => {
  it.each([
    ['lot-empty', [], 1],
    ['lot-empty', [{ ...full, count: 0 }], 1],
    ['nothing-to-sample', [full], 0],
    ['sample-exceeds-lot', [full, short], 19]
  ])('refuses: %s', (reason, pallets, size) => {
    expect(drawSamplingList(pallets, size, createRandom(1))).toEqual({ ok: false, reason });
  });

  it('refuses a pallet that holds more than its layers can', () => {
    expect(() => drawSamplingList([{ ...full, count: 13 }], 1, createRandom(1))).toThrow(
      /3 layers of 4 hold 12/
    );
  });

  it('a sample of the whole lot is every place once, the short layer on top', () => {
    const list = drawSamplingList([short], 6, createRandom(1));
    expect(list.ok && list.places).toEqual([
      { palletId: 'B', layer: 1, place: 1 },
      { palletId: 'B', layer: 1, place: 2 },
      { palletId: 'B', layer: 2, place: 1 },
      { palletId: 'B', layer: 2, place: 2 },
      { palletId: 'B', layer: 2, place: 3 },
      { palletId: 'B', layer: 2, place: 4 }
    ]);
  });

  it('shares 9 over 12 and 6 as 6 and 3', () => {
    const list = drawSamplingList([full, short], 9, createRandom(2));
    expect(list.ok && list.perPallet).toEqual([6, 3]);
  });

  it('another seed gives another list', () => {
    const of = (seed: number) => drawSamplingList([full], 5, createRandom(seed));
    expect(of(1)).toEqual(of(1));
    expect(of(1)).not.toEqual(of(2));
  });
});
