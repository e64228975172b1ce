import { describe, expect, it } from 'vitest';
import { createRandom } from '../random.ts';
import { drawFullChecks, drawSamplingList } from './sampling-list.ts';

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

describe('drawFullChecks', () => {
  const pallets = [
    { id: 'A', layers: 10, perLayer: 100, count: 1000 },
    { id: 'B', layers: 10, perLayer: 100, count: 500 }
  ];
  const listOf = (random: ReturnType<typeof createRandom>) => {
    const list = drawSamplingList(pallets, 30, random);
    if (!list.ok) throw new Error(list.reason);
    return list.places;
  };

  it('picks so many, each pallet by its share, and the same seed the same ones', () => {
    const draw = (): readonly boolean[] => {
      const random = createRandom(7);
      return drawFullChecks(listOf(random), 12, random);
    };
    const full = draw();
    expect(full.filter(Boolean)).toHaveLength(12);
    expect(full.slice(0, 20).filter(Boolean)).toHaveLength(8); // two thirds are on A
    expect(draw()).toEqual(full);
  });

  it('picks all where more are asked for than listed, and none of none', () => {
    const places = listOf(createRandom(7));
    expect(drawFullChecks(places, 99, createRandom(1)).every(Boolean)).toBe(true);
    expect(drawFullChecks(places, 0, createRandom(1)).some(Boolean)).toBe(false);
    expect(drawFullChecks([], 3, createRandom(1))).toEqual([]);
  });

  it('gives every place of a pallet the same chance', () => {
    const places = listOf(createRandom(7)).filter(({ palletId }) => palletId === 'B'); // ten
    const picked = places.map(() => 0);
    for (let seed = 0; seed < 4000; seed++)
      drawFullChecks(places, 3, createRandom(seed)).forEach((is, at) => (picked[at] += is ? 1 : 0));
    // Binomial(4000, 0.3): SD 29, so 1,200 ± 116 holds each count at four SDs
    for (const count of picked) expect(Math.abs(count - 1200)).toBeLessThan(116);
  });
});
