import { describe, expect, it } from 'vitest';
import { binsFromPairs, quantilesMm } from '$lib/engine/thickness';

/** Lives of sixteen tubes (Conover, Practical Nonparametric Statistics), tenths of an hour. */
const TUBE_LIVES = Object.freeze([
  469, 472, 491, 565, 568, 592, 599, 632, 633, 634, 637, 641, 671, 677, 733, 785
]);

describe('tube lives, upper quartile', () => {
  it('is 64.85 by type 7 (66.35 is type 6, which this is not)', () => {
    const bins = binsFromPairs(TUBE_LIVES.map((life) => [life * 10, 1]));
    const result = quantilesMm(bins, [0.75]);
    expect(result).toEqual({ ok: true, quantilesMm: [expect.closeTo(64.85, 12)] });
  });
});
