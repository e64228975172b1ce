/**
 * Speed of choosing courses of several lengths and planning each set: 600 courses, 6 sets × 4 piles
 * within 200 ms of processor time, and linear in courses.
 */
import { planCourses, type PlanRequest } from '../../src/lib/engine/courses/index.ts';
import { makeSlope, slateSpec } from '../../src/lib/engine/roof/index.ts';
import { chooseCourses, setOutSets } from '../../src/lib/engine/sizes/index.ts';

const BOUND_MS = 200;
const base = slateSpec({ lengthMm: 600, widthMm: 300, headlapMm: 90 });
/** Round lengths, and lengths of no common measure, which are the hardest. */
const KINDS: Readonly<Record<string, readonly number[]>> = {
  'round lengths': [600, 550, 500, 450, 400, 350],
  'odd lengths': [610, 559, 507, 458, 405, 356]
};
let sink = 0;

/** Processor time of this process, ms: what else runs on the machine does not count. */
const processorMs = (): number => process.cpuUsage().user / 1000;

/** Chooses the courses, sets every slope out, and plans four piles within each set. */
function work(slopes: number, lengths: readonly number[]): number {
  const roof = Array.from({ length: slopes }, (_slope, index) =>
    makeSlope({
      id: `slope ${index}`,
      rafterLengthMm: 9900,
      eaveWidthMm: 6000 + 500 * (index % 5),
      pitchDegrees: 40,
      left: { kind: index % 3 ? 'verge' : 'hip', insetAtTopMm: index % 3 ? 0 : 2000 }
    })
  );
  const stocks = lengths.map((lengthMm) => ({
    set: { id: String(lengthMm), lengthMm, widths: { kind: 'one', widthMm: 250 } as const },
    stock: 400 * slopes
  }));
  const chosen = chooseCourses(roof, base, stocks);
  if (chosen.status !== 'optimal') throw new Error('the bench roof must have a choice');
  const laid = roof.map((slope) => ({ slope, ...setOutSets(slope, base, chosen.sets) }));
  let courses = 0;
  for (const { set } of chosen.sets) {
    const demand = laid
      .flatMap(({ slope, courses: lines }) =>
        lines
          .filter((line) => line.setId === set.id)
          .map((line) => ({
            slopeId: slope.id,
            course: line.course,
            heightMm: Math.round(line.tailMm),
            runs: [{ slates: 25, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false }]
          }))
      )
      .sort((one, other) => one.heightMm - other.heightMm);
    courses += demand.length;
    const slates = Math.ceil((demand.length * 25 * 1.1) / 4);
    const request: PlanRequest = {
      courses: demand,
      piles: [1, 2, 3, 4].map(() => ({
        slates,
        slateAndAHalves: 0,
        reservedSlates: 0,
        reservedSlateAndAHalves: 0
      })),
      kicks: {
        within: [0.06, 0.04, 0.05, 0.03],
        between: [0, 1, 2, 3].map((one) => [0, 1, 2, 3].map((other) => Math.abs(one - other) * 0.2))
      }
    };
    const plan = planCourses(request);
    if (plan.status !== 'optimal') throw new Error('the bench set must have a plan');
    sink += plan.objective;
  }
  return courses;
}

function median(run: () => number, times: number): { ms: number; courses: number } {
  let courses = 0;
  const taken = Array.from({ length: times }, () => {
    const start = processorMs();
    courses = run();
    return processorMs() - start;
  }).sort((one, other) => one - other);
  return { ms: taken[Math.floor(times / 2)], courses };
}

for (const [kind, lengths] of Object.entries(KINDS)) {
  for (let warm = 0; warm < 3; warm++) work(2, lengths);
  const timings = [3, 6, 12, 24].map((slopes) => median(() => work(slopes, lengths), 5));
  for (const { ms, courses } of timings)
    console.log(`${kind}: ${courses} courses, 6 sets × 4 piles: median ${ms.toFixed(1)} ms`);
  const [, half, full, double] = timings;
  const growth = double.ms / full.ms / (double.courses / full.courses);
  console.log(`${kind}: twice the courses take ${growth.toFixed(2)} times as long a course`);
  if (full.ms > BOUND_MS) throw new Error(`${kind}: ${full.ms} ms, bound ${BOUND_MS} ms`);
  if (growth > 1.5) throw new Error(`${kind}: dearer than linear in courses`);
  if (half.courses >= full.courses) throw new Error('the roof did not grow');
}
console.log(`sink ${sink}`);
