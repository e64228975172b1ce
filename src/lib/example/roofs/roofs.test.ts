import { expect, it } from 'vitest';
import { makeSlope } from '$lib/engine/roof';
import { slopeForEngine } from '$lib/job';
import { slopeBody } from './index.ts';

it('an example slope comes to the engine with every field that it names', () => {
  const slope = {
    ...{ id: 'south', name: 'South', rafterLengthMm: 5200, eaveWidthMm: 8000, pitchDegrees: 35 },
    ...{ eaveHeightMm: 300, ridgeGapMm: 40, setOutFrom: 'right' as const },
    openings: [
      { kind: 'chimney' as const, fromLeftMm: 2000, widthMm: 600, fromEaveMm: 2500, heightMm: 900 }
    ],
    ...{ eaveOverhangMm: 50, vergeOverhangMm: 60 }
  };
  const entered = slopeForEngine(slopeBody(slope, 'south'), slope);
  expect(entered).toEqual(makeSlope(slope));
});
