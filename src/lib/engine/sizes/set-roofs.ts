import {
  type BattenLine,
  type CourseSetOut,
  type RoofLayout,
  type RoofProblem,
  type SlateSpec,
  type Slope,
  type SlopeLayout,
  joinsOf,
  layOutSlope,
  maximumGaugeMm,
  roofOf,
  slateSpecProblems,
  slopeAsLaid,
  slopeProblems
} from '../roof/index.ts';
import { type SetCourses, type SetsSetOut, setOutSets } from './set-out-sets.ts';
import { type SlateSet, specOfSet } from './slate-sets.ts';

/** A roof of several lengths: one layout for each set, its courses only, numbered from the eave. */
export type SetRoofs =
  | { readonly ok: true; readonly roofs: Readonly<Record<string, RoofLayout>> }
  | { readonly ok: false; readonly problems: readonly RoofProblem[] };

/**
 * What keeps slopes from taking several sets: fields of the slate, and of the slopes with each set.
 *
 * @param slopes may hold anything somebody typed; not modified
 * @returns problems, each slope's field once; widths are not judged where they come at random
 * @throws nothing
 * Source: as `slateSpecProblems` and `slopeProblems`.
 */
export function setRoofProblems(
  slopes: readonly Slope[],
  base: SlateSpec,
  sets: readonly SlateSet[]
): RoofProblem[] {
  const specs = sets.map((set) => specOfSet(base, set));
  const found: RoofProblem[] = specs.flatMap((spec) => slateSpecProblems(spec));
  if (found.length === 0)
    for (const slope of slopes)
      for (const [index, spec] of specs.entries())
        for (const problem of slopeProblems(slope, spec)) {
          const isOfFirst = index === 0 || problem.code !== 'no-course';
          const isBond = problem.code === 'joints-too-close' && spec.randomWidths;
          if (isOfFirst && !isBond) found.push({ slopeId: slope.id, ...problem });
        }
  return found.filter(
    (problem, at) =>
      found.findIndex(
        ({ slopeId, field, code }) =>
          slopeId === problem.slopeId && field === problem.field && code === problem.code
      ) === at
  );
}

/**
 * Lays a roof of several lengths out, set by set.
 *
 * @param slopes sound slopes; not modified
 * @param base how the roof is laid; its length and width are not used
 * @param chosen sets from the eave up with their courses, as from `chooseCourses`
 * @returns for each set a layout that holds its own courses, battens, perps and demand; course
 * numbers run from the eave over all sets. Problems where a field cannot stand
 * @throws EngineError as `setOutSets`
 * Cost: linear in the pieces of the roof.
 * Source: as `setOutSets` and `layOutRoof`.
 */
export function layOutSets(
  slopes: readonly Slope[],
  base: SlateSpec,
  chosen: readonly SetCourses[]
): SetRoofs {
  const problems = setRoofProblems(
    slopes,
    base,
    chosen.map(({ set }) => set)
  );
  if (problems.length > 0) return { ok: false, problems };
  const joins = joinsOf(slopes);
  const laid = slopes
    .map(slopeAsLaid)
    .map((slope) => ({ slope, ...setOutSets(slope, base, chosen) }));
  const roofs = chosen.map(({ set }): [string, RoofLayout] => {
    const spec = specOfSet(base, set);
    const parts = laid.flatMap(({ slope, ...setOut }) => {
      const part = partOfSet(slope, spec, set.id, setOut);
      return part ? [part] : [];
    });
    const has = (id: string) => parts.some((part) => part.slope.id === id);
    const own = joins.filter(({ one, other }) => has(one) && has(other));
    return [set.id, roofOf(parts, spec, own)];
  });
  return { ok: true, roofs: Object.fromEntries(roofs) };
}

/** One set's part of a slope; nothing where the slope has no course of it. */
function partOfSet(
  slope: Slope,
  spec: SlateSpec,
  setId: string,
  setOut: SetsSetOut
): SlopeLayout | undefined {
  const lines = setOut.courses.filter((line) => line.setId === setId);
  if (lines.length === 0) return undefined;
  const full = lines.filter(({ kind }) => kind === 'full');
  const gaugeMm = setOut.gaugeMm[setId];
  const rise = Math.sin((slope.pitchDegrees * Math.PI) / 180);
  const hasUndereave = lines[0].course === 1;
  const firstBattenMm = setOut.courses[0].battenMm - setOut.courses[0].marginMm;
  const batten = (line: { course: number; battenMm: number; stepMm: number }): BattenLine => ({
    batten: line.course,
    fromEaveMm: line.battenMm,
    fromFirstMm: line.battenMm - firstBattenMm,
    stepMm: line.stepMm
  });
  const battens = full.map(batten);
  const eaveMarginMm = setOut.courses[0].marginMm;
  if (hasUndereave) {
    battens[0] = { ...battens[0], stepMm: eaveMarginMm };
    battens.unshift(batten({ course: 0, battenMm: firstBattenMm, stepMm: 0 }));
  }
  const part: CourseSetOut = {
    maximumGaugeMm: maximumGaugeMm(spec),
    gaugeMm,
    headlapMm: setOut.headlapMm,
    headlapGainedMm: setOut.headlapGainedMm,
    fixingLengthMm: full[full.length - 1].battenMm - full[0].battenMm,
    spaces: full.length - 1,
    undereaveLengthMm: setOut.undereaveLengthMm,
    courses: lines.map(({ course, kind, isDrop, ...line }) => ({
      course,
      kind,
      tailMm: line.tailMm,
      headMm: line.headMm,
      battenMm: line.battenMm,
      marginMm: line.marginMm,
      slateLengthMm: line.slateLengthMm,
      heightMm: slope.eaveHeightMm + (line.tailMm + slope.eaveOverhangMm) * rise,
      ...(isDrop && { isDrop })
    })),
    battens
  };
  return layOutSlope(slope, spec, { setOutAs: part, hasUndereave });
}
