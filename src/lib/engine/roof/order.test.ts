import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec } from './index.ts';
import { roofOrder } from './order.ts';

const roof = layOutRoof(
  [makeSlope({ id: 'a', rafterLengthMm: 5500, eaveWidthMm: 8000, pitchDegrees: 35 })],
  slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 })
);
if (!roof.ok) throw new Error('refused');
const { totals } = roof;
const ALLOWANCES = {
  breakageShare: 0.025,
  sparesShare: 0.02,
  battenWasteShare: 0.05,
  battenLengthMm: 4800
};

describe('what to order', () => {
  it('1000 slates at 2.5 % breakage and 2 % spares are 1045', () => {
    const order = roofOrder({ ...totals, slates: 1000 }, ALLOWANCES);
    expect(order.slates[0]).toEqual({
      kind: 'slate',
      takes: 1000,
      breakage: 25,
      spares: 20,
      order: 1045
    });
  });

  it('nails are two to a piece and stand under the lengths that the piles ask for', () => {
    const order = roofOrder(totals, { ...ALLOWANCES, breakageShare: 0 }, [
      { lengthMm: 35, nails: 400 },
      { lengthMm: 30, nails: 300 },
      { lengthMm: 35, nails: 100 }
    ]);
    expect(order.nails.reduce((sum, { takes }) => sum + takes, 0)).toBe(2 * order.pieces);
    expect(order.nails.map(({ lengthMm }) => lengthMm)).toEqual([30, 35]);
    expect(order.nails[1].takes).toBe(500);
    expect(roofOrder(totals, ALLOWANCES).nails).toEqual([
      { takes: 2 * order.pieces, order: Math.ceil(2 * order.pieces * 1.025) }
    ]);
    expect(totals.nails).toBe(2 * order.pieces);
  });

  it('battens with their waste are whole metres, never less than the roof takes', () => {
    const { battens } = roofOrder(totals, ALLOWANCES);
    expect(battens.orderM).toBe(Math.ceil(totals.battenM * 1.05));
    expect(roofOrder(totals, { ...ALLOWANCES, battenWasteShare: 0 }).battens.orderM).toBe(
      Math.ceil(totals.battenM)
    );
  });

  it('battens as bought hold the metres with their waste, and one fewer would not', () => {
    for (const battenLengthMm of [2400, 4800, 6096]) {
      const { pieces } = roofOrder(totals, { ...ALLOWANCES, battenLengthMm }).battens;
      expect(pieces * battenLengthMm).toBeGreaterThanOrEqual(totals.battenM * 1050 - 1e-6);
      expect((pieces - 1) * battenLengthMm).toBeLessThan(totals.battenM * 1050);
    }
    // 480 m and 5 %: 504 m, in lengths of 4.8 m 105 battens
    expect(roofOrder({ ...totals, battenM: 480 }, ALLOWANCES).battens.pieces).toBe(105);
    expect(() => roofOrder(totals, { ...ALLOWANCES, battenLengthMm: 0 })).toThrow(/more than 0/);
  });

  it('looks at its own allowances alone, so that all settings of a job may be handed in', () => {
    const settings = { ...ALLOWANCES, lengthUnit: 'mm', sortingRatePerHour: null };
    expect(roofOrder(totals, settings)).toEqual(roofOrder(totals, ALLOWANCES));
  });

  it('hours and price only where a pace and a price are given', () => {
    expect(roofOrder(totals, ALLOWANCES).hours).toBeUndefined();
    const order = roofOrder(totals, ALLOWANCES, [], { piecesPerHour: 40, pricePerThousand: 2000 });
    expect(order.hours).toBe(order.pieces / 40);
    const ordered = order.slates[0].order + order.slates[1].order;
    expect(order.price).toBeCloseTo(ordered * 2, 9);
    expect(() => roofOrder(totals, ALLOWANCES, [], { piecesPerHour: 0 })).toThrow(/give more/);
    expect(() => roofOrder(totals, { ...ALLOWANCES, sparesShare: -1 })).toThrow(/0 or more/);
  });
});
