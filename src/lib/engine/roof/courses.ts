import { EngineError } from '../errors.ts';
import { equalGauge, headlapAtGaugeMm, maximumGaugeMm, tailToBattenMm } from './gauge.ts';
import type { SlateSpec } from './slate-spec.ts';
import type { Slope } from './slope-shape.ts';

/** One course of slates as it lies on the rafter. All distances up the rafter from the eave, mm. */
export interface CourseLine {
  /** 1 at the eave, rising to the ridge. */
  readonly course: number;
  /** A full course has slates of full length; the top course is cut to the undereave's length. */
  readonly kind: 'full' | 'top';
  readonly tailMm: number;
  readonly headMm: number;
  /** Centre line of the batten that carries its head. */
  readonly battenMm: number;
  /** What shows: up to the next course's tail, or to the ridge line. */
  readonly marginMm: number;
  readonly slateLengthMm: number;
  /** Height of the tails above the lowest eave of the job. */
  readonly heightMm: number;
}

/** Centre line of one batten. */
export interface BattenLine {
  /** 0 carries the undereave slates; batten n carries the heads of course n. */
  readonly batten: number;
  readonly fromEaveMm: number;
  /** From the undereave's batten, as marked along a gauge rod. */
  readonly fromFirstMm: number;
  /** From the batten before it; 0 for the first. */
  readonly stepMm: number;
}

/** The courses of one slope. */
export interface CourseSetOut {
  readonly maximumGaugeMm: number;
  readonly gaugeMm: number;
  readonly headlapMm: number;
  /** Headlap above what was asked for. */
  readonly headlapGainedMm: number;
  readonly fixingLengthMm: number;
  /** Equal spaces between the batten of course 1 and the top batten. */
  readonly spaces: number;
  readonly undereaveLengthMm: number;
  readonly courses: readonly CourseLine[];
  readonly battens: readonly BattenLine[];
}

/**
 * The shortest rafter that takes one full course: the slate's fixing length, less the eave
 * overhang, plus the gap at the ridge.
 */
export function leastRafterLengthMm(
  spec: SlateSpec,
  slope: Pick<Slope, 'eaveOverhangMm' | 'ridgeGapMm'>
): number {
  return tailToBattenMm(spec) - slope.eaveOverhangMm + slope.ridgeGapMm;
}

/**
 * Sets out the courses of a slope: exact batten lines, tails, heads and margins.
 *
 * The first course's tail lies on the undereave's tail, past the eave line by the overhang. The
 * length from its batten to the top batten is divided into the least whole number of equal spaces,
 * none above the maximum gauge. Every batten carries the heads of one full course, the undereave's
 * batten one gauge below. Above the last full course lies the top course: slates cut to the
 * undereave's length, heads on the same top batten, so that two thicknesses reach right up to it;
 * its margin runs to the ridge line and the ridge covers the upper part of it.
 *
 * @param slope sound, see `slopeProblems`; not modified
 * @param spec sound slate
 * @param leastSpaces spaces of a slope that it meets at a hip or valley, so that both have as many
 * @returns courses eave to ridge and battens upwards; n spaces give n + 1 full courses and the top
 * course. A centre-nailed head lies on its batten's centre line, a head-nailed slate's nails do
 *
 * Accuracy: each line is computed from the eave, so errors do not add up along the rafter.
 * Source: gauge from Building Construction, part 1; short top course is common practice, no source.
 * @throws EngineError `out-of-range` for a rafter too short for one full course
 * @example
 * // 500 mm slate, headlap 100, rafter 5500, overhang 50, ridge gap 25: fixing length 5025,
 * // 26 spaces of 193.27 mm, 27 full courses and the top course
 */
export function setOutCourses(slope: Slope, spec: SlateSpec, leastSpaces = 0): CourseSetOut {
  const maximumMm = maximumGaugeMm(spec);
  const firstTailMm = -slope.eaveOverhangMm;
  const firstBattenMm = firstTailMm + tailToBattenMm(spec);
  const fixingLengthMm = slope.rafterLengthMm - slope.ridgeGapMm - firstBattenMm;
  if (fixingLengthMm < 0)
    throw new EngineError(
      'out-of-range',
      `rafter is ${slope.rafterLengthMm} mm; one course needs ${leastRafterLengthMm(spec, slope)} mm`
    );

  const own = equalGauge(fixingLengthMm, maximumMm);
  const spaces = own.spaces === 0 ? 0 : Math.max(own.spaces, leastSpaces);
  const gaugeMm = spaces === 0 ? own.gaugeMm : fixingLengthMm / spaces;
  const shortLengthMm = spec.lengthMm - gaugeMm;
  const rise = Math.sin((slope.pitchDegrees * Math.PI) / 180);
  const courses: CourseLine[] = [];
  for (let course = 1; course <= spaces + 2; course++) {
    const isTop = course === spaces + 2;
    const climbedMm = (course - 1) * gaugeMm;
    const tailMm = firstTailMm + climbedMm;
    const slateLengthMm = isTop ? shortLengthMm : spec.lengthMm;
    courses.push({
      course,
      kind: isTop ? 'top' : 'full',
      tailMm,
      headMm: tailMm + slateLengthMm,
      battenMm: firstBattenMm + (isTop ? spaces * gaugeMm : climbedMm),
      marginMm: isTop ? slope.rafterLengthMm - tailMm : gaugeMm,
      slateLengthMm,
      heightMm: slope.eaveHeightMm + climbedMm * rise
    });
  }
  const battens: BattenLine[] = [];
  for (let batten = 0; batten <= spaces + 1; batten++)
    battens.push({
      batten,
      fromEaveMm: firstBattenMm + (batten - 1) * gaugeMm,
      fromFirstMm: batten * gaugeMm,
      stepMm: batten === 0 ? 0 : gaugeMm
    });
  const headlapMm = headlapAtGaugeMm(spec, gaugeMm);
  return {
    maximumGaugeMm: maximumMm,
    gaugeMm,
    headlapMm,
    headlapGainedMm: headlapMm - spec.headlapMm,
    fixingLengthMm,
    spaces,
    undereaveLengthMm: shortLengthMm,
    courses,
    battens
  };
}
