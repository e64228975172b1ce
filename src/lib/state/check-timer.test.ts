import { describe, expect, it } from 'vitest';
import { afterTap, nextCheckTimer } from './check-timer.ts';

describe('the timer of spot checks', () => {
  it('varies by a quarter about the interval', () => {
    expect(nextCheckTimer(20, 0).tapsUntil).toBe(15);
    expect(nextCheckTimer(20, 0.5).tapsUntil).toBe(20);
    expect(nextCheckTimer(20, 0.9999).tapsUntil).toBe(25);
    expect(nextCheckTimer(1, 0).tapsUntil).toBe(1);
  });

  it('asks after so many taps, stays for six, and lapses', () => {
    let timer = nextCheckTimer(4, 0.5);
    const asked: (number | null)[] = [];
    for (let tap = 0; tap < 10; tap++) {
      timer = afterTap(timer, 4, 0.5);
      asked.push(timer.askedFor);
    }
    expect(asked).toEqual([null, null, null, 0, 1, 2, 3, 4, 5, null]);
    expect(timer.tapsUntil).toBe(4);
  });
});
