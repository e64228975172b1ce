import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STROKES_A_ROW, heightOfBands, tallyBands, tallyPages } from './tally-pages.ts';

describe('the boxes of a tally sheet', () => {
  it('hold 300 strokes a pile at least, and half as many again as the pallet has slates', () => {
    for (const slates of [0, 40, 480, 1000, 2000])
      for (let piles = 1; piles <= 8; piles++) {
        const own = tallyBands(slates, piles).filter(({ pile }) => pile);
        expect(own.map(({ pile }) => pile)).toEqual(own.map((_, index) => index + 1));
        for (const { rows } of own) expect(rows * STROKES_A_ROW).toBeGreaterThanOrEqual(300);
        const all = own.reduce((sum, { rows }) => sum + rows * STROKES_A_ROW, 0);
        expect(all).toBeGreaterThanOrEqual(1.5 * slates);
      }
  });

  it('of three piles take a page a pallet, of one pile three pallets', () => {
    const three = Array.from({ length: 3 }, () => ({ slates: 300 }));
    expect(tallyPages(three, 3, 222).map((page) => page.length)).toEqual([1, 1, 1]);
    const small = three.map(() => ({ slates: 200 }));
    expect(tallyPages(small, 1, 222).map((page) => page.length)).toEqual([3]);
  });

  it('stand once each, in order, on pages that hold them; only a large pallet is divided', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ slates: fc.integer({ min: 0, max: 3000 }) }), {
          minLength: 1,
          maxLength: 12
        }),
        fc.integer({ min: 1, max: 8 }),
        (pallets, piles) => {
          const pages = tallyPages(pallets, piles, 222);
          for (const [pallet, { slates }] of pallets.entries()) {
            const own = pages.flat().filter((part) => part.pallet === pallet);
            const bands = tallyBands(slates, piles);
            expect(own.flatMap((part) => part.bands)).toEqual(bands);
            expect(own.map(({ isStart }) => isStart)).toEqual(own.map((_, at) => at === 0));
            if (heightOfBands(bands) <= 222) expect(own).toHaveLength(1);
          }
          for (const page of pages) {
            const used = page.reduce((sum, { bands }) => sum + heightOfBands(bands), 0);
            if (page.length > 1 || page[0].bands.length > 1) expect(used).toBeLessThanOrEqual(222);
          }
        }
      ),
      { seed: 300, numRuns: 300 }
    );
  });
});
