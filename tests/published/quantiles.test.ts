import { describe, expect, it } from 'vitest';
import { fewestForTolerance, quantileRanks, toleranceConfidence } from '$lib/engine/statistics';
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

  it('at 90 % lies between the 9th and the 16th, level 0.962847447954 (computed)', () => {
    const ranks = quantileRanks(16, 0.75, 0.9);
    if (!ranks.ok) throw new Error(ranks.reason);
    expect([TUBE_LIVES[ranks.lowRank - 1], TUBE_LIVES[ranks.highRank - 1]]).toEqual([633, 785]);
    expect(ranks.level).toBeCloseTo(0.962847447954, 12);
  });
});

it('median of ten: the 2nd to the 9th, level 0.978515625 exactly (computed)', () => {
  const ranks = quantileRanks(10, 0.5, 0.95);
  expect(ranks).toEqual({
    ok: true,
    lowRank: 2,
    highRank: 9,
    level: expect.closeTo(0.978515625, 14)
  });
});

describe('readings for 95 % of the stock with 95 % confidence (computed)', () => {
  it('one-sided 59', () => {
    expect(fewestForTolerance(0.95, 0.95, 'one-sided')).toBe(59);
    expect(toleranceConfidence(59, 0.95, 'one-sided')).toBeCloseTo(0.95150547, 8);
    expect(toleranceConfidence(58, 0.95, 'one-sided')).toBeCloseTo(0.94895313, 8);
  });

  it('two-sided 93', () => {
    expect(fewestForTolerance(0.95, 0.95, 'two-sided')).toBe(93);
    expect(toleranceConfidence(93, 0.95, 'two-sided')).toBeCloseTo(0.9500242, 8);
    expect(toleranceConfidence(92, 0.95, 'two-sided')).toBeCloseTo(0.9478636, 8);
  });
});
