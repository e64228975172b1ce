import { describe, expect, it } from 'vitest';
import { holeFromTailMm, maximumGaugeMm, slateSpec, undereavePattern } from '$lib/engine/roof';

describe('holing', () => {
  it('500 mm slate, headlap 100: gauge 200, hole 304 mm from the tail at a clearance of 4 mm (a roof consultant on BS 5534)', () => {
    const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100, holeClearanceMm: 4 });
    expect(maximumGaugeMm(spec)).toBe(200);
    expect(holeFromTailMm(spec, 200)).toBe(304);
  });

  it('gauge + headlap + clearance, from 3 to 15 mm by guide (trade guides), is the same hole', () => {
    for (const holeClearanceMm of [3, 10, 15])
      for (const headlapMm of [75, 100, 120]) {
        const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm, holeClearanceMm });
        const gaugeMm = maximumGaugeMm(spec);
        expect(holeFromTailMm(spec, gaugeMm)).toBe(gaugeMm + headlapMm + holeClearanceMm);
      }
  });

  it('head-nailed: on the nail line, 25 mm from the head (common practice, no source)', () => {
    const spec = slateSpec({ lengthMm: 400, widthMm: 200, headlapMm: 75, nailing: 'head' });
    expect(holeFromTailMm(spec, maximumGaugeMm(spec))).toBe(375);
    expect(undereavePattern(spec, maximumGaugeMm(spec))).toEqual({
      lengthMm: 250,
      widthMm: 200,
      holeFromTailMm: 225,
      holeFromHeadMm: 25
    });
  });
});
