import { describe, expect, it } from 'vitest';
import { EngineError } from '../errors.ts';
import { type PackedThickness, countByHeight, packedThickness } from './count-by-height.ts';

const THICK = Object.freeze({ meanMm: 7.2, meanErrorMm: 0.05, sdMm: 0.4 });
const THIN = Object.freeze({ meanMm: 5.4, meanErrorMm: 0.04, sdMm: 0.3 });
const PILES = Object.freeze([THICK, undefined, THIN]);

const known = (pile: number, slates: number, totalMm: number) =>
  Object.freeze({ pile, slates, totalMm });

function packed(...of: Parameters<typeof packedThickness>): PackedThickness {
  const told = packedThickness(...of);
  if (!told.ok) throw new Error(told.reason);
  return told;
}

describe('packed thickness of a slate', () => {
  it('needs a stack of known count, and for another pile the mean of both', () => {
    expect(packedThickness(1, PILES, [])).toEqual({ ok: false, reason: 'no-stack' });
    const ofMiddle = [known(2, 40, 280)];
    expect(packedThickness(1, PILES, ofMiddle)).toEqual({ ok: false, reason: 'no-thickness' });
    expect(packedThickness(2, PILES, [known(1, 40, 300)]).ok).toBe(false);
    expect(packedThickness(2, PILES, ofMiddle)).toMatchObject({ ok: true, packedMm: 7 });
  });

  it('is height ÷ slates of its own stacks, surer with more slates', () => {
    const few = packed(1, PILES, [known(1, 20, 152)]);
    const many = packed(1, PILES, [known(1, 20, 152), known(1, 60, 456)]);
    expect(few.packedMm).toBeCloseTo(7.6, 9);
    expect(many.packedMm).toBeCloseTo(7.6, 9);
    expect(many.errorMm).toBeLessThan(few.errorMm);
  });

  it('of another pile lies between the same air beside each slate and air that grows with it', () => {
    // 100 thin slates of 5.4 mm stand 590 mm: 0.5 mm of air each
    const told = packed(1, PILES, [known(3, 100, 590)]);
    expect(told.packedMm).toBeGreaterThan(7.2 + 0.5);
    expect(told.packedMm).toBeLessThan((7.2 * 5.9) / 5.4);
    expect(told.fromPile).toBe(3);
    expect(told.errorMm).toBeGreaterThan(packed(3, PILES, [known(3, 100, 590)]).errorMm);
  });

  it('takes the stack that tells most', () => {
    const told = packed(1, PILES, [known(3, 100, 590), known(1, 50, 385)]);
    expect(told).toMatchObject({ fromPile: 1, packedMm: 7.7 });
  });

  it('refuses a stack without slates or height', () => {
    expect(() => packedThickness(1, PILES, [known(1, 0, 100)])).toThrow(EngineError);
    expect(() => packedThickness(1, PILES, [known(1, 10, 0)])).toThrow(EngineError);
    expect(() => packedThickness(1, PILES, [known(1, 10, NaN)])).toThrow(EngineError);
  });
});

describe('slates by the height of a pile', () => {
  const seven = packed(1, PILES, [known(1, 50, 360)]);

  it('is the sum of the heights ÷ the packed thickness, in whole slates', () => {
    expect(countByHeight([720], seven).slates).toBe(100);
    expect(countByHeight([400, 320], seven).slates).toBe(100);
    const { slates, low, high } = countByHeight([723], seven);
    expect(low).toBeLessThan(slates);
    expect(high).toBeGreaterThan(slates);
  });

  it('of one slate or less is one, and never fewer than one at the low end', () => {
    expect(countByHeight([3], seven)).toMatchObject({ slates: 1, low: 1 });
  });

  it('refuses no height, a height of 0 and one below it', () => {
    for (const heights of [[], [0], [-5], [NaN], [300, 0]])
      expect(() => countByHeight(heights, seven)).toThrow(EngineError);
  });
});
