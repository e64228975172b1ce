import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { tapPosterior } from './tap-posterior.ts';
import { TWO_SLATES, knownHand } from '../../../../tests/support/test-hands.ts';

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
