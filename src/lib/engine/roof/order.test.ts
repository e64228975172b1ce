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
  it('1000 slates at 2.5 % breakage and 2 % spares are 1048: as many are left of those that come', () => {
    const order = roofOrder({ ...totals, slates: 1000 }, ALLOWANCES);
    expect(order.slates[0]).toEqual({
      kind: 'slate',
      takes: 1000,
      breakage: 27,
      spares: 21,
      needed: 1048,
      order: 1048
    });
    expect(1048 * (1 - 0.045)).toBeGreaterThanOrEqual(1000);
    expect(1047 * (1 - 0.045)).toBeLessThan(1000);
  });

  it('of 1048 slates with 600 there 448 are ordered, of any number there none below 0', () => {
    const of = (slates: number, lost = 0) => {
      const there = { slates, lost, forUndereave: 0, isUndereaveCut: true };
      return roofOrder({ ...totals, slates: 1000 }, ALLOWANCES, [], {}, there).slates[0];
    };
    expect(of(600)).toMatchObject({ needed: 1048, there: 600, order: 448 });
    expect(of(0)).toMatchObject({ there: 0, order: 1048 });
    expect(of(5000).order).toBe(0);
    expect(of(600, 20), 'broken ones come off the breakage').toMatchObject({ order: 448 });
    expect(of(600, 200).order).toBeGreaterThan(600);
  });

  it('no slate there serves the courses and the undereave row both', () => {
    const totals1000 = { ...totals, slates: 1000, undereaveSlates: 100 };
    const order = (slates: number, forUndereave: number, isUndereaveCut = true) => {
      const there = { slates, lost: 0, forUndereave, isUndereaveCut };
      const [slate, undereave] = roofOrder(totals1000, ALLOWANCES, [], {}, there).slates;
      return { there: [slate.there, undereave.there], order: [slate.order, undereave.order] };
    };
    // 100 with 3 for breakage and 2 spares: 105
    expect(order(1000, 0)).toEqual({ there: [1000, 0], order: [48, 105] });
    expect(order(1100, 0)).toEqual({ there: [1048, 52], order: [0, 53] });
    expect(order(1100, 30)).toEqual({ there: [1048, 82], order: [0, 23] });
    expect(order(1400, 0)).toEqual({ there: [1295, 105], order: [0, 0] });
    expect(order(1400, 0, false)).toEqual({ there: [1400, undefined], order: [0, 105] });
  });

  it('slate-and-a-halves are ordered whole until somebody counts them', () => {
    const there = { slates: 9000, lost: 0, forUndereave: 0, isUndereaveCut: true };
    const wide = (own = {}) =>
      roofOrder({ ...totals, slateAndAHalves: 40 }, ALLOWANCES, [], {}, { ...there, ...own })
        .slates[2];
    expect(wide().there).toBeUndefined();
    expect(wide().order).toBe(wide().needed);
    expect(wide({ slateAndAHalves: 15 }).order).toBe(wide().needed - 15);
    expect(wide({ slateAndAHalves: 500 }).order).toBe(0);
  });

  it('only what is ordered costs', () => {
    const there = { slates: 500, lost: 0, forUndereave: 0, isUndereaveCut: true };
    const rates = { pricePerThousand: 1000 };
    const all = roofOrder(totals, ALLOWANCES, [], rates).price ?? 0;
    expect(roofOrder(totals, ALLOWANCES, [], rates, there).price).toBeCloseTo(all - 500, 9);
  });

  it('nails are two to a piece and stand under the lengths that the piles ask for', () => {
    const order = roofOrder(totals, { ...ALLOWANCES, breakageShare: 0 }, [
      { lengthMm: 35, nails: 400 },
      { lengthMm: 30, nails: 300 },
      { lengthMm: 35, nails: 100 },
      // A pile that no course takes asks for none, and has no line.
      { lengthMm: 40, nails: 0 }
    ]);
    expect(order.nails.reduce((sum, { takes }) => sum + takes, 0)).toBe(2 * order.pieces);
    expect(order.nails.map(({ lengthMm }) => lengthMm)).toEqual([30, 35]);
    expect(order.nails[1].takes).toBe(500);
    expect(roofOrder(totals, ALLOWANCES).nails).toEqual([
      { takes: 2 * order.pieces, order: Math.ceil(2 * order.pieces * 1.025) }
    ]);
    expect(totals.nails).toBe(2 * order.pieces);
    // Before a plan: the length that all piles ask for, and none where they differ.
    const unplanned = (...lengthsMm: number[]) =>
      roofOrder(
        totals,
        ALLOWANCES,
        lengthsMm.map((lengthMm) => ({ lengthMm, nails: 0 }))
      ).nails;
    expect(unplanned(35, 35)).toMatchObject([{ lengthMm: 35, takes: 2 * order.pieces }]);
    expect(unplanned(35, 30)[0].lengthMm).toBeUndefined();
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
    expect(() => roofOrder(totals, { ...ALLOWANCES, sparesShare: 0.98 })).toThrow(
      /give less than 1/
    );
  });
});
