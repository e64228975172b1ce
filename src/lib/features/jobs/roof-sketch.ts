import { insetAtTopMm } from '$lib/engine/roof';
import { type JobView, type SlopeBody, current, partOf } from '$lib/journal';
import { slopesOf, stockOf } from '$lib/job';

/** One slope of the sketch; all in mm, y down from the ridge. */
export interface SlopeSketch {
  readonly id: string;
  /** Where the slope's eave begins in the sketch. */
  readonly fromMm: number;
  readonly topMm: number;
  readonly outline: string;
  readonly bands: readonly {
    readonly course: number;
    readonly pile: number;
    readonly path: string;
  }[];
  readonly openings: SlopeBody['openings'];
  readonly rafterLengthMm: number;
}

export interface RoofSketch {
  /** The numbers of the piles, thickest first. */
  readonly piles: readonly number[];
  readonly slopes: readonly SlopeSketch[];
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Between two slopes, mm. */
const GAP_MM = 300;

/**
 * The slopes of a job side by side on one ground line, as entered, each course of the plan a band of
 * equal height in its pile. A sketch to know the roof by: overhangs, lap and what a course really
 * shows are for Roof and Courses, whose rules of the roof it does without.
 */
export function sketchRoof(view: JobView): RoofSketch {
  const bodies = slopesOf(view);
  const planned = current(partOf(view, 'plans').plans)?.courses ?? [];
  const piles = stockOf(view).piles.map(({ number }) => number);
  const heightMm = Math.max(1, ...bodies.map(({ rafterLengthMm }) => rafterLengthMm));
  let endMm = 0;
  const slopes = bodies.map((body): SlopeSketch => {
    const { slopeId, rafterLengthMm, eaveWidthMm, openings } = body;
    const [left, right] = [insetOf(body, body.left), insetOf(body, body.right)];
    const fromMm = endMm + Math.max(0, -left);
    endMm = fromMm + eaveWidthMm + Math.max(0, -right) + GAP_MM;
    /** The slope between two heights, as shares of the rafter from the eave. */
    const between = (low: number, high: number): string => {
      const at = (share: number): [number, number, number] => [
        left * share,
        Math.max(left * share, eaveWidthMm - right * share),
        rafterLengthMm * (1 - share)
      ];
      const [[l0, r0, y0], [l1, r1, y1]] = [at(low), at(high)];
      return `M${l0} ${y0}L${r0} ${y0}L${r1} ${y1}L${l1} ${y1}Z`;
    };
    const own = planned.filter((course) => course.slopeId === slopeId);
    const last = Math.max(1, ...own.map(({ course }) => course));
    return {
      id: slopeId,
      fromMm,
      topMm: heightMm - rafterLengthMm,
      outline: between(0, 1),
      bands: own.map(({ course, piles: parts }) => ({
        course,
        pile: Math.max(1, piles.indexOf(parts[0].pile) + 1),
        path: between((course - 1) / last, course / last)
      })),
      openings,
      rafterLengthMm
    };
  });
  return { piles, slopes, widthMm: Math.max(1, endMm - GAP_MM), heightMm };
}

function insetOf(slope: SlopeBody, edge: SlopeBody['left']): number {
  const { kind, insetAtTopMm: inset = 0, planAngleDegrees } = edge;
  if (planAngleDegrees === undefined) return inset;
  const pitchDegrees = slope.pitchDegrees ?? 0;
  return insetAtTopMm({ ...slope, pitchDegrees }, { kind, planAngleDegrees });
}
