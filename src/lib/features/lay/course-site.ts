import { type SlateSpec, type SlopeLayout, filledMm, sideLapOfRandom } from '$lib/engine/roof';

/** What a course is set out by, where the slater stands. */
export interface CourseSite {
  /** Centre line of its batten up the rafter from the eave; undefined for one that has none of its own. */
  readonly battenMm?: number;
  /** The ends at which it takes a slate-and-a-half. */
  readonly wideAt: 'left' | 'right' | 'both' | 'none';
  /** Of random widths: what the course fills, and what to lay it by, mm. */
  readonly random?: {
    readonly fillMm: number;
    readonly sideLapMm: number;
    readonly lookForMm: number;
  };
}

/** Where a course of a slope lies and how it begins and ends; undefined where the slope has none. */
export function courseSite(
  laid: SlopeLayout,
  spec: SlateSpec,
  number: number
): CourseSite | undefined {
  const course = laid.courses.find((one) => one.course === number);
  if (!course) return undefined;
  const batten = laid.battens.find((one) => one.batten === number);
  const isWide = (end: 0 | -1): boolean =>
    course.runs.at(end)?.pieces.at(end)?.kind === 'slate-and-a-half';
  const [left, right] = [isWide(0), isWide(-1)];
  return {
    ...(batten && { battenMm: batten.fromEaveMm }),
    wideAt: left && right ? 'both' : left ? 'left' : right ? 'right' : 'none',
    ...(spec.randomWidths && {
      random: {
        ...sideLapOfRandom(spec),
        fillMm: filledMm(course)
      }
    })
  };
}
