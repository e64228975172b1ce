import { EngineError, requireWhole } from '../errors.ts';
import { type SlateSpec, type Slope, maximumGaugeMm } from '../roof/index.ts';
import { checkCourses } from './course-check.ts';
import type { SlateSet } from './slate-sets.ts';

/** Guards a rafter that should be filled exactly against its last binary digit. */
const SAME_MM = 1e-6;

/** A set with the courses it takes from the eave up. */
export interface SetCourses {
  readonly set: SlateSet;
  readonly courses: number;
}

/** One course of a roof of several lengths, distances up the rafter from the eave, mm. */
export interface SetCourseLine {
  readonly course: number;
  readonly setId: string;
  readonly kind: 'full' | 'top';
  readonly slateLengthMm: number;
  readonly tailMm: number;
  readonly headMm: number;
  readonly battenMm: number;
  readonly marginMm: number;
  /** From the batten below; 0 for the first course. */
  readonly stepMm: number;
  /** By how much it covers the next but one below; left out for the first two. */
  readonly headlapMm?: number;
  /** Whether it is the first course of a shorter set, where the gauge drops. */
  readonly isDrop: boolean;
}

/** A slope set out with several lengths. */
export interface SetsSetOut {
  readonly courses: readonly SetCourseLine[];
  /** Headlap that every course has at least: as asked, and what filling the rafter whole gives. */
  readonly headlapMm: number;
  readonly headlapGainedMm: number;
  /** Gauge within each set that this slope reaches, by set id, mm. */
  readonly gaugeMm: Readonly<Record<string, number>>;
  readonly undereaveLengthMm: number;
}

/** From the tail of the first course to the top batten of a slope, mm. */
export function toTopBattenMm(
  slope: Pick<Slope, 'rafterLengthMm' | 'ridgeGapMm' | 'eaveOverhangMm'>
): number {
  return slope.rafterLengthMm - slope.ridgeGapMm + slope.eaveOverhangMm;
}

/** The set of each course, eave up. */
function setsByCourse(chosen: readonly SetCourses[]): SlateSet[] {
  return chosen.flatMap(({ set, courses }) => {
    requireWhole(courses, 0, `courses of set ${set.id}`);
    return new Array<SlateSet>(courses).fill(set);
  });
}

/**
 * Sets out one slope with courses of several lengths.
 *
 * Each set lies at its own gauge, (length − headlap) / 2 or its head-nailed form; the batten of the
 * first course of a shorter set is nearer by the whole difference of the lengths than the longer
 * set's gauge, which is the shorter set's gauge less half the difference. What the rafter lacks of
 * whole courses is taken off every margin alike, so that the headlap is the same everywhere and the
 * top batten lies where it should. A slope that is full earlier takes fewer courses from the same
 * list. Above the last full course lies the short top course, as on a roof of one length.
 *
 * @param slope sound; not modified
 * @param base headlap, nailing, nail line, mm; its length and width are not used
 * @param chosen sets from the eave up, longest first, with courses; a set may have none
 * @returns lines from the eave up, the top course last
 * @throws EngineError `out-of-range` where the courses do not fill the rafter or are too long for
 * it; `inconsistent` where a margin would grow or a headlap fall short, `not-whole`
 * Source: drop rule of a stone-roofing society's pages; top course is common practice, no source.
 * @example
 * // 20 then 18 in, lap 3: gauges 8½ … 6½, 7½ …; margins 8½ then 7½; headlap 3, once 4
 */
export function setOutSets(
  slope: Slope,
  base: SlateSpec,
  chosen: readonly SetCourses[]
): SetsSetOut {
  const specOf = (set: SlateSet) => ({ ...base, lengthMm: set.lengthMm });
  const aboveMm = base.nailing === 'head' ? base.headNailLineMm : 0;
  const gaugeOf = (set: SlateSet) => maximumGaugeMm(specOf(set));
  const reachOf = (set: SlateSet) => set.lengthMm - aboveMm;
  const toTopMm = toTopBattenMm(slope);

  const all = setsByCourse(chosen);
  let [tailMm, count] = [0, 0];
  while (count < all.length) {
    const set = all[count++];
    if (tailMm + reachOf(set) >= toTopMm - SAME_MM) break;
    tailMm += gaugeOf(set);
  }
  const sets = all.slice(0, count);
  const last = sets.at(-1);
  if (!last) throw new EngineError('out-of-range', 'no set has a course');
  const lastTailMm = sets.slice(0, -1).reduce((sum, set) => sum + gaugeOf(set), 0);
  const overMm = lastTailMm + reachOf(last) - toTopMm;
  if (overMm < -SAME_MM)
    throw new EngineError(
      'out-of-range',
      `${count} courses end ${-overMm} mm below the top batten of slope ${slope.id}`
    );
  if (count === 1 && overMm > SAME_MM)
    throw new EngineError('out-of-range', `slope ${slope.id} is too short for one course`);
  const lessMm = count > 1 ? overMm / (count - 1) : 0;
  const headlapMm = base.headlapMm + 2 * lessMm;

  const margins = sets.map((set) => gaugeOf(set) - lessMm);
  const steps = sets
    .slice(1)
    .map((set, index) => margins[index] + reachOf(set) - reachOf(sets[index]));
  const reaches = sets.map(reachOf);
  const { courses: battened, faults } = checkCourses(reaches, steps, base.headlapMm);
  if (faults.length > 0 || steps.some((step) => step <= 0))
    throw new EngineError(
      'inconsistent',
      `slope ${slope.id} cannot be laid: ${JSON.stringify(faults)}`
    );

  const courses: SetCourseLine[] = [];
  let fromFirst = 0;
  for (const [index, set] of sets.entries()) {
    const lineTailMm = fromFirst - slope.eaveOverhangMm;
    courses.push({
      course: index + 1,
      setId: set.id,
      kind: 'full',
      slateLengthMm: set.lengthMm,
      tailMm: lineTailMm,
      headMm: lineTailMm + set.lengthMm,
      battenMm: lineTailMm + reachOf(set),
      marginMm: margins[index],
      stepMm: steps[index - 1] ?? 0,
      headlapMm: battened[index].headlapMm,
      isDrop: index > 0 && set.id !== sets[index - 1].id
    });
    fromFirst += margins[index];
  }
  const lastGaugeMm = margins[count - 1];
  const topTailMm = fromFirst - slope.eaveOverhangMm;
  const topLengthMm = last.lengthMm - lastGaugeMm;
  courses.push({
    course: count + 1,
    setId: last.id,
    kind: 'top',
    slateLengthMm: topLengthMm,
    tailMm: topTailMm,
    headMm: topTailMm + topLengthMm,
    battenMm: courses[count - 1].battenMm,
    marginMm: slope.rafterLengthMm - topTailMm,
    stepMm: 0,
    isDrop: false
  });
  return {
    courses,
    headlapMm,
    headlapGainedMm: headlapMm - base.headlapMm,
    gaugeMm: Object.fromEntries(sets.map((set) => [set.id, gaugeOf(set) - lessMm])),
    undereaveLengthMm: sets[0].lengthMm - margins[0]
  };
}
