import type { FieldProblem } from './field-problem.ts';
import { type FieldRange, rangeProblems } from './field-problem.ts';
import type { Slope, SlopeEdge, SlopeInput } from './slope-shape.ts';
import { insetAtTopMm } from './slope-shape.ts';

/** Roofs that a job may start from; every measure can be changed afterwards. */
export const START_SHAPES = ['two-slope', 'hipped', 'l-with-valley', 'lean-to', 'cheeks'] as const;
/** The name of a roof to start from. */
export type StartShape = (typeof START_SHAPES)[number];

/** What a shape is drawn from: length along the eave, depth on plan from eave to eave, and pitch. */
export interface ShapeMeasures {
  readonly lengthMm: number;
  /** On plan: of the whole house; of a lean-to from eave to wall; of dormer cheeks their depth. */
  readonly depthMm: number;
  readonly pitchDegrees: number;
}

const RANGES: Readonly<Record<string, FieldRange>> = {
  lengthMm: { least: 500, most: 100_000 },
  depthMm: { least: 500, most: 100_000 },
  pitchDegrees: { least: 10, most: 80 }
};

/**
 * What keeps measures from being a roof; empty when nothing does. A hipped roof is at least as long as
 * it is deep, an L longer.
 *
 * @param measures mm and degrees, may hold NaN
 */
export function shapeProblems(shape: StartShape, measures: ShapeMeasures): FieldProblem[] {
  const problems = rangeProblems({ ...measures }, RANGES);
  const { lengthMm, depthMm } = measures;
  if (problems.length > 0 || (shape !== 'hipped' && shape !== 'l-with-valley')) return problems;
  return lengthMm >= depthMm
    ? []
    : [
        {
          field: 'lengthMm',
          code: 'too-small',
          value: lengthMm,
          limit: depthMm,
          nearest: depthMm
        }
      ];
}

const VERGE: SlopeEdge = { kind: 'verge', insetAtTopMm: 0 };
const WALL: SlopeEdge = { kind: 'abutment', insetAtTopMm: 0 };
const HIP: SlopeEdge = { kind: 'hip', planAngleDegrees: 45 };
const VALLEY: SlopeEdge = { kind: 'valley', planAngleDegrees: 45 };

/** Part of a slope that a shape says; who it is and what it is called comes with it. */
export type ShapeSlope = Omit<SlopeInput, 'id'> & { readonly part: ShapePart };
/** Which slope of a shape it is: a screen names it. */
export type ShapePart =
  | 'front'
  | 'back'
  | 'leftEnd'
  | 'rightEnd'
  | 'wingInner'
  | 'wingOuter'
  | 'leanTo'
  | 'leftCheek'
  | 'rightCheek';

/**
 * The slopes of a roof to start from, going round it so that the right side of one meets the left of the
 * next. All pitches are equal, so that hips and valleys lie at 45° on plan and the rafter is the run over
 * the cosine of the pitch.
 *
 * The L is a main range of the given length with a wing of its own depth in front of its right end,
 * reaching as far forward as the house is deep. A dormer's cheek is as deep as given and as high as the
 * main roof, of the given pitch, climbs on that depth.
 *
 * @param measures without problems
 * @returns slopes as they are entered; lengths in whole mm
 * Source: geometry identity: run = half the depth, rafter = run ÷ cos pitch; equal pitches meet at 45° on plan.
 * @example
 * // hipped, 10 × 7 m at 35°: two slopes of 10 m and two ends of 7 m, all rafters 4273 mm
 */
