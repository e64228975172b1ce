import { describe, expect, it } from 'vitest';
import {
  edgeLimitMm,
  flatnessLimitMm,
  productLimits,
  thicknessBand,
  type Texture
} from '$lib/engine/delivery';

const order = {
  lengthMm: 500,
  widthMm: 250,
  nominalThicknessMm: 5,
  texture: 'smooth' as Texture,
  slatesOrdered: 2000
};

describe('EN 12326-1 as published by trade bodies (quoted)', () => {
  it('length and width ±5 mm, squareness 1 % of the length', () => {
    const result = productLimits(order);
    if (!result.ok) throw new Error(result.reason);
    expect(result.limits.length).toMatchObject({ lowMm: 495, highMm: 505 });
    expect(result.limits.width).toMatchObject({ lowMm: 245, highMm: 255 });
    expect(result.limits.squareness.highMm).toBe(5);
    expect(result.limits.length.basis.standing).toBe('quoted');
  });

  it.each([
    [400, 5],
    [500, 5],
    [500.1, 5.001],
    [600, 6]
  ])('an edge of %f mm may depart %f mm from straight', (lengthMm, limit) => {
    expect(edgeLimitMm(lengthMm)).toBeCloseTo(limit, 12);
  });

  // Percentages quoted, millimetres computed.
  it.each<[Texture, number, number]>([
    ['very smooth', 4.5, 3.6],
    ['smooth', 5, 4],
    ['normal', 7.5, 6],
    ['textured', 10, 8]
  ])('flatness, %s: below %f mm at 500 and %f mm at 400', (texture, at500, at400) => {
    expect(flatnessLimitMm(500, texture)).toBeCloseTo(at500, 12);
    expect(flatnessLimitMm(400, texture)).toBeCloseTo(at400, 12);
  });
});

describe('individual thickness, as the order states it', () => {
  it.each([
    [5, 3.25, 6.75],
    [6, 3.9, 8.1]
  ])('nominal %f mm with 35 %: %f to %f mm', (nominal, low, high) => {
    const band = thicknessBand(nominal, 35, 'order, line 2');
    if (!band.ok) throw new Error(band.reason);
    expect(band.limit.lowMm).toBeCloseTo(low, 12);
    expect(band.limit.highMm).toBeCloseTo(high, 12);
    expect(band.limit.basis).toEqual({ standing: 'set by the order', source: 'order, line 2' });
  });

  it('is held to nothing where the order states none', () => {
    const result = productLimits(order);
    expect(result.ok && result.limits.thickness).toBeUndefined();
  });
});

describe('orders that cannot be judged by', () => {
  it.each([
    [{ ...order, thicknessTolerancePercent: 101 }, 'tolerance-over-100'],
    [{ ...order, slatesOrdered: 0 }, 'count-zero'],
    [{ ...order, lengthMm: 0 }, 'size-missing'],
    [{ ...order, nominalThicknessMm: 0 }, 'thickness-missing']
  ])('%# is refused: %s', (given, reason) => {
    expect(productLimits(given)).toEqual({ ok: false, reason });
  });

  it('100 % itself is allowed', () => {
    expect(productLimits({ ...order, thicknessTolerancePercent: 100 }).ok).toBe(true);
  });
});
