import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatFeetInches } from '../units.ts';
import { parseLength } from './length-input.ts';

describe('parseLength', () => {
  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['-3', 'negative'],
    ['−3 mm', 'negative'],
    ['abc', 'not-a-length'],
    ['6,4,2', 'not-a-length'],
    ['2.6 km', 'not-a-length'],
    ['mm', 'not-a-length'],
    ['1/0 in', 'not-a-length'],
    ['8\' 13"', 'not-a-length'],
    ['8 ft 6 ft', 'not-a-length'],
    ['1e9', 'not-a-length'],
    ['2,600', 'ambiguous'],
    ['2.600', 'ambiguous']
  ])('refuses %j: %s', (text, reason) => {
    expect(parseLength(text)).toEqual({ ok: false, reason });
  });

  it.each([
    ['2600', 2600],
    ['0', 0],
    ['0.125', 0.125],
    ['2600 mm', 2600],
    ['2,6 m', 2600],
    ['2.6m', 2600],
    ['2,600 m', 2600],
    ['260.5 cm', 2605],
    ['102.5 in', 2603.5],
    ['6½"', 165.1],
    ['1/2 in', 12.7],
    ['8 ft 6 1/2 in', 2603.5],
    ['8′ 6 1/2″', 2603.5],
    ['8\' 6"', 2590.8],
    ["8'6", 2590.8],
    ["8'", 2438.4],
    ["8 ft 6''", 2590.8],
    ['8 Feet 6 Inches', 2590.8],
    ['8.5 ft', 2590.8]
  ])('reads %j as %d mm', (text, lengthMm) => {
    const read = parseLength(text);
    expect(read.ok).toBe(true);
    if (read.ok) expect(read.lengthMm).toBeCloseTo(lengthMm, 9);
  });

  it('refuses a number too long for any roof to hold', () => {
    expect(parseLength('9'.repeat(400))).toEqual({ ok: false, reason: 'not-a-length' });
  });

  it('reads a bare number in the unit of the field', () => {
    expect(parseLength('20', 'in')).toEqual({ ok: true, lengthMm: 508 });
    expect(parseLength('20 mm', 'in')).toEqual({ ok: true, lengthMm: 20 });
  });

  it('reads back whatever the tape shows', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), (sixteenths) => {
        const lengthMm = (sixteenths / 16) * 25.4;
        const read = parseLength(formatFeetInches(lengthMm));
        expect(read.ok && Math.abs(read.lengthMm - lengthMm) < 1e-9).toBe(true);
      }),
      { seed: 12, numRuns: 2000 }
    );
  });

  it('never throws and never gives NaN, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (text) => {
        const read = parseLength(text);
        if (read.ok) expect(read.lengthMm).toBeGreaterThanOrEqual(0);
      }),
      { seed: 13, numRuns: 2000 }
    );
  });
});
