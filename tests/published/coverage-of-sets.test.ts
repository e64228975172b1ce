/** Coverage by set: slates per m², joint 5 mm, from a UK trade coverage table, recomputed. */
import { describe, expect, it } from 'vitest';
import { maximumGaugeMm, slateSpec, slatesPerM2 } from '$lib/engine/roof';
import { specOfSet } from '$lib/engine/sizes';

describe('a roof of 600, 500, 400 and 300 mm slates, set by set', () => {
  it.each([
    [600, 300, 75, 12.5],
    [500, 250, 75, 18.5],
    [400, 200, 75, 30.0],
    [300, 200, 75, 43.4],
    [600, 300, 90, 12.9],
    [500, 250, 90, 19.1],
    [400, 200, 90, 31.5],
    [300, 200, 90, 46.5]
  ])('%d × %d at a lap of %d: %d', (lengthMm, widthMm, headlapMm, perM2) => {
    const base = slateSpec({ lengthMm: 600, widthMm: 300, headlapMm });
    const spec = specOfSet(base, { id: 's', lengthMm, widths: { kind: 'one', widthMm } });
    expect(Math.abs(slatesPerM2(spec.widthMm, 5, maximumGaugeMm(spec)) - perM2)).toBeLessThan(0.1);
  });
});
