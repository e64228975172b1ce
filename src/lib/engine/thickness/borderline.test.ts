import { describe, expect, it } from 'vitest';
import { isBorderline } from './borderline.ts';

describe('isBorderline', () => {
  it('is never so without a threshold', () => {
    expect(isBorderline(6, [], 1)).toBe(false);
  });

  it.each([
    [5.89, false],
    [5.9, true],
    [6, true],
    [6.1, true],
    [6.11, false],
    [5.1, true]
  ])('%f mm beside 6 and 5 mm with an SD of 0.05 mm: %s', (thicknessMm, borderline) => {
    expect(isBorderline(thicknessMm, Object.freeze([6, 5]), 0.05)).toBe(borderline);
  });

  it('with a perfect gauge only on the threshold itself', () => {
    expect(isBorderline(6, [6], 0)).toBe(true);
    expect(isBorderline(5.99, [6], 0)).toBe(false);
  });

  it('refuses a negative SD and NaN', () => {
    expect(() => isBorderline(6, [6], -0.1)).toThrow(/out-of-range/);
    expect(() => isBorderline(Number.NaN, [6], 0.1)).toThrow(/not-finite/);
    expect(() => isBorderline(6, [Number.NaN], 0.1)).toThrow(/not-finite/);
  });
});
