import { describe, expect, it } from 'vitest';
import { NumberWords } from './numbers.ts';

describe('NumberWords', () => {
  it('gives what rounds to nothing no sign', () => {
    const numbers = new NumberWords('en');
    expect(numbers.decimal(-0.001, 2)).toBe('0.00');
    expect(numbers.whole(-0)).toBe('0');
    expect(numbers.percent(-0.0001)).toBe('0 %');
    expect(numbers.decimal(-1234.5, 1)).toBe('-1,234.5');
  });
});
