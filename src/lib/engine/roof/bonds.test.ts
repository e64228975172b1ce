import { describe, expect, it } from 'vitest';
import { layBonds } from './bonds.ts';
import { slateSpec } from './slate-spec.ts';

const SPEC = Object.freeze(slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 }));
const kinds = (pieces: readonly { kind: string }[]) =>
  pieces.map(({ kind }) => (kind === 'full' ? 'F' : kind === 'cut' ? 'c' : 'W')).join('');

describe('layBonds', () => {
  it('refuses less than one slate, and NaN', () => {
    expect(() => layBonds(249, SPEC)).toThrow(/one slate needs 250/);
    expect(() => layBonds(Number.NaN, SPEC)).toThrow(/not-finite/);
  });

  it('takes one slate in both bonds where there is room for one', () => {
    const { A, B } = layBonds(250, SPEC);
    expect(kinds(A.pieces)).toBe('F');
    expect(kinds(B.pieces)).toBe('F');
  });

  it('finishes an even number of half-slates whole: ten slates with joints of 3 mm', () => {
    const { A, B, isWhole } = layBonds(2527, SPEC);
    expect(isWhole).toBe(true);
    expect(kinds(A.pieces)).toBe('FFFFFFFFFF');
    expect(kinds(B.pieces)).toBe('WFFFFFFFW');
    expect(A.jointMm).toBeCloseTo(3, 9);
    expect(B.jointMm).toBeCloseTo(27 / 8, 9);
    expect(A.pieces[1].leftMm).toBeCloseTo(253, 9);
    expect(B.pieces[1].leftMm).toBeCloseTo(378.375, 9);
  });

  it('finishes an odd number of half-slates whole, each bond the other turned round', () => {
    const { A, B, isWhole } = layBonds(2000 + 375 + 8 * 4, SPEC);
    expect(isWhole).toBe(true);
    expect(kinds(A.pieces)).toBe('FFFFFFFFW');
    expect(kinds(B.pieces)).toBe('WFFFFFFFF');
    expect(A.jointMm).toBe(4);
  });

  it.each([
    [2527 - 0.01, false],
    [2527, true],
    [2540, true],
    [2540.01, false]
  ])('%d mm: whole from nine joints of 3 mm to eight of 5 mm: %s', (width, isWhole) => {
    expect(layBonds(width, SPEC).isWhole).toBe(isWhole);
  });

  it('cuts where no joint will do, and tells the nearest width that needs no cut', () => {
    const pair = layBonds(2600, SPEC);
    expect(pair.isWhole).toBe(false);
    expect(pair.cutPieces).toBe(2);
    expect(pair.narrowestCutMm).toBeGreaterThanOrEqual(150);
    // Nine slates, a slate-and-a-half and nine joints of 3 mm.
    expect(pair.nearestWholeWidthMm).toBeCloseTo(2250 + 375 + 27, 9);
  });

  it('takes the shortfall of a narrow cut off its neighbour', () => {
    // Nine slates at 3 mm reach 2277; 140 mm more is too much for a slate-and-a-half, too little
    // for a cut of 150.
    const { A } = layBonds(10 * 253 + 140, { ...SPEC, jointMaxMm: 3 });
    expect(A.pieces.slice(-2).map(({ kind, widthMm }) => [kind, widthMm])).toEqual([
      ['cut', 240],
      ['cut', 150]
    ]);
  });

  it('reports a cut below the limit where the slate leaves no other way', () => {
    const narrow = slateSpec({ lengthMm: 300, widthMm: 150, headlapMm: 75, jointMaxMm: 3 });
    const pair = layBonds(10 * 153 + 100, narrow);
    expect(pair.narrowestCutMm).toBeLessThan(150);
    expect(pair.cutPieces).toBeGreaterThan(0);
  });
});
