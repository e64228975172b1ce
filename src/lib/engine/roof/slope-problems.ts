import { layBonds } from './bonds.ts';
import { leastRafterLengthMm } from './courses.ts';
import { type FieldProblem, type FieldRange, rangeProblems } from './field-problem.ts';
import { maximumGaugeMm } from './gauge.ts';
import { asMeasured, outOfSquareProblems } from './out-of-square.ts';
import type { SlateSpec } from './slate-spec.ts';
import {
  MEETING_MM,
  type Slope,
  type SlopeEdge,
  insetAtTopMm,
  isSquare,
  leftAtMm,
  rightAtMm
} from './slope-shape.ts';

/** Widest and longest slope taken, mm: a hundred metres, ours. */
const LONGEST_MM = 100_000;

const RANGES: Readonly<Record<string, FieldRange>> = {
  // How short and narrow a slope may be depends on the slate: see sizeProblems.
  rafterLengthMm: { least: -Infinity, most: LONGEST_MM },
  eaveWidthMm: { least: -Infinity, most: LONGEST_MM },
  pitchDegrees: { least: 1, most: 90 },
  eaveHeightMm: { least: 0, most: LONGEST_MM },
  eaveOverhangMm: { least: 0, most: 150 },
  vergeOverhangMm: { least: 0, most: 150 },
  ridgeGapMm: { least: 0, most: 300 },
  rafterLeftMm: { least: 0, most: LONGEST_MM },
  rafterRightMm: { least: 0, most: LONGEST_MM },
  ridgeWidthMm: { least: 0, most: LONGEST_MM },
  diagonalMm: { least: 0, most: 2 * LONGEST_MM },
  'left.planAngleDegrees': { least: 10, most: 90 },
  'right.planAngleDegrees': { least: 10, most: 90 },
  'left.insetAtTopMm': { least: -LONGEST_MM, most: LONGEST_MM },
  'right.insetAtTopMm': { least: -LONGEST_MM, most: LONGEST_MM }
};

/**
 * Everything that keeps a slope from being laid out with a slate, field by field; empty when
 * nothing does.
 *
 * @param slope as typed; not modified; may hold NaN
 * @param spec a slate without problems of its own
 * @returns plain fields first; then a rafter too short for one course or a slope narrower than one
 * slate; then a hip that turns outwards or a valley that turns inwards; then hips that close before
 * the ridge; then openings outside the slope or over each other; then square sides between which no
 * bond breaks joint. Each kind is judged only when the kinds before it are put right
 *
 * The nearest value is whole mm (tenths of a degree), rounded to the side that works.
 * @example
 * const slope = makeSlope({ id: 'a', rafterLengthMm: 300, eaveWidthMm: 6000, pitchDegrees: 35 });
 * slopeProblems(slope, slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 }));
 * // [{ field: 'rafterLengthMm', code: 'no-course', value: 300, limit: 475, nearest: 475 }]
 */
export function slopeProblems(slope: Slope, spec: SlateSpec): FieldProblem[] {
  const problems = rangeProblems(plainNumbers(slope), RANGES);
  if (problems.length > 0) return problems;
  for (const find of FINDERS) {
    problems.push(...find(slope, spec));
    if (problems.length > 0) return problems;
  }
  return problems;
}

/** Each judges what those before it found sound. */
const FINDERS: readonly ((slope: Slope, spec: SlateSpec) => FieldProblem[])[] = [
  sizeProblems,
  edgeProblems,
  closingProblems,
  openingProblems,
  (slope, spec) => outOfSquareProblems(slope, maximumGaugeMm(spec)),
  (slope, spec) => bondProblems(asMeasured(slope), spec)
];

function plainNumbers(slope: Slope): Record<string, number> {
  const numbers: Record<string, number> = {
    rafterLengthMm: slope.rafterLengthMm,
    eaveWidthMm: slope.eaveWidthMm,
    pitchDegrees: slope.pitchDegrees,
    eaveHeightMm: slope.eaveHeightMm,
    eaveOverhangMm: slope.eaveOverhangMm,
    vergeOverhangMm: slope.vergeOverhangMm,
    ridgeGapMm: slope.ridgeGapMm,
    rafterLeftMm: slope.rafterLeftMm,
    rafterRightMm: slope.rafterRightMm,
    ridgeWidthMm: slope.ridgeWidthMm,
    diagonalMm: slope.diagonalMm
  };
  for (const side of ['left', 'right'] as const) {
    const edge = slope[side];
    if ('insetAtTopMm' in edge) numbers[`${side}.insetAtTopMm`] = edge.insetAtTopMm;
    else numbers[`${side}.planAngleDegrees`] = edge.planAngleDegrees;
  }
  for (const [index, opening] of slope.openings.entries()) {
    numbers[`openings.${index}.fromLeftMm`] = opening.fromLeftMm;
    numbers[`openings.${index}.widthMm`] = opening.widthMm;
    numbers[`openings.${index}.fromEaveMm`] = opening.fromEaveMm;
    numbers[`openings.${index}.heightMm`] = opening.heightMm;
  }
  return numbers;
}

