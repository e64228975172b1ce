import { describe, expect, it } from 'vitest';
import { NumberWords } from '$lib/text';
import {
  fieldText,
  lengthWriter,
  readLength,
  readNumber,
  retypeLength,
  runUnits
} from './length-words.ts';

describe('lengths in fields', () => {
  it.each([
    ['5500', 'mm', 5500],
    ['5.5 m', 'mm', 5500],
    ['2603,5', 'mm', 2603.5],
    ['18 ft', 'mm', 5486.4],
    ['10"', 'mm', 254],
    ['20', 'ftIn', 508],
    ['8′ 6 1/2″', 'ftIn', 2603.5],
    ['500 mm', 'ftIn', 500]
  ] as const)('%s typed where %s is meant is %f mm', (text, unit, lengthMm) => {
    expect(readLength(text, unit)).toEqual({ ok: true, value: lengthMm });
  });

  it('keeps a minus sign, so that the engine can refuse it and say what works', () => {
    expect(readLength('-3', 'mm')).toEqual({ ok: true, value: -3 });
    expect(readLength('−1 ft', 'mm')).toEqual({ ok: true, value: -304.8 });
    expect(readLength('--3', 'mm').ok).toBe(true);
    expect(readLength('-', 'mm')).toEqual({ ok: false, reason: 'empty' });
  });

  it('says what was probably meant by a separator before three digits', () => {
    expect(readLength('2,600', 'mm')).toEqual({ ok: false, reason: 'ambiguous', nearest: 2600 });
  });

  it.each(['', '   ', 'abc', '1e9', 'NaN', '5 parsecs', '1/0'])(
    'takes "%s" for no length',
    (text) => {
      expect(readLength(text, 'mm').ok).toBe(false);
    }
  );

  it.each([500, 2603.5, 0, 3, 0.5, 2540, 1 / 3, 99_999.9])(
    'writes %f mm so that reading it back gives the same length',
    (lengthMm) => {
      for (const unit of ['mm', 'ftIn'] as const) {
        const back = readLength(fieldText(lengthMm, unit), unit);
        if (!back.ok) throw new Error(`${fieldText(lengthMm, unit)}: ${back.reason}`);
        expect(back.value).toBeCloseTo(lengthMm, 2);
      }
    }
  );

  it('shows sixteenths of an inch only where the length is one', () => {
    expect(fieldText(508, 'ftIn')).toBe('1′ 8″');
    expect(fieldText(500, 'ftIn')).toBe('500 mm');
  });

  it('changes the unit of what was typed and leaves what is no length', () => {
    expect(retypeLength('500', 'mm', 'ftIn')).toBe('500 mm');
    expect(retypeLength('20', 'ftIn', 'mm')).toBe('508');
    expect(retypeLength('soon', 'mm', 'ftIn')).toBe('soon');
    expect(retypeLength('-5', 'mm', 'ftIn')).toBe('-5');
  });

  it('reads plain numbers with a point or a comma', () => {
    expect(readNumber('22,5°')).toEqual({ ok: true, value: 22.5 });
    expect(readNumber(' 35 ')).toEqual({ ok: true, value: 35 });
    expect(readNumber('-1')).toEqual({ ok: true, value: -1 });
    expect(readNumber('steep')).toEqual({ ok: false, reason: 'not-a-number' });
    expect(readNumber('')).toEqual({ ok: false, reason: 'empty' });
  });

  it('gives long runs and areas in feet, by the foot of 304.8 mm', () => {
    expect(runUnits('ftIn').run(304.8)).toBeCloseTo(1000, 9);
    expect(runUnits('ftIn').area(9.290304)).toBeCloseTo(100, 9);
    expect(runUnits('mm').run(12)).toBe(12);
  });

  it('writes lengths as a reader sees them', () => {
    const numbers = new NumberWords('en');
    expect(lengthWriter('mm', numbers)(5500)).toBe('5,500 mm');
    expect(lengthWriter('mm', numbers)(193.27, 1)).toBe('193.3 mm');
    expect(lengthWriter('ftIn', numbers)(2603.5)).toBe('8′ 6 1/2″');
    expect(lengthWriter('ftIn', numbers)(-25.4)).toBe('−1″');
  });
});
