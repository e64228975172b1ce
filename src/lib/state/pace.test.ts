import { describe, expect, it } from 'vitest';
import { paceSince } from './pace.ts';

const minutes = (...pairs: [number, number][]) => new Map(pairs);

describe('paceSince', () => {
  it('of nothing is nothing', () => {
    expect(paceSince(minutes(), 0)).toEqual({ slates: 0, minutes: 0, perHour: null });
  });

  it('tells no pace before five minutes', () => {
    expect(paceSince(minutes([0, 16], [1, 16], [2, 16], [3, 16]), 0)).toEqual({
      slates: 64,
      minutes: 4,
      perHour: null
    });
  });

  it('1,000 slates an hour are about 17 a minute', () => {
    const hour = Array.from({ length: 60 }, (_, at): [number, number] => [
      at,
      at % 3 === 0 ? 16 : 17
    ]);
    expect(paceSince(minutes(...hour), 0)).toEqual({ slates: 1000, minutes: 60, perHour: 1000 });
  });

  it('leaves a break of more than six minutes out, and counts a gap of six', () => {
    expect(paceSince(minutes([0, 10], [6, 10]), 0).minutes).toBe(7);
    expect(paceSince(minutes([0, 10], [7, 10]), 0).minutes).toBe(2);
  });

  it('begins at the minute given', () => {
    expect(paceSince(minutes([9, 99], [10, 10], [11, 10]), 10).slates).toBe(20);
  });

  it('counts a tally sheet typed in as sorted, but not for the pace', () => {
    const sorted = Array.from({ length: 10 }, (_, at): [number, number] => [at, 12]);
    const pace = paceSince(minutes(...sorted, [20, 300]), 0);
    expect(pace).toEqual({ slates: 420, minutes: 10, perHour: 720 });
  });
});
