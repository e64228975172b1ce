import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '../thickness/index.ts';
import { candidateCuts } from './candidate-cuts.ts';

const unbroken = (bins: number) =>
  binsFromPairs(Array.from({ length: bins }, (_pair, bin) => [500 + bin, 1]));

describe('candidateCuts', () => {
  it('has none for no thickness or one', () => {
    expect(candidateCuts(binsFromPairs([]))).toEqual({ cuts: [], gridMm: null });
    expect(candidateCuts(unbroken(1))).toEqual({ cuts: [], gridMm: null });
  });

  it('tries every gap up to 160', () => {
    const { cuts, gridMm } = candidateCuts(unbroken(161));
    expect(gridMm).toBeNull();
    expect(cuts).toHaveLength(160);
    expect([cuts[0], cuts[159]]).toEqual([1, 160]);
  });

  it('takes the finest grid of at most 160 cuts beyond that', () => {
    const fine = candidateCuts(unbroken(162)); // 5.00 to 6.61 mm
    expect(fine).toMatchObject({ gridMm: 0.05 });
    expect(fine.cuts).toEqual(Array.from({ length: 32 }, (_cut, line) => 5 * (line + 1)));
    expect(candidateCuts(unbroken(900)).gridMm).toBe(0.1);
    expect(candidateCuts(unbroken(3500)).gridMm).toBe(0.5);
  });

  it('counts a grid line in an empty stretch once', () => {
    const far = binsFromPairs(
      Array.from({ length: 200 }, (_pair, bin) => [bin < 100 ? bin + 400 : bin + 4000, 1])
    );
    const { cuts, gridMm } = candidateCuts(far);
    expect(gridMm).toBe(0.05);
    expect(new Set(cuts).size).toBe(cuts.length);
  });
});
