import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '../random.ts';
import { binsFromPairs, momentsOfBins, totalCount } from '../thickness/index.ts';
import { fuseTaps, tapPosterior } from './fuse-taps.ts';
import { TWO_SLATES, UNKNOWN_HAND, knownHand } from '../../../../tests/support/test-hands.ts';

describe('tapPosterior', () => {
  it('says when there is no stock', () => {
    expect(tapPosterior(binsFromPairs([]), knownHand([6], 1), 1)).toEqual({
      ok: false,
      reason: 'empty'
    });
  });

  it('refuses a pile or a hand that cannot be', () => {
    expect(() => tapPosterior(TWO_SLATES, knownHand([6], 1), 3)).toThrow(/out-of-range/);
    expect(() => tapPosterior(TWO_SLATES, knownHand([6], 0), 1)).toThrow(/out-of-range/);
    expect(() => tapPosterior(TWO_SLATES, knownHand([5, 6], 1), 1)).toThrow(/wrong-order/);
  });

  it('is Φ(1) for 7 mm and Φ(−1) for 5 mm, cut at 6 with a spread of 1', () => {
    const result = tapPosterior(TWO_SLATES, knownHand([6], 1), 1);
    if (!result.ok) throw new Error(result.reason);
    expect(result.bins.counts[0]).toBeCloseTo(0.15865525393145707, 14);
    expect(result.bins.counts[1]).toBeCloseTo(0.8413447460685429, 14);
  });

  it('keeps to the nearest thickness where the stock can hardly reach the pile', () => {
    const result = tapPosterior(TWO_SLATES, knownHand([30], 0.01), 1);
    if (!result.ok) throw new Error(result.reason);
    expect([...result.bins.hundredths]).toEqual([700]);
    expect([...result.bins.counts]).toEqual([1]);
  });
});

describe('fuseTaps', () => {
  it('refuses without a gauged slate', () => {
    expect(fuseTaps(binsFromPairs([]), [{ taps: [1, 1], hand: knownHand([6], 1) }])).toEqual({
      ok: false,
      reason: 'nothing-gauged'
    });
  });

  it('refuses taps of hands that are not known: they count for piles only', () => {
    expect(fuseTaps(TWO_SLATES, [{ taps: [9, 1], hand: UNKNOWN_HAND }])).toEqual({
      ok: false,
      reason: 'no-spot-checks'
    });
  });

  it('is the gauged slates where nothing was tapped', () => {
    expect(fuseTaps(TWO_SLATES, [])).toEqual({ ok: true, bins: TWO_SLATES, tapsLeftOut: 0 });
    expect(fuseTaps(TWO_SLATES, [{ taps: [0, 0], hand: UNKNOWN_HAND }])).toEqual({
      ok: true,
      bins: TWO_SLATES,
      tapsLeftOut: 0
    });
  });

  it('leaves out the taps of one sorter whose hand is not known', () => {
    const result = fuseTaps(TWO_SLATES, [
      { taps: Object.freeze([3, 3]), hand: knownHand([6], 1) },
      { taps: [4, 0], hand: UNKNOWN_HAND }
    ]);
    expect(result).toMatchObject({ ok: true, tapsLeftOut: 4 });
    if (result.ok) expect(totalCount(result.bins)).toBeCloseTo(8, 12);
  });

  it('refuses taps that do not match the hand', () => {
    expect(() => fuseTaps(TWO_SLATES, [{ taps: [1, 1, 1], hand: knownHand([6], 1) }])).toThrow(
      /wrong-length/
    );
    expect(() => fuseTaps(TWO_SLATES, [{ taps: [-1, 1], hand: knownHand([6], 1) }])).toThrow(
      /out-of-range/
    );
  });

  it('with a sure hand adds each tap to its own thickness', () => {
    const result = fuseTaps(TWO_SLATES, [{ taps: [30, 10], hand: knownHand([6], 0.001) }]);
    if (!result.ok) throw new Error(result.reason);
    expect(result.bins.counts[0]).toBeCloseTo(11, 9);
    expect(result.bins.counts[1]).toBeCloseTo(31, 9);
  });

  it('is consistent with itself: spreading the taps by the result gives the result', () => {
    const random = createRandom(21);
    const gauged = binsFromPairs(
      Array.from({ length: 80 }, () => [Math.round(580 + 90 * randomNormal(random)), 1])
    );
    const taps = [500, 350, 150];
    const known = knownHand([6.3, 5.1], 0.4);
    const result = fuseTaps(gauged, [{ taps, hand: known }]);
    if (!result.ok) throw new Error(result.reason);
    const again = new Map<number, number>();
    const add = (hundredths: number, count: number) =>
      again.set(hundredths, (again.get(hundredths) ?? 0) + count);
    gauged.hundredths.forEach((hundredths, bin) => add(hundredths, gauged.counts[bin]));
    for (const [pile, count] of taps.entries()) {
      const posterior = tapPosterior(result.bins, known, pile + 1);
      if (!posterior.ok) throw new Error(posterior.reason);
      posterior.bins.hundredths.forEach((hundredths, bin) =>
        add(hundredths, count * posterior.bins.counts[bin])
      );
    }
    result.bins.hundredths.forEach((hundredths, bin) =>
      expect(again.get(hundredths)).toBeCloseTo(result.bins.counts[bin], 5)
    );
  });

  it('brings the mean nearer the truth than few gauged slates alone', () => {
    // 40 gauged and 2,000 tapped slates of a stock of mean 5.8 and SD 0.9 mm, a hundred times over
    let [alone, fused] = [0, 0];
    for (let seed = 1; seed <= 100; seed++) {
      const random = createRandom(seed);
      const slate = () => 580 + 90 * randomNormal(random);
      const gauged = binsFromPairs(Array.from({ length: 40 }, () => [Math.round(slate()), 1]));
      const taps = [0, 0, 0];
      for (let tap = 0; tap < 2000; tap++) {
        const felt = slate() + 40 * randomNormal(random);
        taps[felt >= 630 ? 0 : felt >= 510 ? 1 : 2]++;
      }
      const result = fuseTaps(gauged, [{ taps, hand: knownHand([6.3, 5.1], 0.4) }]);
      const before = momentsOfBins(gauged);
      if (!result.ok || !before.ok) throw new Error('no spread');
      const after = momentsOfBins(result.bins);
      if (!after.ok) throw new Error(after.reason);
      alone += (before.meanMm - 5.8) ** 2;
      fused += (after.meanMm - 5.8) ** 2;
    }
    expect(Math.sqrt(fused / alone)).toBeLessThan(0.5);
  });
});
