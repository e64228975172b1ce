import { describe, expect, it } from 'vitest';
import { afterTap, nextCheckTimer } from './check-timer.ts';

/** Taps until a question comes up. */
function tapsToQuestion(interval: number, draw: number): number {
  let timer = nextCheckTimer(draw);
  let taps = 0;
  for (; timer.askedFor === null && taps < 100; taps++) timer = afterTap(timer, interval, 0);
  return taps;
}

describe('the timer of spot checks', () => {
  it('varies by a quarter about the interval', () => {
    expect(tapsToQuestion(20, 0)).toBe(15);
    expect(tapsToQuestion(20, 0.5)).toBe(20);
    expect(tapsToQuestion(20, 0.9999)).toBe(25);
    expect(tapsToQuestion(1, 0)).toBe(1);
  });

  it('asks after so many taps, stays for six, and lapses', () => {
    let timer = nextCheckTimer(0.5);
    const asked: (number | null)[] = [];
    for (let tap = 0; tap < 10; tap++) {
      timer = afterTap(timer, 4, 0.25);
      asked.push(timer.askedFor);
    }
    expect(asked).toEqual([null, null, null, 0, 1, 2, 3, 4, 5, null]);
    expect(timer).toEqual(nextCheckTimer(0.25));
  });

  it('goes by the interval as it stands: what was tapped counts', () => {
    let timer = nextCheckTimer(0.5);
    for (let tap = 0; tap < 12; tap++) timer = afterTap(timer, 20, 0);
    expect(timer.askedFor).toBeNull();
    expect(afterTap(timer, 5, 0).askedFor).toBe(0);
    expect(afterTap(timer, Infinity, 0).askedFor).toBeNull();
  });
});
