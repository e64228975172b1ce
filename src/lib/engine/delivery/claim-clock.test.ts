import { describe, expect, it } from 'vitest';
import { claimClock } from './claim-clock.ts';

describe('claimClock', () => {
  it.each([
    ['2028-02-25', 7, '2028-02-25', '2028-03-03', 7, 'open'], // leap year
    ['2027-02-25', 7, '2027-03-03', '2027-03-04', 1, 'open'],
    ['2027-12-28', 5, '2028-01-02', '2028-01-02', 0, 'last day'],
    ['2027-03-27', 2, '2027-03-30', '2027-03-29', -1, 'over'], // clocks change in between
    ['2027-05-01', 0, '2027-05-01', '2027-05-01', 0, 'last day']
  ])('arrived %s, %i days, today %s', (arrival, days, today, lastDay, daysLeft, state) => {
    expect(claimClock(arrival, days, today)).toEqual({ ok: true, lastDay, daysLeft, state });
  });

  it('does not run before the delivery is there', () => {
    expect(claimClock('2027-05-02', 3, '2027-05-01')).toEqual({
      ok: false,
      reason: 'not-arrived-yet'
    });
  });

  it.each(['2027-02-29', '2027-13-01', '27-01-01', '', '2027-01-01T10:00'])(
    'refuses %o as a day',
    (day) => {
      expect(() => claimClock(day, 3, '2027-06-01')).toThrow(/not a day of the calendar/);
    }
  );
});
