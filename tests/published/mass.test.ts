import { describe, expect, it } from 'vitest';
import { inchesToMm } from '$lib/engine';
import { massLaidKgPerM2, maximumGaugeMm, stackOf } from '$lib/engine/roof';

/** Kilograms in a pound avoirdupois, exact; square metres in a square of 100 ft², exact. */
const KG_PER_POUND = 0.45359237;
const M2_PER_SQUARE = 9.290304;

function centreGauge(lengthMm: number, headlapMm: number): number {
  return maximumGaugeMm({ lengthMm, headlapMm, nailing: 'centre', headNailLineMm: 25 });
}

describe('mass laid at 2800 kg/m³, computed: density × thickness × length / gauge', () => {
  it.each([
    [5, 500, 75, 32.9],
    [5, 500, 100, 35.0],
    [7, 400, 90, 50.6]
  ])('%d mm, length %d, headlap %d: %d kg/m²', (thickness, length, headlap, mass) => {
    const laid = massLaidKgPerM2(2800, thickness, length, centreGauge(length, headlap));
    expect(laid).toBeCloseTo(mass, 1);
  });
});

describe('pounds per square, US trade practice, to within 20 %', () => {
  // The print names no size; 20 in slates at a lap of 3 in stand for the common run.
  const gaugeMm = centreGauge(inchesToMm(20), inchesToMm(3));
  it.each([
    [3 / 16, 650],
    [3 / 16, 700],
    [1 / 4, 935]
  ])('%d in thick: about %d lb', (thicknessIn, pounds) => {
    const laid = massLaidKgPerM2(2800, inchesToMm(thicknessIn), inchesToMm(20), gaugeMm);
    const perSquare = (laid * M2_PER_SQUARE) / KG_PER_POUND;
    expect(Math.abs(perSquare / pounds - 1)).toBeLessThanOrEqual(0.2);
  });
});

describe('stacks', () => {
  it('100 slates of 500 × 250 × 6 mm at 2800 kg/m³: 600 mm and 210 kg, computed', () => {
    const stack = stackOf(100, 6, { lengthMm: 500, widthMm: 250, densityKgPerM3: 2800 });
    expect(stack.heightMm).toBe(600);
    expect(stack.massKg).toBeCloseTo(210, 9);
  });

  it('mass in densities of NF P 32-302, 2.65 to 2.75 t/m³, rises with them', () => {
    const at = (density: number) => massLaidKgPerM2(density, 5, 500, 200);
    expect(at(2650)).toBeCloseTo(33.125, 9);
    expect(at(2700)).toBeCloseTo(33.75, 9);
    expect(at(2750)).toBeCloseTo(34.375, 9);
  });

  it('refuses a thickness of nothing', () => {
    expect(() => massLaidKgPerM2(2800, 0, 500, 200)).toThrow(/thickness/);
    expect(() => stackOf(1.5, 6, { lengthMm: 500, widthMm: 250, densityKgPerM3: 2800 })).toThrow(
      /whole/
    );
  });
});
