import { describe, expect, it } from 'vitest';
import { CLOCKS, NumberWords } from './numbers.ts';

describe('NumberWords', () => {
  it('gives what rounds to nothing no sign', () => {
    const numbers = new NumberWords('en');
    expect(numbers.decimal(-0.001, 2)).toBe('0.00');
    expect(numbers.whole(-0)).toBe('0');
    expect(numbers.percent(-0.0001)).toBe('0 %');
    expect(numbers.decimal(-1234.5, 1)).toBe('-1,234.5');
  });

  // Held to ECMA-402's own formatter, which has the patterns of Unicode's CLDR.
  it.each(Object.keys(CLOCKS))('writes every minute of a day as %s does', (locale) => {
    const numbers = new NumberWords(locale);
    const clock = new Intl.DateTimeFormat(locale, { timeStyle: 'short' });
    for (let minute = 0; minute < 24 * 60; minute++) {
      const moment = new Date(2026, 1, 1, 0, minute);
      expect(numbers.time(moment.toISOString())).toBe(clock.format(moment));
    }
  });

  it('writes the time of day of any other place as that does', () => {
    expect(new NumberWords('en-US').time(new Date(2026, 1, 1, 9, 5).toISOString())).toMatch(
      /^9:05\sAM$/
    );
  });

  it('tells the day of a moment that was not today', () => {
    const numbers = new NumberWords('en-GB');
    const now = new Date(2026, 4, 6, 0, 10);
    expect(numbers.lately(new Date(2026, 4, 6, 0, 5).toISOString(), now)).toBe('00:05');
    expect(numbers.lately(new Date(2026, 4, 5, 23, 55).toISOString(), now)).toBe(
      '5 May 2026, 23:55'
    );
  });
});
