import { describe, expect, it } from 'vitest';
import { type JudgingGround, isWildReading, judgeSlate, orderBand } from './slate-judgement.ts';

const GROUND: JudgingGround = Object.freeze({
  thresholdsMm: [6, 5],
  gaugeSdMm: 0.05,
  kickAllowanceMm: 1.5,
  orderBand: undefined,
  usualRange: undefined
});

describe('judgeSlate', () => {
  it('tells no pile before there are grades', () => {
    expect(judgeSlate(6.4, { ...GROUND, thresholdsMm: undefined })).toEqual({
      pile: null,
      borderlineMm: null,
      rogue: null
    });
  });

  it.each([
    [6, 1, 6],
    [5.99, 2, 6],
    [6.1, 1, 6],
    [6.11, 1, null],
    [5.5, 2, null],
    [4.9, 3, 5],
    [4.89, 3, null]
  ])('%f mm goes on pile %i, borderline at %s', (thicknessMm, pile, borderlineMm) => {
    expect(judgeSlate(thicknessMm, GROUND)).toEqual({ pile, borderlineMm, rogue: null });
  });

  it('takes 0.05 mm for the SD of a gauge that was never studied', () => {
    expect(judgeSlate(6.1, { ...GROUND, gaugeSdMm: null }).borderlineMm).toBe(6);
    expect(judgeSlate(6.11, { ...GROUND, gaugeSdMm: null }).borderlineMm).toBeNull();
  });

  it('calls a slate a rogue further than the kick allowance beyond what nearly all measure', () => {
    const ground = { ...GROUND, usualRange: { lowMm: 4, highMm: 8 } };
    expect(judgeSlate(9.5, ground).rogue).toBeNull();
    expect(judgeSlate(9.51, ground).rogue).toEqual({
      kind: 'beyond-spread',
      overMm: expect.closeTo(1.51, 9),
      isTooThick: true
    });
    expect(judgeSlate(2.49, ground).rogue).toMatchObject({
      kind: 'beyond-spread',
      isTooThick: false
    });
  });

  it('calls a slate outside the order a rogue first', () => {
    const band = orderBand({ nominalThicknessMm: 6, tolerancePercent: 35 });
    expect(band?.lowMm).toBeCloseTo(3.9, 9);
    expect(band?.highMm).toBeCloseTo(8.1, 9);
    const ground = { ...GROUND, orderBand: band };
    expect(judgeSlate(8.1, ground).rogue).toBeNull();
    expect(judgeSlate(8.11, ground).rogue?.kind).toBe('outside-order');
  });

  it('knows no band where the order names no thickness or no tolerance', () => {
    expect(orderBand(undefined)).toBeUndefined();
    expect(orderBand({ nominalThicknessMm: 6 })).toBeUndefined();
    expect(orderBand({ tolerancePercent: 35 })).toBeUndefined();
  });
});

describe('isWildReading', () => {
  it('asks only outside what a slate of the job may well measure, and of nothing before that is known', () => {
    const likely = { lowMm: 3, highMm: 12 };
    expect([2.99, 3, 7, 12, 12.01].map((one) => isWildReading(one, likely))).toEqual([
      true,
      false,
      false,
      false,
      true
    ]);
    expect(isWildReading(62, undefined)).toBe(false);
  });
});