/** A hip moves inwards, a valley outwards. */
function edgeProblems(slope: Slope): FieldProblem[] {
  const problems: FieldProblem[] = [];
  for (const side of ['left', 'right'] as const) {
    const edge = slope[side];
    if (!('insetAtTopMm' in edge)) continue;
    const value = edge.insetAtTopMm;
    const isWrong = (edge.kind === 'hip' && value < 0) || (edge.kind === 'valley' && value > 0);
    if (isWrong)
      problems.push({
        field: `${side}.insetAtTopMm`,
        code: 'wrong-way',
        value,
        limit: 0,
        nearest: -value
      });
  }
  return problems;
}

/** The edges may meet at the ridge but not below it, give or take the error of a tape. */
function closingProblems(slope: Slope): FieldProblem[] {
  const insets = {
    left: insetAtTopMm(slope, slope.left),
    right: insetAtTopMm(slope, slope.right)
  };
  if (insets.left + insets.right <= slope.eaveWidthMm + MEETING_MM) return [];
  const side = insets.left >= insets.right ? 'left' : 'right';
  const other = side === 'left' ? 'right' : 'left';
  const mostMm = slope.eaveWidthMm - insets[other];
  const edge = slope[side];
  return [
    'insetAtTopMm' in edge
      ? {
          field: `${side}.insetAtTopMm`,
          code: 'closes-before-ridge',
          value: edge.insetAtTopMm,
          limit: mostMm,
          ...(mostMm >= 0 && { nearest: Math.floor(mostMm) })
        }
      : {
          field: `${side}.planAngleDegrees`,
          code: 'closes-before-ridge',
          value: edge.planAngleDegrees,
          ...leastAngle(slope, edge, mostMm)
        }
  ];
}

/** The smallest angle on plan, to a tenth of a degree upwards, that keeps an edge within an inset. */
function leastAngle(
  slope: Slope,
  edge: SlopeEdge,
  mostMm: number
): Pick<FieldProblem, 'limit' | 'nearest'> {
  const insetAt90 = insetAtTopMm(slope, { kind: edge.kind, planAngleDegrees: 90 });
  if (mostMm < insetAt90) return {};
  const insetAt45 = insetAtTopMm(slope, { kind: edge.kind, planAngleDegrees: 45 });
  const limit = mostMm === 0 ? 90 : (Math.atan(insetAt45 / mostMm) * 180) / Math.PI;
  return { limit, nearest: Math.min(90, Math.ceil(limit * 10) / 10) };
}

function sizeProblems(slope: Slope, spec: SlateSpec): FieldProblem[] {
  const problems: FieldProblem[] = [];
  const leastMm = leastRafterLengthMm(spec, slope);
  if (slope.rafterLengthMm < leastMm)
    problems.push({
      field: 'rafterLengthMm',
      code: 'no-course',
      value: slope.rafterLengthMm,
      limit: leastMm,
      nearest: Math.ceil(leastMm)
    });
  const overhangs = [slope.left, slope.right].filter((edge) => edge.kind === 'verge').length;
  const slatedMm = slope.eaveWidthMm + overhangs * slope.vergeOverhangMm;
  if (slatedMm < spec.widthMm) {
    const limit = slope.eaveWidthMm + spec.widthMm - slatedMm;
    problems.push({
      field: 'eaveWidthMm',
      code: 'narrower-than-slate',
      value: slope.eaveWidthMm,
      limit,
      nearest: Math.ceil(limit)
    });
  }
  return problems;
}

