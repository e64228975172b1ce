import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '../random.ts';
import { binsFromPairs, momentsOfBins, totalCount } from '../thickness/index.ts';
import { type TappedPallet, fusePallets } from './fuse-pallets.ts';
import { fuseTaps, tapPosterior } from './fuse-taps.ts';
import { TWO_SLATES, UNKNOWN_HAND, knownHand } from '../../../../tests/support/test-hands.ts';

const sharp = { hand: knownHand([6], 0.001), checks: [] };
const pallet = (
  palletId: string,
  pairs: readonly (readonly [number, number])[],
  ...taps: number[][]
): TappedPallet => Object.freeze({ palletId, slates: 1000, bins: binsFromPairs(pairs), taps });

/** Slates about a mean, in hundredths of a millimetre. */
function slatesAbout(mean: number, sd: number, slates: number, seed: number): [number, number][] {
  const random = createRandom(seed);
  return Array.from({ length: slates }, () => [Math.round(mean + sd * randomNormal(random)), 1]);
}

describe('fusePallets', () => {
  it('refuses as one spread does: nothing gauged, or no hand known', () => {
    expect(fusePallets([], [])).toEqual({ ok: false, reason: 'nothing-gauged' });
    expect(fusePallets([pallet('a', [], [1, 1])], [sharp])).toEqual({
      ok: false,
      reason: 'nothing-gauged'
    });
    expect(
      fusePallets([pallet('a', [[500, 2]], [1, 1])], [{ hand: UNKNOWN_HAND, checks: [] }])
    ).toEqual({ ok: false, reason: 'no-spot-checks' });
  });

  it('refuses taps that do not match the sorters and their hands', () => {
    expect(() => fusePallets([pallet('a', [[500, 2]])], [sharp])).toThrow(/wrong-length/);
    expect(() => fusePallets([pallet('a', [[500, 2]], [1, 1, 1])], [sharp])).toThrow(
      /wrong-length/
    );
  });

  it('keeps gauged slates as they are where nothing was tapped', () => {
    const result = fusePallets([pallet('a', [[500, 2]]), pallet('b', [[700, 1]])], []);
    if (!result.ok) throw new Error(result.reason);
    expect(result.tapsCounted).toBe(0);
    expect(result.pallets.map(({ bins }) => bins)).toEqual([
      binsFromPairs([[500, 2]]),
      binsFromPairs([[700, 1]])
    ]);
  });

  it('with a sure hand adds each tap to its own thickness', () => {
    const taps = [30, 10];
    const result = fusePallets(
      [{ palletId: 'a', slates: 50, bins: TWO_SLATES, taps: [taps] }],
      [sharp]
    );
    if (!result.ok) throw new Error(result.reason);
    expect(result.pallets[0].bins.counts[0]).toBeCloseTo(11, 9);
    expect(result.pallets[0].bins.counts[1]).toBeCloseTo(31, 9);
  });

  it('leaves out the taps of a hand that is not known, and pallets that only it touched', () => {
    const result = fusePallets(
      [pallet('a', [[500, 2]], [3, 1], [0, 0]), pallet('b', [], [0, 0], [4, 4])],
      [sharp, { hand: UNKNOWN_HAND, checks: [] }]
    );
    if (!result.ok) throw new Error(result.reason);
    expect(result.tapsCounted).toBe(4);
    expect(result.tapsLeftOut).toBe(8);
    expect(result.pallets[1].bins.counts).toHaveLength(0);
    expect(result.pallets[1].spread.counts).toHaveLength(0);
  });

  it('counts a checked slate once in the stock, by its gauge', () => {
    const checks = [1, 1, 2].map((pile) => ({ pile, thicknessMm: pile === 1 ? 7 : 5 }));
    const sorters = [{ hand: knownHand([6], 0.4), checks }];
    const result = fusePallets([pallet('a', [[500, 1]], [2, 1])], sorters);
    if (!result.ok) throw new Error(result.reason);
    // all taps are checked, so the stock is 5, 5, 7 and 7 mm
    expect(result.pallets[0].spread.counts).toEqual(Float64Array.of(0.5, 0.5));
  });

  it('of one pallet is the fused spread of the stock', () => {
    const gauged = binsFromPairs(slatesAbout(580, 90, 80, 21));
    const known = knownHand([6.3, 5.1], 0.4);
    const taps = [500, 350, 150];
    const whole = fuseTaps(gauged, [{ taps, hand: known }]);
    const result = fusePallets(
      [{ palletId: 'a', slates: 2000, bins: gauged, taps: [taps] }],
      [{ hand: known, checks: [] }]
    );
    if (!whole.ok || !result.ok) throw new Error('no spread');
    result.pallets[0].bins.counts.forEach((count, bin) =>
      expect(count).toBeCloseTo(whole.bins.counts[bin], 5)
    );
  });

  it('of pallets that do not differ tells every tap by the stock', () => {
    const pairs = slatesAbout(580, 60, 40, 5);
    const sorters = [{ hand: knownHand([6.3, 5.4], 0.4), checks: [] }];
    const pallets = [pallet('a', pairs, [10, 20, 10]), pallet('b', pairs, [40, 5, 5])];
    const result = fusePallets(pallets, sorters);
    const merged = binsFromPairs([...pairs, ...pairs]);
    const whole = fuseTaps(merged, [{ hand: sorters[0].hand, taps: [50, 25, 15] }]);
    if (!whole.ok || !result.ok) throw new Error('no spread');
    expect(result.stockReadings).toBe(Infinity);
    const thick = tapPosterior(whole.bins, sorters[0].hand, 1);
    const told = tapPosterior(result.pallets[1].spread, sorters[0].hand, 1);
    if (!thick.ok || !told.ok) throw new Error('no tap');
    told.bins.counts.forEach((share, bin) => expect(share).toBeCloseTo(thick.bins.counts[bin], 12));
  });

  it('tells a thick tap on a thin pallet far thinner than one on a thick pallet', () => {
    const sorters = [{ hand: knownHand([6.5, 5.7], 0.35), checks: [] }];
    const pallets = [
      pallet('thin', slatesAbout(570, 50, 20, 1), [8, 92, 100]),
      pallet('thick', slatesAbout(710, 80, 100, 2), [0, 0, 0])
    ];
    const result = fusePallets(pallets, sorters);
    if (!result.ok) throw new Error(result.reason);
    const meanOfThick = (place: number): number => {
      const told = tapPosterior(result.pallets[place].spread, sorters[0].hand, 1);
      const moments = told.ok ? momentsOfBins(told.bins) : told;
      if (!moments.ok) throw new Error(moments.reason);
      return moments.meanMm;
    };
    // by the rule of the normal: felt above 6.5, so about 6.3 mm of 5.7 ± 0.5 and 7.3 of 7.1 ± 0.8
    expect(Math.abs(meanOfThick(0) - 6.3)).toBeLessThan(0.15);
    expect(Math.abs(meanOfThick(1) - 7.35)).toBeLessThan(0.15);
    expect(totalCount(result.pallets[0].bins)).toBeCloseTo(220, 9);
  });

  it('finds the share of a pallet that was only tapped, among pallets unlike it', () => {
    // 400 slates of 5.8 ± 0.5 mm tapped; Φ((5.8 − 6.5)/0.5) = 8.1 % of them are 6.5 mm or thicker
    let [ownPallet, wholeStock] = [0, 0];
    for (let seed = 1; seed <= 20; seed++) {
      const random = createRandom(seed);
      const taps = [0, 0, 0];
      for (let slate = 0; slate < 400; slate++) {
        const felt = 580 + 50 * randomNormal(random) + 35 * randomNormal(random);
        taps[felt >= 650 ? 0 : felt >= 570 ? 1 : 2]++;
      }
      const known = knownHand([6.5, 5.7], 0.35);
      const gauged = [slatesAbout(560, 50, 100, 100 + seed), slatesAbout(710, 85, 100, 200 + seed)];
      const result = fusePallets(
        [pallet('a', [], taps), ...gauged.map((pairs, k) => pallet(`g${k}`, pairs, [0, 0, 0]))],
        [{ hand: known, checks: [] }]
      );
      const whole = fuseTaps(binsFromPairs(gauged.flat()), [{ hand: known, taps }]);
      if (!result.ok || !whole.ok) throw new Error('no spread');
      const thickShare = (parts: { hundredths: Int32Array; counts: Float64Array }): number =>
        parts.counts.reduce((sum, n, bin) => sum + (parts.hundredths[bin] >= 650 ? n : 0), 0) /
        totalCount(parts);
      ownPallet += (thickShare(result.pallets[0].bins) - 0.0808) / 20;
      let told = 0;
      for (const [pile, count] of taps.entries()) {
        const one = tapPosterior(whole.bins, known, pile + 1);
        if (one.ok) told += (count * thickShare(one.bins)) / 400;
      }
      wholeStock += (told - 0.0808) / 20;
    }
    expect(Math.abs(ownPallet)).toBeLessThan(0.03);
    expect(wholeStock).toBeGreaterThan(0.05);
  });
});
