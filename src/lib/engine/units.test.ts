import { describe, expect, it } from 'vitest';
import { formatFeetInches, inchesToMm, toHundredths } from './units.ts';

describe('units', () => {
  it('an inch is 25.4 mm, exact by definition (international inch)', () => {
    expect(inchesToMm(10)).toBe(254);
  });

  it.each([
    [6.4, 640],
    [6.285, 629],
    [1.005, 101],
    [4.35, 435],
    [0, 0]
  ])('%f mm is %i hundredths', (lengthMm, hundredths) => {
    expect(toHundredths(lengthMm)).toBe(hundredths);
  });

  it('refuses NaN', () => {
    expect(() => toHundredths(Number.NaN)).toThrow(/finite/);
  });

  it.each([
    [2603.5, '8′ 6 1/2″'],
    [304.8, '1′ 0″'],
    [12.7, '1/2″'],
    [0, '0″'],
    [609.6 - 0.2, '2′ 0″']
  ])('%f mm reads %s on a tape', (lengthMm, text) => {
    expect(formatFeetInches(lengthMm)).toBe(text);
  });
});
