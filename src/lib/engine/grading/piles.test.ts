import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { pileOf, requireThresholds, splitIntoPiles } from './piles.ts';

describe('pileOf', () => {
  it('knows one pile when there is no threshold', () => {
    expect(pileOf(6, [])).toBe(1);
  });

  it.each([
    [7.01, 1],
    [7, 1],
    [6.99, 2],
    [5.51, 2],
    [5.5, 2],
    [5.49, 3],
    [1.5, 3],
    [40, 1]
  ])('%d mm between thresholds 7 and 5.5 mm goes on pile %i', (thicknessMm, pile) => {
    expect(pileOf(thicknessMm, Object.freeze([7, 5.5]))).toBe(pile);
  });

  it('is not moved by binary rounding', () => {
    expect(pileOf(0.1 + 0.2 + 5.7, [6])).toBe(1);
    expect(pileOf(6, [5.7 + 0.1 + 0.2])).toBe(1);
  });

  it('refuses a thickness that is not a number', () => {
    expect(() => pileOf(Number.NaN, [6])).toThrow(/finite/);
  });
});

describe('requireThresholds', () => {
  it('passes none, one, and falling ones', () => {
    expect(() => requireThresholds([])).not.toThrow();
    expect(() => requireThresholds([6])).not.toThrow();
    expect(() => requireThresholds([6, 5.99])).not.toThrow();
  });

  it.each([
    [[6, 6], 'wrong-order'],
    [[5, 6], 'wrong-order'],
    [[6, Number.NaN], 'not-finite'],
    [[Infinity, 6], 'not-finite']
  ])('refuses %j: %s', (thresholdsMm, code) => {
    expect(() => requireThresholds(thresholdsMm)).toThrow(
      expect.objectContaining({ code }) as Error
    );
  });
});

describe('splitIntoPiles', () => {
  const bins = binsFromPairs([
    [549, 1],
    [550, 2],
    [699, 3],
    [700, 4],
    [701, 5]
  ]);

  it('puts every slate on exactly one pile, thickest first', () => {
    expect(splitIntoPiles(bins, [7, 5.5]).map(({ counts }) => [...counts])).toEqual([
      [4, 5],
      [2, 3],
      [1]
    ]);
  });

  it('leaves piles empty where nothing falls', () => {
    const counts = splitIntoPiles(bins, [9, 7.02, 5]).map((pile) => [...pile.counts]);
    expect(counts).toEqual([[], [], [1, 2, 3, 4, 5], []]);
  });

  it('refuses thresholds that do not fall', () => {
    expect(() => splitIntoPiles(bins, [5, 6])).toThrow(/must be below/);
  });
});
