import { describe, expect, it } from 'vitest';
import type { FieldProblem } from './field-problem.ts';
import { slateSpec } from './slate-spec.ts';
import { slopeProblems } from './slope-problems.ts';
import { type Opening, type Slope, type SlopeEdge, makeSlope } from './slope-shape.ts';

const SPEC = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const hip = (insetAtTopMm: number): SlopeEdge => ({ kind: 'hip', insetAtTopMm });
const opening = (given: Partial<Opening> = {}): Opening => ({
  kind: 'rooflight',
  fromLeftMm: 1000,
  widthMm: 800,
  fromEaveMm: 1000,
  heightMm: 1200,
  ...given
});

function slope(given: Partial<Slope> = {}): Slope {
  return makeSlope({
    id: 'one',
    rafterLengthMm: 4000,
    eaveWidthMm: 6000,
    pitchDegrees: 35,
    ...given
  });
}

/** The slope with the field of a problem at its nearest value. */
function repaired(given: Slope, { field, nearest }: FieldProblem): Slope {
  const copy = structuredClone(given);
  const path = field.split('.');
  let holder = copy as unknown as Record<string, unknown>;
  for (const step of path.slice(0, -1)) holder = holder[step] as Record<string, unknown>;
  holder[path[path.length - 1]] = nearest;
  return copy;
}

describe('slopeProblems', () => {
  it('finds none in sound slopes, hips that meet exactly at the ridge among them', () => {
    expect(slopeProblems(slope(), SPEC)).toEqual([]);
    expect(slopeProblems(slope({ left: hip(3000), right: hip(3000) }), SPEC)).toEqual([]);
    expect(slopeProblems(slope({ openings: [opening()] }), SPEC)).toEqual([]);
  });

  it.each<[string, Partial<Slope>, string, string, number]>([
    ['no rafter at all', { rafterLengthMm: 0 }, 'rafterLengthMm', 'no-course', 475],
    ['no width at all', { eaveWidthMm: 0 }, 'eaveWidthMm', 'narrower-than-slate', 150],
    ['a negative width', { eaveWidthMm: -3 }, 'eaveWidthMm', 'narrower-than-slate', 150],
    ['a negative rafter', { rafterLengthMm: -3 }, 'rafterLengthMm', 'no-course', 475],
    [
      'a rafter too short for a course',
      { rafterLengthMm: 474 },
      'rafterLengthMm',
      'no-course',
      475
    ],
    ['a width that overflows', { eaveWidthMm: 1e300 }, 'eaveWidthMm', 'too-large', 100_000],
    ['a slope below one slate', { eaveWidthMm: 100 }, 'eaveWidthMm', 'narrower-than-slate', 150],
    ['a pitch beyond upright', { pitchDegrees: 120 }, 'pitchDegrees', 'too-large', 90],
    [
      'hips that close before the ridge',
      { left: hip(4000), right: hip(2500) },
      'left.insetAtTopMm',
      'closes-before-ridge',
      3500
    ],
    [
      'hips by plan angle that close before the ridge',
      {
        left: { kind: 'hip', planAngleDegrees: 30 },
        right: { kind: 'hip', planAngleDegrees: 80 }
      },
      'left.planAngleDegrees',
      'closes-before-ridge',
      31.2
    ],
    ['a hip that turns outwards', { right: hip(-700) }, 'right.insetAtTopMm', 'wrong-way', 700],
    [
      'a valley that turns inwards',
      { right: { kind: 'valley', insetAtTopMm: 700 } },
      'right.insetAtTopMm',
      'wrong-way',
      -700
    ],
    [
      'an opening past the ridge',
      { openings: [opening({ fromEaveMm: 3500 })] },
      'openings.0.heightMm',
      'outside-slope',
      500
    ],
    [
      'an opening above the ridge',
      { openings: [opening({ fromEaveMm: 5000 })] },
      'openings.0.fromEaveMm',
      'outside-slope',
      2800
    ],
    [
      'an opening past the right side',
      { openings: [opening({ fromLeftMm: 5500 })] },
      'openings.0.widthMm',
      'outside-slope',
      500
    ],
    [
      'an opening outside on the right',
      { openings: [opening({ fromLeftMm: 7000 })] },
      'openings.0.fromLeftMm',
      'outside-slope',
      5200
    ],
    [
      'an opening across a hip',
      { left: hip(3000), openings: [opening()] },
      'openings.0.fromLeftMm',
      'outside-slope',
      1650
    ],
    [
      'an opening over another',
      { openings: [opening(), opening({ fromLeftMm: 1500 })] },
      'openings.1.fromLeftMm',
      'overlaps-opening',
      1800
    ]
  ])(
    'refuses %s beside the field, and the nearest value works',
    (_, change, field, code, nearest) => {
      const given = slope(change);
      const problems = slopeProblems(given, SPEC);
      expect(problems).toHaveLength(1);
      expect(problems[0]).toMatchObject({ field, code });
      expect(problems[0].nearest).toBeCloseTo(nearest, 9);
      expect(
        slopeProblems(repaired(given, problems[0]), SPEC).filter((one) => one.field === field)
      ).toEqual([]);
    }
  );

  it('names every field that is no number, and judges nothing else yet', () => {
    const problems = slopeProblems(
      slope({ rafterLengthMm: Number.NaN, left: hip(Number.NaN) }),
      SPEC
    );
    expect(problems).toEqual([
      { field: 'rafterLengthMm', code: 'not-a-number', value: null },
      { field: 'left.insetAtTopMm', code: 'not-a-number', value: null }
    ]);
  });

  it('offers no nearest value where none works', () => {
    const wide = opening({ widthMm: 9000, fromLeftMm: -100 });
    const [problem] = slopeProblems(slope({ openings: [wide] }), SPEC);
    expect(problem).toMatchObject({ field: 'openings.0.fromLeftMm', code: 'outside-slope' });
    expect('nearest' in problem).toBe(false);
  });
});
