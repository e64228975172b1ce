import { describe, expect, it } from 'vitest';
import { NumberRun } from './number-run.ts';

describe('NumberRun', () => {
  it('has no gap before anything is noted', () => {
    expect(new NumberRun().missing).toBeUndefined();
  });

  it('J15: finds the first gap, whatever order the numbers come in, until it is filled', () => {
    const run = new NumberRun();
    for (const number of [1, 5, 2, 6]) expect(run.note(number)).toBe(true);
    expect(run.missing).toBe(3);
    expect(run.upTo).toBe(2);
    run.note(4);
    expect(run.missing).toBe(3);
    run.note(3);
    expect(run.missing).toBeUndefined();
    expect(run.noted).toBe(6);
    expect(run.upTo).toBe(6);
  });

  it('J3: takes no number twice, nor one that was there before it began', () => {
    const run = new NumberRun(10);
    expect(run.note(10)).toBe(false);
    expect(run.note(1)).toBe(false);
    expect([12, 12, 11, 11, 12].map((number) => run.note(number))).toEqual([
      true,
      false,
      true,
      false,
      false
    ]);
    expect(run.noted).toBe(2);
  });
});
