import { describe, expect, it } from 'vitest';
import { handBias } from './hand-bias.ts';

describe('handBias', () => {
  it('has nothing to say of one pile', () => {
    expect(handBias([], [])).toEqual([]);
  });

  it('calls medium from 5.4 where the grade starts at 5.8', () => {
    const [, medium] = handBias(Object.freeze([7, 5.4]), Object.freeze([6.9, 5.8]));
    expect(medium).toMatchObject({ pile: 2, handMm: 5.4, gradeMm: 5.8 });
    expect(medium.biasMm).toBeCloseTo(-0.4, 14);
  });

  it('refuses unlike numbers of thresholds and thresholds that do not fall', () => {
    expect(() => handBias([6], [6, 5])).toThrow(/wrong-length/);
    expect(() => handBias([5, 6], [6, 5])).toThrow(/wrong-order/);
  });
});
