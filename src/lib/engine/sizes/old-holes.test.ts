import { describe, expect, it } from 'vitest';
import { holeFromTailMm } from '$lib/engine/roof';
import { EngineError } from '../errors.ts';
import { oldHolesUnder } from './old-holes.ts';

describe('old holes under a new gauge', () => {
  const spec = {
    lengthMm: 500,
    nailing: 'centre',
    headNailLineMm: 25,
    holeClearanceMm: 4
  } as const;

  it('holed for a gauge of 200 and laid to 200 again: the hole serves', () => {
    expect(holeFromTailMm(spec, 200)).toBe(304);
    const holes = oldHolesUnder(500, [304, 304], 200, 304);
    expect(holes.asItWas).toEqual(['serves-again', 'serves-again']);
    expect(holes.better).toBe('as-it-was');
  });

  it('laid to 190, the old hole is so near the new one that the slate may break between', () => {
    const holes = oldHolesUnder(500, [304], 190, holeFromTailMm(spec, 190));
    expect(holes.asItWas).toEqual(['doubled']);
    expect(holes.turned).toEqual(['seen']);
    expect(holes.better).toBe('as-it-was');
  });

  it('a head-nailed slate laid the same way up keeps its holes covered, turned they are seen', () => {
    const holes = oldHolesUnder(400, [375], 160, 254);
    expect(holes.asItWas).toEqual(['covered']);
    expect(holes.turned).toEqual(['seen']);
  });

  it('a slate with holes in its tail is better turned end for end', () => {
    expect(oldHolesUnder(400, [30], 160, 254).better).toBe('turned');
  });

  it('holes at both ends are seen either way', () => {
    expect(oldHolesUnder(400, [30, 370], 160, 254).better).toBe('neither');
  });

  it('on the margin, and 10 mm of cover above it', () => {
    expect(oldHolesUnder(400, [160, 169.9, 170], 160, 254).asItWas).toEqual([
      'seen',
      'seen',
      'covered'
    ]);
  });

  it('refuses a hole beside the slate', () => {
    expect(() => oldHolesUnder(400, [401], 160, 254)).toThrow(EngineError);
  });
});