export function startShape(shape: StartShape, measures: ShapeMeasures): ShapeSlope[] {
  const { lengthMm, depthMm, pitchDegrees } = measures;
  const pitch = (pitchDegrees * Math.PI) / 180;
  const rafterOf = (runMm: number) => Math.round(runMm / Math.cos(pitch));
  const rafterLengthMm = rafterOf(depthMm / 2);
  const slope = (
    part: ShapePart,
    eaveWidthMm: number,
    left: SlopeEdge,
    right: SlopeEdge
  ): ShapeSlope => ({ part, eaveWidthMm, left, right, rafterLengthMm, pitchDegrees });
  switch (shape) {
    case 'two-slope':
      return [slope('front', lengthMm, VERGE, VERGE), slope('back', lengthMm, VERGE, VERGE)];
    case 'hipped':
      return [
        slope('front', lengthMm, HIP, HIP),
        slope('rightEnd', depthMm, HIP, HIP),
        slope('back', lengthMm, HIP, HIP),
        slope('leftEnd', depthMm, HIP, HIP)
      ];
    case 'l-with-valley':
      return [
        slope('front', lengthMm - depthMm, VERGE, VALLEY),
        slope('wingInner', depthMm, VALLEY, VERGE),
        slope('wingOuter', 2 * depthMm, VERGE, HIP),
        slope('back', lengthMm, HIP, VERGE)
      ];
    case 'lean-to':
      return [{ ...slope('leanTo', lengthMm, VERGE, VERGE), rafterLengthMm: rafterOf(depthMm) }];
    case 'cheeks': {
      const foot = { pitchDegrees: 90, rafterLengthMm: Math.round(depthMm * Math.tan(pitch)) };
      const narrow = Math.min(NARROWEST_FOOT_MM, depthMm);
      const back: SlopeEdge = { kind: 'abutment', insetAtTopMm: -Math.round(depthMm - narrow) };
      return [
        { ...slope('leftCheek', narrow, back, WALL), ...foot },
        { ...slope('rightCheek', narrow, WALL, back), ...foot }
      ];
    }
  }
}

/** A cheek runs out to nothing at its foot; it is drawn as wide as the widest usual slate there. Ours. */
const NARROWEST_FOOT_MM = 300;

/**
 * The slope round a hip or valley of another: the same rafter, pitch, height of eave, gauge line and
 * overhangs, meeting it at the same angle, so that courses of equal pitches are equal.
 *
 * Round a hip it is a hipped end, as wide as both hips need to meet on the ridge; round a valley as wide
 * as the slope it comes from, up to a verge. Every measure can be changed.
 *
 * @param slope sound; not modified
 * @param side its hip or valley; undefined comes back for any other edge
 */
export function slopeRound(
  slope: Slope,
  side: 'left' | 'right'
): Omit<SlopeInput, 'id' | 'name'> | undefined {
  const edge = slope[side];
  if (edge.kind !== 'hip' && edge.kind !== 'valley') return undefined;
  const run = slope.rafterLengthMm * Math.cos((slope.pitchDegrees * Math.PI) / 180);
  const inset = insetAtTopMm(slope, edge);
  // Of equal pitches each moves in by the run of the other; on plan the angles add up to the corner.
  const shared: SlopeEdge =
    'planAngleDegrees' in edge
      ? { kind: edge.kind, planAngleDegrees: edge.planAngleDegrees }
      : { kind: edge.kind, insetAtTopMm: inset };
  const other: SlopeEdge = edge.kind === 'hip' ? { ...shared } : { ...VERGE };
  const movedMm = 'planAngleDegrees' in edge ? Math.abs(inset) : Math.abs(inset) || run;
  return {
    rafterLengthMm: slope.rafterLengthMm,
    pitchDegrees: slope.pitchDegrees,
    eaveHeightMm: slope.eaveHeightMm,
    ridgeGapMm: slope.ridgeGapMm,
    eaveOverhangMm: slope.eaveOverhangMm,
    vergeOverhangMm: slope.vergeOverhangMm,
    eaveWidthMm: edge.kind === 'hip' ? Math.round(2 * movedMm) : slope.eaveWidthMm,
    left: side === 'right' ? shared : other,
    right: side === 'right' ? other : shared
  };
}
