import { describe, expect, it } from 'vitest';
import { type ReadingUnit, parseReading } from './reading-grammar.ts';
import { findLostPoint } from './lost-point.ts';

/** Slates of 4 to 9 mm, with room on both sides. */
const LIKELY = { lowMm: 3, highMm: 13 };

const find = (text: string, unit: ReadingUnit = 'mm', likely = LIKELY) =>
  findLostPoint(parseReading(text, unit), likely);

describe('findLostPoint', () => {
  it.each([
    ['62', 6.2],
    ['65', 6.5],
    ['642', 6.42],
    ['60', 6],
    ['6', 6],
    ['12', 12],
    ['30', 3],
    ['120', 12]
  ])('%s is %d among slates of 4 to 9 mm', (text, valueMm) => {
    expect(find(text)).toMatchObject({ ok: true, valueMm, hundredths: valueMm * 100 });
  });

  it('reads inches the same way', () => {
    expect(find('252', 'inch')).toMatchObject({ ok: true, valueMm: 6.4 });
    expect(find('25', 'inch')).toMatchObject({ ok: true, valueMm: 6.35 });
  });

  it.each(['6.2', '25.0', '62 mm', '-62', 'abc', '', '0'])('leaves “%s” alone', (text) => {
    const reading = parseReading(text, 'mm');
    expect(findLostPoint(reading, LIKELY)).toBe(reading);
  });

  it('asks where no place of the point gives a likely thickness', () => {
    expect(find('25')).toMatchObject({ reason: 'missing-decimal', perhapsMm: [2.5, 25] });
    expect(find('250')).toMatchObject({ reason: 'missing-decimal', perhapsMm: [2.5, 25] });
    expect(find('14')).toMatchObject({ ok: true, valueMm: 14 });
    expect(find('900', 'mm', { lowMm: 3, highMm: 5 })).toMatchObject({ perhapsMm: [9] });
  });

  it('asks where several places do', () => {
    const wide = { lowMm: 1.5, highMm: 40 };
    expect(find('20', 'mm', wide)).toMatchObject({ ok: false, perhapsMm: [2, 20] });
  });

  it('changes nothing while too few readings tell', () => {
    for (const text of ['62', '25']) {
      const reading = parseReading(text, 'mm');
      expect(findLostPoint(reading, undefined)).toBe(reading);
    }
  });
});
