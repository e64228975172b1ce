import { describe, expect, it } from 'vitest';
import { palletMeansChart } from './control-chart.ts';
import { compareDeliveries } from './deliveries-compared.ts';

describe('palletMeansChart', () => {
  const one = Object.freeze({ id: 'A', sampled: 10, meanMm: 5, sdMm: 0.4 });

  it.each([
    [[]],
    [[one]],
    [[one, { id: 'B', sampled: 0, meanMm: NaN, sdMm: NaN }]],
    [
      [
        { id: 'A', sampled: 1, meanMm: 5, sdMm: NaN },
        { id: 'B', sampled: 1, meanMm: 6, sdMm: NaN }
      ]
    ]
  ])('too few pallets or no scatter known: %#', (pallets) => {
    expect(palletMeansChart(pallets)).toEqual({ ok: false, reason: 'too-few' });
  });

  it('pools the scatter and gives each pallet its own limits', () => {
    // By hand: centre (4·5 + 9·6)/13, variance (3·0.16 + 8·0.25)/11.
    const result = palletMeansChart([
      { id: 'A', sampled: 4, meanMm: 5, sdMm: 0.4 },
      { id: 'B', sampled: 9, meanMm: 6, sdMm: 0.5 }
    ]);
    if (!result.ok) throw new Error(result.reason);
    const { chart } = result;
    const sd = Math.sqrt(2.48 / 11);
    expect(chart.centreMm).toBeCloseTo(74 / 13, 12);
    expect(chart.withinSdMm).toBeCloseTo(sd, 12);
    expect(chart.degreesOfFreedom).toBe(11);
    expect(chart.points[0].highMm).toBeCloseTo(74 / 13 + (3 * sd) / 2, 12);
    expect(chart.points[1].highMm).toBeCloseTo(74 / 13 + sd, 12);
    expect(chart.points.map(({ position }) => position)).toEqual(['inside', 'inside']);
  });

  it('marks a pallet that stands out', () => {
    const pallets = ['A', 'B', 'C', 'D'].map((id) => ({ ...one, id }));
    const result = palletMeansChart([...pallets, { ...one, id: 'E', meanMm: 6 }]);
    expect(result.ok && result.chart.points.at(-1)?.position).toBe('above');
  });

  it('with no scatter at all, equal means are inside', () => {
    const result = palletMeansChart([
      { ...one, sdMm: 0 },
      { ...one, id: 'B', sdMm: 0 }
    ]);
    expect(result.ok && result.chart.points.every(({ position }) => position === 'inside')).toBe(
      true
    );
  });
});

describe('compareDeliveries', () => {
  const delivery = {
    id: '1',
    supplier: 'north',
    arrivalDate: '2027-03-01',
    sampled: 2,
    meanMm: 5,
    sdMm: Math.SQRT2,
    outside: 1,
    sorted: 0,
    setAside: 0
  };

  it('nothing gives nothing', () => {
    expect(compareDeliveries([], 0.95)).toEqual({ deliveries: [], suppliers: [] });
  });

  it('orders by date and takes a supplier together as if all slates were one list', () => {
    const { deliveries, suppliers } = compareDeliveries(
      [
        { ...delivery, id: '2', arrivalDate: '2027-05-01', meanMm: 7, sorted: 100, setAside: 8 },
        delivery
      ],
      0.95
    );
    expect(deliveries.map(({ id }) => id)).toEqual(['1', '2']);
    expect(deliveries[0].shareSetAside).toBeUndefined();
    expect(deliveries[1].shareSetAside).toBe(0.08);
    // The slates are 4, 6 and 6, 8: mean 6, squares 4 + 0 + 0 + 4, over 3.
    expect(suppliers).toHaveLength(1);
    expect(suppliers[0]).toMatchObject({ deliveries: 2, sampled: 4, meanMm: 6, shareOutside: 0.5 });
    expect(suppliers[0].sdMm).toBeCloseTo(Math.sqrt(8 / 3), 12);
  });

  it('refuses a delivery without a sample', () => {
    expect(() => compareDeliveries([{ ...delivery, sampled: 0 }], 0.95)).toThrow(/at least 1/);
  });
});