/** Between two square sides the joints of neighbouring courses keep the side lap asked for. */
function bondProblems(slope: Slope, spec: SlateSpec): FieldProblem[] {
  if (!isSquare(slope, slope.left) || !isSquare(slope, slope.right)) return [];
  const slatedMm = rightAtMm(slope, 0) - leftAtMm(slope, 0);
  const { isSound, nearestWholeWidthMm } = layBonds(slatedMm, spec);
  if (isSound) return [];
  const limit = slope.eaveWidthMm + nearestWholeWidthMm - slatedMm;
  return [{ field: 'eaveWidthMm', code: 'joints-too-close', value: slope.eaveWidthMm, limit }];
}

/** Openings lie inside the slope without its overhangs, and apart from each other. */
function openingProblems(slope: Slope): FieldProblem[] {
  const problems: FieldProblem[] = [];
  for (const [index, opening] of slope.openings.entries()) {
    const { fromLeftMm, widthMm, fromEaveMm, heightMm } = opening;
    const add = (
      name: keyof typeof opening,
      value: number,
      limit: number,
      nearest?: number,
      code: FieldProblem['code'] = 'outside-slope'
    ) =>
      problems.push({
        field: `openings.${index}.${name}`,
        code,
        value,
        limit,
        ...(nearest !== undefined && { nearest })
      });
    const before = problems.length;
    if (widthMm < 1) add('widthMm', widthMm, 1, 1, 'too-small');
    if (heightMm < 1) add('heightMm', heightMm, 1, 1, 'too-small');
    if (fromEaveMm < 0) add('fromEaveMm', fromEaveMm, 0, 0);
    else if (fromEaveMm + heightMm > slope.rafterLengthMm) {
      const limit = slope.rafterLengthMm - fromEaveMm;
      if (limit >= 1) add('heightMm', heightMm, limit, Math.floor(limit));
      else {
        const highest = slope.rafterLengthMm - heightMm;
        add('fromEaveMm', fromEaveMm, highest, highest >= 0 ? Math.floor(highest) : undefined);
      }
    }
    if (problems.length > before) continue;

    const topMm = fromEaveMm + heightMm;
    const leftLimit = Math.max(sideMm(slope, 'left', fromEaveMm), sideMm(slope, 'left', topMm));
    const rightLimit = Math.min(sideMm(slope, 'right', fromEaveMm), sideMm(slope, 'right', topMm));
    const mostWidth = rightLimit - fromLeftMm;
    const furthest = rightLimit - widthMm;
    if (fromLeftMm < leftLimit)
      add(
        'fromLeftMm',
        fromLeftMm,
        leftLimit,
        furthest >= Math.ceil(leftLimit) ? Math.ceil(leftLimit) : undefined
      );
    else if (mostWidth < 1)
      add(
        'fromLeftMm',
        fromLeftMm,
        furthest,
        Math.floor(furthest) >= leftLimit ? Math.floor(furthest) : undefined
      );
    else if (widthMm > mostWidth) add('widthMm', widthMm, mostWidth, Math.floor(mostWidth));
    if (problems.length > before) continue;

    const others = slope.openings.filter((_, other) => other !== index);
    const over = slope.openings.slice(0, index).find((earlier) => overlaps(earlier, opening));
    if (over) {
      const beside = others
        .flatMap((other) => [other.fromLeftMm + other.widthMm, other.fromLeftMm - widthMm])
        .filter((left) => left >= leftLimit && left + widthMm <= rightLimit)
        .filter(
          (left) => !others.some((other) => overlaps(other, { ...opening, fromLeftMm: left }))
        )
        .sort((one, other) => Math.abs(one - fromLeftMm) - Math.abs(other - fromLeftMm));
      const limit = over.fromLeftMm + over.widthMm;
      add('fromLeftMm', fromLeftMm, limit, beside[0], 'overlaps-opening');
    }
  }
  return problems;
}

/** A side of the roof itself, without overhang. */
function sideMm(slope: Slope, side: 'left' | 'right', fromEaveMm: number): number {
  const bare = { ...slope, vergeOverhangMm: 0 };
  return side === 'left' ? leftAtMm(bare, fromEaveMm) : rightAtMm(bare, fromEaveMm);
}

function overlaps(one: Slope['openings'][number], other: Slope['openings'][number]): boolean {
  return (
    one.fromLeftMm < other.fromLeftMm + other.widthMm &&
    other.fromLeftMm < one.fromLeftMm + one.widthMm &&
    one.fromEaveMm < other.fromEaveMm + other.heightMm &&
    other.fromEaveMm < one.fromEaveMm + one.heightMm
  );
}
