import { describe, expect, it } from 'vitest';
import { type RepeatEffect, repeatReading, startRepeatCheck } from './repeat-check.ts';

function effects(limitMm: number, ...values: number[]) {
  let state = startRepeatCheck(limitMm);
  return values.map((value): RepeatEffect => {
    const step = repeatReading(state, value);
    state = step.state;
    return step.effect;
  });
}

describe('repeat check', () => {
  it.each([-0.1, Number.NaN, Infinity])('refuses the limit %f', (limit) => {
    expect(() => startRepeatCheck(limit)).toThrow(/limit/);
  });

  it('agrees at the limit itself and not a hundredth above', () => {
    expect(effects(0.2, 6.4, 6.6)[1]).toEqual({ kind: 'agreed', valueMm: 6.5, differenceMm: 0.2 });
    expect(effects(0.2, 6.4, 6.61)[1]).toEqual({
      kind: 'moved',
      firstMm: 6.4,
      secondMm: 6.61,
      differenceMm: 0.21
    });
  });

  it('asks for a repeat of each point, and takes equal readings', () => {
    expect(effects(0, 6.4, 6.4, 6.4).map(({ kind }) => kind)).toEqual(['again', 'agreed', 'again']);
  });

  it('lets the later of two unlike readings wait for its repeat', () => {
    expect(effects(0.1, 6.4, 7.4, 7.45)[2]).toEqual({
      kind: 'agreed',
      valueMm: 7.43,
      differenceMm: 0.05
    });
  });
});
