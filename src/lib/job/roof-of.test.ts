import { describe, expect, it } from 'vitest';
import type { SlateSpecBody, SlopeBody } from '$lib/journal/bodies.ts';
import { EMPTY_VIEW, type JobView, emptyPart } from '$lib/journal';
import { roofLayoutOf, slateSpecOf, slopesForEngine } from './roof-of.ts';

const SLATE: SlateSpecBody = {
  lengthMm: 500,
  widthMm: 250,
  nailing: 'centre',
  headlapMm: 100,
  jointMinMm: 3,
  jointMaxMm: 5,
  eaveOverhangMm: 40,
  vergeOverhangMm: 60
};
const SLOPE: SlopeBody = {
  slopeId: 'south',
  name: 'South',
  rafterLengthMm: 5500,
  eaveWidthMm: 7900,
  pitchDegrees: 35,
  eaveHeightMm: 0,
  left: { kind: 'verge' },
  right: { kind: 'hip', planAngleDegrees: 45 },
  openings: []
};

function viewOf(slate?: SlateSpecBody, slopes: readonly SlopeBody[] = []): JobView {
  const job = emptyPart('job');
  const setting = <T>(value: T) => [{ id: '1', at: '', value }];
  return new Map([
    [
      'job',
      {
        ...job,
        spec: slate ? setting(slate) : [],
        slopes: Object.fromEntries(slopes.map((slope) => [slope.slopeId, setting(slope)]))
      }
    ]
  ]);
}

describe('the roof of a job', () => {
  it('says what is missing before a slate or a slope is entered', () => {
    expect(roofLayoutOf(EMPTY_VIEW)).toEqual({ ok: false, reason: 'no-slate' });
    expect(roofLayoutOf(viewOf(SLATE))).toEqual({ ok: false, reason: 'no-slopes' });
  });

  it('fills in what a slate leaves out with the customary value', () => {
    expect(slateSpecOf(viewOf(SLATE))).toMatchObject({
      slateAndAHalfWidthMm: 375,
      holeClearanceMm: 10,
      narrowestCutMm: 150,
      densityKgPerM3: 2800
    });
    const wide = { ...SLATE, slateAndAHalfWidthMm: 400, densityKgPerM3: undefined };
    expect(slateSpecOf(viewOf(wide))).toMatchObject({
      slateAndAHalfWidthMm: 400,
      densityKgPerM3: 2800
    });
  });

  it('gives every slope the overhangs of the job, and an edge without figures no inset', () => {
    expect(slopesForEngine(viewOf(SLATE, [SLOPE]))[0]).toMatchObject({
      id: 'south',
      eaveOverhangMm: 40,
      vergeOverhangMm: 60,
      ridgeGapMm: 25,
      setOutFrom: 'left',
      left: { kind: 'verge', insetAtTopMm: 0 },
      right: { kind: 'hip', planAngleDegrees: 45 }
    });
  });

  it('lays the roof out once for one state of the job', () => {
    const view = viewOf(SLATE, [SLOPE]);
    const roof = roofLayoutOf(view);
    if (!roof.ok) throw new Error(roof.reason);
    // rafter 5500 − ridge gap 25 − (slate 500 − overhang 40) = 5015; / 200 = 25.1, so 26 spaces
    expect(roof.slopes[0].spaces).toBe(26);
    expect(roof.slopes[0].gaugeMm).toBeCloseTo(5015 / 26, 12);
    expect(roof.demand).toHaveLength(28);
    expect(roofLayoutOf(view)).toBe(roof);
  });

  it('reports a pitch nobody gave as a problem of that field', () => {
    const roof = roofLayoutOf(viewOf(SLATE, [{ ...SLOPE, pitchDegrees: null }]));
    expect(roof).toMatchObject({
      problems: [{ slopeId: 'south', field: 'pitchDegrees', code: 'not-a-number' }]
    });
  });
});
