import { describe, expect, it } from 'vitest';
import { parseReading } from './reading-grammar.ts';

describe('parseReading: taken', () => {
  it.each([
    ['6.4', 640],
    ['6,4', 640],
    ['6', 600],
    [' 6.40 ', 640],
    ['\u00a06.40\t', 640],
    ['+6.40', 640],
    ['+  006.40 mm', 640],
    ['6.4mm', 640],
    ['6,4 MM.', 640],
    ['6.402', 640],
    ['6.285', 629],
    ['.25in', 635],
    ['0.25 in.', 635],
    ['0.25"', 635],
    ["0,25''", 635],
    ['0.2520 inches', 640],
    ['1.5', 150],
    ['1.495', 150],
    ['40', 4000],
    ['40.004', 4000]
  ])('%j is %i hundredths', (text, hundredths) => {
    expect(parseReading(text, 'mm')).toMatchObject({
      ok: true,
      hundredths,
      valueMm: hundredths / 100
    });
  });

  it('reads a bare number in the unit of the session, and a written unit wins', () => {
    expect(parseReading('0.25', 'inch')).toMatchObject({ valueMm: 6.35, isUnitWritten: false });
    expect(parseReading('6.4 mm', 'inch')).toMatchObject({ valueMm: 6.4, isUnitWritten: true });
    expect(parseReading('0.25 in', 'mm')).toMatchObject({ unit: 'inch', valueMm: 6.35 });
  });

  it('counts the decimals as written', () => {
    expect(parseReading('6.40', 'mm')).toMatchObject({ decimals: 2 });
    expect(parseReading('6', 'mm')).toMatchObject({ decimals: 0 });
  });
});

describe('parseReading: refused', () => {
  it.each([
    ['', 'empty'],
    ['  \t', 'empty'],
    ['abc', 'not-a-number'],
    ['.', 'not-a-number'],
    ['-', 'not-a-number'],
    ['mm', 'not-a-number'],
    ['x6.4', 'not-a-number'],
    ['O.64', 'not-a-number'],
    ['--6', 'not-a-number'],
    ['6.4-', 'not-a-number'],
    ['1e9', 'not-a-number'],
    ['NaN', 'not-a-number'],
    ['Infinity', 'not-a-number'],
    ['6'.repeat(33), 'not-a-number'],
    ['6,4,2', 'several-decimals'],
    ['6.,4', 'several-decimals'],
    ['6.406.40', 'several-decimals'],
    ['1,234.5', 'several-decimals'],
    ['6,', 'unfinished'],
    ['6. mm', 'unfinished'],
    ['6.400005', 'too-many-digits'],
    ['6.4 6.5', 'several-numbers'],
    ['1/4', 'several-numbers'],
    ['-6.4', 'negative'],
    ['−6.4', 'negative'],
    ['0', 'zero'],
    ['-0.00', 'zero'],
    ['0 in', 'zero'],
    ['1.49', 'too-thin'],
    ['0.01', 'too-thin'],
    ['0.6', 'too-thin'],
    ['0.60', 'too-thin'],
    ['40.01', 'too-thick'],
    ['60.0', 'too-thick'],
    ['1000000000', 'too-thick']
  ])('%j: %s', (text, reason) => {
    expect(parseReading(text, 'mm')).toMatchObject({ ok: false, reason, text: text.trim() });
  });

  it('names a unit it does not know', () => {
    expect(parseReading('0.64 cm', 'mm')).toEqual({
      ok: false,
      reason: 'unknown-unit',
      text: '0.64 cm',
      unitText: 'cm'
    });
  });

  it.each([
    ['0.25', 'mm', 'looks-like-inches', [6.35]],
    ['0.252', 'mm', 'looks-like-inches', [6.4]],
    ['6.4', 'inch', 'looks-like-mm', [6.4]],
    ['64', 'mm', 'missing-decimal', [6.4]],
    ['60', 'mm', 'missing-decimal', [6]],
    ['640', 'mm', 'missing-decimal', [6.4]],
    ['64 mm', 'mm', 'missing-decimal', [6.4]],
    ['250', 'mm', 'missing-decimal', [2.5, 25]],
    ['6400', 'mm', 'missing-decimal', [6.4]],
    ['252', 'inch', 'missing-decimal', [6.4]]
  ] as const)('asks about %s under %s: %s', (text, unit, reason, perhapsMm) => {
    const reading = parseReading(text, unit);
    expect(reading).toMatchObject({ ok: false, reason });
    if (!('perhapsMm' in reading)) throw new Error('no lengths to ask about');
    expect(reading.perhapsMm).toEqual(perhapsMm);
  });

  it('takes no unit for a mistake where it is written', () => {
    expect(parseReading('0.25 mm', 'mm')).toMatchObject({ reason: 'too-thin', limitMm: 1.5 });
    expect(parseReading('6.4 in', 'mm')).toMatchObject({ reason: 'too-thick', limitMm: 40 });
  });

  it('does not take a sliver of 1.4 mm for 1.4 inches', () => {
    expect(parseReading('1.4', 'mm')).toMatchObject({ reason: 'too-thin' });
  });
});
