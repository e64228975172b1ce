import { describe, expect, it } from 'vitest';
import { wholeSlates } from './whole-slates.ts';

const piles = (...slates: number[]) => slates.map((predictedSlates) => ({ predictedSlates }));

describe('wholeSlates', () => {
  it('add up to the stock where rounding each would make one too many', () => {
    const rounded = [606.5, 1946.5, 1484].map(Math.round);
    expect(rounded.reduce((sum, slates) => sum + slates, 0)).toBe(4038);
    expect(wholeSlates(piles(606.5, 1946.5, 1484))).toEqual([607, 1946, 1484]);
  });

  it('keep an empty pile empty, and all of them without a stock', () => {
    expect(wholeSlates(piles(0, 12))).toEqual([0, 12]);
    expect(wholeSlates(piles(0, 0))).toEqual([0, 0]);
    expect(wholeSlates([])).toEqual([]);
  });
});
