import type { PieceRun } from './pieces.ts';
import type { SlateSpec } from './slate-spec.ts';

/**
 * The least side lap of a slope: how far, along the course, any edge of a slate lies from the
 * nearest edge of a slate in the course above. Every joint between two pieces counts, those beside
 * cut pieces too; where a verge, a hip, a valley or an opening ends a course there is no joint.
 *
 * @param courses eave to ridge; not modified
 * @returns mm, from edge to edge; nothing where no two courses have such joints
 * Cost: linear in the pieces.
 * @example
 * // 250 mm slates with 3 mm joints in half bond: 123.5
 */
export function leastSideLapMm(
  courses: readonly { readonly runs: readonly PieceRun[] }[]
): number | undefined {
  let least = Infinity;
  for (let index = 1; index < courses.length; index++)
    least = Math.min(least, leastGap(joints(courses[index - 1]), joints(courses[index])));
  return least === Infinity ? undefined : least;
}

/**
 * The side lap to ask of random widths, and the narrowest slate over which a joint can have it on
 * both sides.
 *
 * @param spec headlap, joints and, for random widths, their bounds, mm; else its one width counts
 * @returns side lap: the headlap, or what half bond of the narrowest slate leaves; and twice that
 * with a joint, rounded up, mm
 * @throws nothing
 * Source: as for slates of one width; common practice, no source.
 */
export function sideLapOfRandom(
  spec: Pick<SlateSpec, 'headlapMm' | 'widthMm' | 'jointMinMm' | 'jointMaxMm' | 'randomWidths'>
): { readonly sideLapMm: number; readonly lookForMm: number } {
  const narrowestMm = spec.randomWidths?.fromMm ?? spec.widthMm;
  const sideLapMm = Math.min(spec.headlapMm, narrowestMm / 2 - 2 * spec.jointMaxMm);
  return { sideLapMm, lookForMm: Math.ceil(2 * sideLapMm + spec.jointMinMm) };
}

/** One joint between pieces. */
interface Joint {
  readonly leftMm: number;
  readonly rightMm: number;
}

function joints(course: { readonly runs: readonly PieceRun[] }): Joint[] {
  const found: Joint[] = [];
  for (const { pieces } of course.runs)
    for (let index = 1; index < pieces.length; index++) {
      const [left, right] = [pieces[index - 1], pieces[index]];
      found.push({ leftMm: left.leftMm + left.widthMm, rightMm: right.leftMm });
    }
  return found;
}

function leastGap(lower: readonly Joint[], upper: readonly Joint[]): number {
  let least = Infinity;
  let [one, other] = [0, 0];
  while (one < lower.length && other < upper.length) {
    const gap = Math.max(
      lower[one].leftMm - upper[other].rightMm,
      upper[other].leftMm - lower[one].rightMm
    );
    least = Math.min(least, Math.max(0, gap));
    if (lower[one].leftMm < upper[other].leftMm) one++;
    else other++;
  }
  return least;
}
