import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec } from './index.ts';
import {
  START_SHAPES,
  type StartShape,
  shapeProblems,
  slopeRound,
  startShape
} from './start-shapes.ts';

const spec = slateSpec({ lengthMm: 400, widthMm: 200, headlapMm: 80 });
const MEASURES = { lengthMm: 12_000, depthMm: 7000, pitchDegrees: 35 };

function roofOf(shape: StartShape, measures = MEASURES) {
  const roof = layOutRoof(
    startShape(shape, measures).map(({ part, ...slope }) =>
      makeSlope({ id: part, ...slope, eaveOverhangMm: 0, vergeOverhangMm: 0 })
    ),
    spec
  );
  if (!roof.ok) throw new Error(JSON.stringify(roof.problems));
  return roof;
}

describe('a roof to start from', () => {
  it.each(START_SHAPES)('%s can be laid out as it is', (shape) => {
    expect(roofOf(shape).totals.slates).toBeGreaterThan(0);
  });

  // The area of any roof of one pitch is its area on plan over the cosine of the pitch (identity:
  // a plane at an angle to another is 1 ÷ cosine of what it stands over).
  it.each([
    ['two-slope', 12_000 * 7000],
    ['hipped', 12_000 * 7000],
    ['l-with-valley', 12_000 * 7000 + 7000 * 7000],
    ['lean-to', 12_000 * 7000]
  ] as const)('%s covers its plan, over the cosine of the pitch', (shape, planMm2) => {
    const area = planMm2 / Math.cos((35 * Math.PI) / 180) / 1e6;
    expect(roofOf(shape).totals.areaM2 / area).toBeCloseTo(1, 3); // rafters are whole mm
  });

  it('the slopes of each join where they should', () => {
    const kinds = (shape: StartShape) =>
      roofOf(shape)
        .joins.map(({ kind, one, other }) => `${kind} ${one}-${other}`)
        .sort();
    expect(kinds('hipped')).toEqual([
      'hip back-leftEnd',
      'hip front-rightEnd',
      'hip leftEnd-front',
      'hip rightEnd-back',
      'ridge front-back'
    ]);
    expect(kinds('two-slope')).toEqual(['ridge front-back']);
    expect(kinds('l-with-valley')).toContain('valley front-wingInner');
    expect(kinds('l-with-valley')).toContain('hip wingOuter-back');
    expect(roofOf('l-with-valley').meetings.every(({ isLevel }) => isLevel)).toBe(true);
  });

  it('a hipped roof joins round its corners in whatever order its slopes are listed', () => {
    const slopes = startShape('hipped', MEASURES)
      .map(({ part, ...slope }) => makeSlope({ id: part, ...slope }))
      .sort((one, other) => (one.id < other.id ? -1 : 1));
    const roof = layOutRoof(slopes, spec);
    if (!roof.ok) throw new Error('refused');
    expect(roof.joins.map(({ kind, one, other }) => `${kind} ${one}-${other}`).sort()).toEqual([
      'hip back-leftEnd',
      'hip front-rightEnd',
      'hip leftEnd-front',
      'hip rightEnd-back',
      'ridge back-front'
    ]);
  });

  // Hip at 45° on plan: run 3500, so on plan 3500√2, and as high as the ridge: √(2 run² + rise²).
  it('a hip is as long as the diagonal of its run and rise', () => {
    const rise = 3500 * Math.tan((35 * Math.PI) / 180);
    const hips = roofOf('hipped').joins.filter(({ kind }) => kind === 'hip');
    for (const { lengthMm } of hips)
      expect(lengthMm).toBeCloseTo(Math.sqrt(2 * 3500 ** 2 + rise ** 2), -1);
  });

  it('a hip of 12 in 12 is 20.78 in for each foot of run: the diagonal of a cube (Euclid XIII 15)', () => {
    const roof = roofOf('hipped', { lengthMm: 12_000, depthMm: 2 * 3048, pitchDegrees: 45 });
    const hip = roof.joins.find(({ kind }) => kind === 'hip')!;
    const perFoot = hip.lengthMm / 10; // run of 10 ft
    expect(perFoot / 25.4).toBeCloseTo(Math.sqrt(3) * 12, 2); // √(12² + 12² + 12²) = 20.785
  });

  it('measures that are no roof are refused beside the field', () => {
    const code = (shape: StartShape, given: Partial<typeof MEASURES>) =>
      shapeProblems(shape, { ...MEASURES, ...given }).map((problem) => [
        problem.field,
        problem.code
      ]);
    expect(code('hipped', { lengthMm: 5000 })).toEqual([['lengthMm', 'too-small']]);
    expect(code('two-slope', { lengthMm: 5000 })).toEqual([]);
    expect(code('two-slope', { pitchDegrees: 0 })).toEqual([['pitchDegrees', 'too-small']]);
    expect(code('two-slope', { pitchDegrees: 90 })).toEqual([['pitchDegrees', 'too-large']]);
    expect(code('lean-to', { depthMm: Number.NaN })).toEqual([['depthMm', 'not-a-number']]);
  });
});

describe('the slope round a hip', () => {
  it('copies rafter, pitch, gauge line and level, and joins at once', () => {
    const front = makeSlope({
      id: 'front',
      rafterLengthMm: 4273,
      eaveWidthMm: 12_000,
      pitchDegrees: 35,
      eaveHeightMm: 300,
      ridgeGapMm: 40,
      left: { kind: 'hip', planAngleDegrees: 45 },
      right: { kind: 'hip', planAngleDegrees: 45 }
    });
    const round = slopeRound(front, 'right');
    const roof = layOutRoof([front, makeSlope({ id: 'end', ...round! })], spec);
    if (!roof.ok) throw new Error(JSON.stringify(roof.problems));
    const [one, other] = roof.slopes;
    expect(roof.joins[0]).toMatchObject({ kind: 'hip', one: 'front', other: 'end' });
    expect(other.gaugeMm).toBe(one.gaugeMm);
    expect(other.courses.map(({ heightMm }) => heightMm)).toEqual(
      one.courses.map(({ heightMm }) => heightMm)
    );
    expect(roof.meetings[0]).toMatchObject({ isLevel: true, missMm: 0 });
  });

  it('nothing goes round a verge', () => {
    const gable = makeSlope({ id: 'a', rafterLengthMm: 4000, eaveWidthMm: 6000, pitchDegrees: 35 });
    expect(slopeRound(gable, 'left')).toBeUndefined();
  });
});
