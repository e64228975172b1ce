import { describe, expect, it } from 'vitest';
import { foldAll, readEvent } from '$lib/journal';
import { fixedExample } from '../../../../tests/support/fixed-example.ts';
import { sketchRoof } from './roof-sketch.ts';

describe('the sketch of the roof', () => {
  const events = fixedExample();

  it('has every slope beside the other, none over another', () => {
    const { slopes, widthMm } = sketchRoof(foldAll(events.map(readEvent)));
    expect(slopes).toHaveLength(2);
    const [first, second] = slopes;
    const right = Math.max(
      ...[...first.outline.matchAll(/L(-?[\d.]+) /g)].map(([, x]) => Number(x))
    );
    expect(second.fromMm).toBeGreaterThan(first.fromMm + right);
    expect(widthMm).toBeGreaterThan(second.fromMm);
  });

  it('draws a hip at 45° on plan as steep as the run of its rafter', () => {
    const slope = {
      slopeId: 's',
      name: 'S',
      rafterLengthMm: 5000,
      eaveWidthMm: 10_000,
      pitchDegrees: 36.869897645844,
      eaveHeightMm: 0,
      left: { kind: 'hip', planAngleDegrees: 45 },
      right: { kind: 'verge' },
      openings: []
    };
    const view = foldAll(
      [{ ...events[0], type: 'slopeSet', v: 1, body: slope }].map((event) =>
        readEvent(event as unknown as (typeof events)[number])
      )
    );
    const [{ outline }] = sketchRoof(view).slopes;
    // From a 3-4-5 triangle: run 4000 mm, so the hip moves in by 4000 mm.
    expect(outline).toMatch(/^M0 5000L10000 5000L10000 0L(3999\.99\d*|4000[.\d]*) 0Z$/);
  });

  it('is empty without a slope', () => {
    const view = foldAll(events.filter(({ type }) => type !== 'slopeSet').map(readEvent));
    expect(sketchRoof(view).slopes).toEqual([]);
  });
});
