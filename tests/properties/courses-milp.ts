import type { PlanRequest } from '$lib/engine/courses';
import type { CourseDemand, CourseRun } from '$lib/engine/roof';
import { fitsBesideLaid } from './courses-brute-force.ts';

/**
 * The planner's model as a mixed-integer programme in LP format, for a general solver. It is built
 * run by run, not slot by slot, and shares no code with the planner. The objective is in
 * thousandths of a kicker; chances must be whole thousandths.
 *
 * For each run r of P pieces and each pile k: `f` is 1 if the first piece is of pile k, `l` if the
 * last is, `o` if any is, `n` how many are; `z` is 1 where piles j and k meet inside the run. The
 * pile's number never falls within a course, from course to course of one slope, and from height to
 * height; of two courses at one height either may come first (`d`), whichever is better.
 *
 * @returns the programme and the constant it leaves out; undefined where a reserve exceeds its
 * stock or the common stock falls short, which needs no solver
 */
export function milpOf(request: PlanRequest): { lp: string; constant: number } | undefined {
  const { piles, common, kicks } = request;
  const K = piles.length;
  const objective: string[] = [];
  const rows: string[] = [];
  const binaries: string[] = [];
  const integers: string[] = [];
  const slateUse: string[][] = piles.map(() => []);
  const wideUse: string[][] = piles.map(() => []);
  let constant = 0;
  let commonNeed = 0;
  let r = -1;
  const ends: { readonly course: CourseDemand; readonly first: number; readonly last: number }[] =
    [];

  const all = (make: (pile: number) => string) =>
    piles.map((_pile, index) => make(index)).join(' ');
  const upTo = (sign: string, name: string, run: number, last: number) =>
    piles.slice(0, last + 1).map((_pile, k) => `${sign} ${name}_${run}_${k}`);

  for (const course of inOrder(request)) {
    const runsOfCourse: number[] = [];
    for (const run of course.runs) {
      const wide = wideEnds(run);
      if (common) commonNeed += wide;
      const pieces = run.slates + (common ? 0 : wide);
      if (common && pieces === 0 && wide === 2) constant += thousandths(kicks.common!.within);
      if (pieces === 0) continue;
      r++;
      runsOfCourse.push(r);
      rows.push(`${all((k) => `+ f_${r}_${k}`)} = 1`);
      rows.push(`${all((k) => `+ l_${r}_${k}`)} = 1`);
      rows.push(`${all((k) => `+ n_${r}_${k}`)} = ${pieces}`);
      for (let k = 0; k < K; k++) {
        binaries.push(`f_${r}_${k}`, `l_${r}_${k}`, `o_${r}_${k}`);
        integers.push(`n_${r}_${k}`);
        rows.push(`o_${r}_${k} - f_${r}_${k} >= 0`);
        rows.push(`o_${r}_${k} - l_${r}_${k} >= 0`);
        rows.push(`o_${r}_${k} - f_${r}_${k} - l_${r}_${k} <= 0`);
        rows.push(`n_${r}_${k} - o_${r}_${k} >= 0`);
        rows.push(`n_${r}_${k} - ${pieces} o_${r}_${k} <= 0`);
        if (k < K - 1) {
          rows.push(`${[...upTo('+', 'l', r, k), ...upTo('-', 'f', r, k)].join(' ')} <= 0`);
          if (runsOfCourse.length > 1)
            rows.push(`${[...upTo('+', 'f', r, k), ...upTo('-', 'l', r - 1, k)].join(' ')} <= 0`);
        }
        if (!fitsBesideLaid(request, course, k + 1, k + 1)) rows.push(`o_${r}_${k} = 0`);
        const q = thousandths(kicks.within[k]);
        objective.push(`+ ${q} n_${r}_${k} - ${q} o_${r}_${k}`);
        slateUse[k].push(`+ n_${r}_${k}`);
        const wideEnd = (name: string) => {
          if (common)
            objective.push(`+ ${thousandths(kicks.common!.withPile[k])} ${name}_${r}_${k}`);
          else {
            slateUse[k].push(`- ${name}_${r}_${k}`);
            wideUse[k].push(`+ ${name}_${r}_${k}`);
          }
        };
        if (run.startsWithSlateAndAHalf) wideEnd('f');
        if (run.endsWithSlateAndAHalf) wideEnd('l');
        for (let thin = k + 1; thin < K; thin++) {
          rows.push(`z_${r}_${k}_${thin} - f_${r}_${k} - l_${r}_${thin} >= -1`);
          objective.push(`+ ${thousandths(kicks.between[k][thin])} z_${r}_${k}_${thin}`);
        }
      }
    }
    if (runsOfCourse.length === 0) continue;
    ends.push({ course, first: runsOfCourse[0], last: r });
    for (let thick = 0; thick < K; thick++)
      for (let thin = thick + 1; thin < K; thin++)
        if (!fitsBesideLaid(request, course, thick + 1, thin + 1))
          rows.push(`f_${runsOfCourse[0]}_${thick} + l_${r}_${thin} <= 1`);
    if (runsOfCourse.length > 1) {
      const name = `c_${runsOfCourse[0]}`;
      for (let k = 0; k < K; k++) {
        binaries.push(`${name}_${k}`);
        for (const run of runsOfCourse) rows.push(`${name}_${k} - o_${run}_${k} >= 0`);
      }
      rows.push(`${all((k) => `+ ${name}_${k}`)} <= 2`);
    }
  }
  const follows = (upper: number, lower: number, slack: string) => {
    for (let k = 0; k < K - 1; k++)
      rows.push(`${[...upTo('+', 'f', upper, k), ...upTo('-', 'l', lower, k)].join(' ')} ${slack}`);
  };
  for (const [index, upper] of ends.entries())
    for (const lower of ends.slice(0, index)) {
      const { heightMm } = upper.course;
      if (lower.course.heightMm < heightMm) {
        const between = ends.some(
          ({ course }) => course.heightMm > lower.course.heightMm && course.heightMm < heightMm
        );
        if (!between) follows(upper.first, lower.last, '<= 0');
        continue;
      }
      const d = `d_${upper.first}_${lower.first}`;
      binaries.push(d);
      follows(upper.first, lower.last, `- ${d} <= 0`);
      follows(lower.first, upper.last, `+ ${d} <= 1`);
    }
  for (const [k, pile] of piles.entries()) {
    const slates = pile.slates - pile.reservedSlates;
    const wide = pile.slateAndAHalves - pile.reservedSlateAndAHalves;
    if (slates < 0 || (!common && wide < 0)) return undefined;
    if (slateUse[k].length > 0) rows.push(`${slateUse[k].join(' ')} <= ${slates}`);
    if (wideUse[k].length > 0) rows.push(`${wideUse[k].join(' ')} <= ${wide}`);
  }
  if (common && commonNeed > common.slateAndAHalves - common.reservedSlateAndAHalves)
    return undefined;
  if (rows.length === 0) rows.push('x >= 0');
  const lp = [
    'Minimize',
    ` obj: ${objective.join('\n ') || '0 x'}`,
    'Subject To',
    ...rows.map((row, index) => ` r${index}: ${row}`),
    'General',
    ` ${integers.join('\n ')}`,
    'Binary',
    ` ${binaries.join('\n ')}`,
    'End'
  ].join('\n');
  return { lp, constant };
}

function inOrder(request: PlanRequest): PlanRequest['courses'] {
  return [...request.courses].sort(
    (one, other) => one.heightMm - other.heightMm || (one.slopeId < other.slopeId ? -1 : 1)
  );
}

function wideEnds(run: CourseRun): number {
  return Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf);
}

function thousandths(chance: number): number {
  return Math.round(chance * 1000);
}
