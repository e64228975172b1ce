import { describe, expect, it } from 'vitest';
import { checkCount, checkStack } from './stack-check.ts';

describe('checkStack', () => {
  const stacks = Object.freeze([
    { slates: 100, totalMm: 540 },
    { slates: 50, totalMm: 285 }
  ]);

  it.each([
    ['label-missing', stacks, undefined],
    ['label-missing', stacks, 0],
    ['label-missing', [], undefined],
    ['stack-not-measured', [], 540]
  ])('refuses: %s', (reason, given, label) => {
    expect(checkStack(given, label)).toEqual({ ok: false, reason });
  });

  it('takes all stacks together, per 100 slates', () => {
    const result = checkStack(stacks, 500);
    expect(result.ok && result.stack).toMatchObject({
      stacks: 2,
      measuredMmPer100: 550,
      lowestMmPer100: 540,
      highestMmPer100: 570,
      differenceMmPer100: 50,
      outcome: 'no limit set'
    });
    expect(result.ok && result.stack.differencePercent).toBeCloseTo(10, 12);
  });

  it.each([
    [10, 'pass'],
    [9.99, 'fail']
  ])('allows exactly the departure of the order: %f %% %s', (allowed, outcome) => {
    const result = checkStack(stacks, 500, allowed);
    expect(result.ok && result.stack.outcome).toBe(outcome);
    expect(result.ok && result.stack.basis.standing).toBe('set by the order');
  });

  it('refuses a stack without slates', () => {
    expect(() => checkStack([{ slates: 0, totalMm: 5 }], 500)).toThrow(/at least 1/);
  });
});

describe('checkCount', () => {
  it.each([
    [0, 10],
    [10, 0]
  ])('refuses %i ordered, %i delivered', (ordered, delivered) => {
    expect(checkCount(ordered, delivered)).toEqual({ ok: false, reason: 'count-zero' });
  });

  it.each([
    [2000, 1960, 40, 0],
    [2000, 2000, 0, 0],
    [2000, 2010, 0, 10]
  ])('%i ordered, %i delivered: %i short, %i over', (ordered, delivered, short, over) => {
    expect(checkCount(ordered, delivered)).toEqual({
      ok: true,
      count: { ordered, delivered, short, over }
    });
  });
});
