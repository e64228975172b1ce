import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec, startShape } from '$lib/engine/roof';
import { edgeMeetings } from './edge-meetings.ts';

const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });

/** An L of four slopes, each named as the part it is; eaves raised by part, mm. */
function lShape(raised: Readonly<Record<string, number>> = {}) {
  const roof = layOutRoof(
    startShape('l-with-valley', { lengthMm: 12_000, depthMm: 7000, pitchDegrees: 35 }).map(
      ({ part, ...slope }) =>
        makeSlope({ ...slope, id: part, name: part, eaveHeightMm: raised[part] ?? 0 })
    ),
    spec
  );
  if (!roof.ok) throw new Error(JSON.stringify(roof.problems));
  return roof;
}

describe('whom a slope meets by its edges', () => {
  it('names the slope beyond its valley, and says that courses of equal pitch meet', () => {
    const { right, left } = edgeMeetings(lShape(), 'front');
    expect(left).toBeUndefined();
    expect(right?.name).toBe('wingInner');
    expect(right?.apartMm).toBeCloseTo(0, 6);
    expect(edgeMeetings(lShape(), 'wingInner').left?.name).toBe('front');
    expect(edgeMeetings(lShape(), 'back').left?.name).toBe('wingOuter');
  });

  it('tells by how much courses miss each other where an eave lies higher', () => {
    const raised = edgeMeetings(lShape({ back: 40 }), 'wingOuter').right;
    expect(raised?.name).toBe('back');
    expect(raised?.apartMm).toBeCloseTo(40, 6);
  });
});
