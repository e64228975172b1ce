import * as fc from 'fast-check';
import type { CommonStock, LaidCourse, PileStock, PlanRequest } from '$lib/engine/courses';
import type { CourseDemand, CourseRun } from '$lib/engine/roof';

/** How large the random roofs of a test may be. */
export interface CaseSize {
  readonly slopes: number;
  readonly coursesPerSlope: number;
  readonly runsPerCourse: number;
  readonly slatesPerRun: number;
  readonly piles: number;
}

/**
 * Random requests: slopes at shared and at their own heights, openings, slate-and-a-halves,
 * courses without pieces, piles from empty to ample, reserves, slopes laid in part, and a common
 * stock now and then. Chances are whole thousandths, few enough values that ties are common.
 */
export function planRequests(size: CaseSize): fc.Arbitrary<PlanRequest> {
  return fc
    .record({
      slopes: fc.array(slope(size), { minLength: 1, maxLength: size.slopes }),
      piles: fc.integer({ min: 1, max: size.piles }),
      hasCommon: fc.boolean(),
      isPartLaid: fc.integer({ min: 0, max: 3 })
    })
    .chain(({ slopes, piles, hasCommon, isPartLaid }) => {
      const courses = slopes.flatMap((make, index) => make(`slope ${index}`));
      const count = (select: (run: CourseRun) => number) =>
        courses.flatMap(({ runs }) => runs).reduce((sum, run) => sum + select(run), 0);
      const slates = count((run) => run.slates);
      const wide = count(
        (run) => Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf)
      );
      return fc.record({
        courses: fc.shuffledSubarray(courses, { minLength: courses.length }),
        piles: fc.array(pileStock(slates, wide, piles), { minLength: piles, maxLength: piles }),
        kicks: chances(piles),
        common: hasCommon ? commonStock(wide) : fc.constant(undefined),
        laid: isPartLaid === 0 ? laidCourses(slopes.length, piles) : fc.constant([]),
        laidBinds: fc.constantFrom<('all-slopes' | 'own-slope')[]>('all-slopes', 'own-slope')
      });
    });
}

function slope(size: CaseSize): fc.Arbitrary<(slopeId: string) => CourseDemand[]> {
  const run = fc.record({
    slates: fc.integer({ min: 0, max: size.slatesPerRun }),
    startsWithSlateAndAHalf: fc.boolean(),
    endsWithSlateAndAHalf: fc.boolean()
  });
  return fc
    .record({
      eavesMm: fc.constantFrom(0, 0, 100, 150),
      gaugeMm: fc.constantFrom(100, 200),
      runs: fc.array(fc.array(run, { minLength: 1, maxLength: size.runsPerCourse }), {
        minLength: 1,
        maxLength: size.coursesPerSlope
      })
    })
    .map(
      ({ eavesMm, gaugeMm, runs }) =>
        (slopeId: string) =>
          runs.map((courseRuns, index) => ({
            slopeId,
            course: index + 1,
            heightMm: eavesMm + index * gaugeMm,
            runs: courseRuns
          }))
    );
}

function pileStock(slates: number, wide: number, piles: number): fc.Arbitrary<PileStock> {
  const share = Math.ceil((slates * 2) / piles);
  return fc
    .record({
      slates: fc.oneof(fc.integer({ min: 0, max: share }), fc.constant(slates)),
      slateAndAHalves: fc.oneof(fc.integer({ min: 0, max: wide }), fc.constant(wide)),
      reserve: fc.constantFrom(0, 0, 0, 1),
      reserveWide: fc.constantFrom(0, 0, 0, 1)
    })
    .map((pile) => ({
      slates: pile.slates + pile.reserve,
      slateAndAHalves: pile.slateAndAHalves + pile.reserveWide,
      reservedSlates: pile.reserve,
      reservedSlateAndAHalves: pile.reserveWide
    }));
}

/** One or two laid courses, at heights below, between, beside and above those still to lay. */
function laidCourses(slopes: number, piles: number): fc.Arbitrary<LaidCourse[]> {
  const course = fc
    .record({
      slope: fc.integer({ min: 0, max: slopes - 1 }),
      heightMm: fc.constantFrom(-100, 50, 100, 125, 150, 225, 1000),
      thickestPile: fc.integer({ min: 1, max: piles }),
      step: fc.constantFrom(0, 0, 1)
    })
    .map(({ slope, heightMm, thickestPile, step }) => ({
      slopeId: `slope ${slope}`,
      course: 100,
      heightMm,
      thickestPile,
      thinnestPile: Math.min(piles, thickestPile + step)
    }));
  return fc.array(course, { minLength: 1, maxLength: 2 });
}

function commonStock(wide: number): fc.Arbitrary<CommonStock> {
  return fc.constantFrom(0, 0, 0, 1).map((missing) => ({
    slateAndAHalves: Math.max(0, wide - missing),
    reservedSlateAndAHalves: 0
  }));
}

const chance = fc
  .constantFrom(0, 50, 50, 100, 150, 200, 331)
  .map((thousandths) => thousandths / 1000);
const highChance = fc.constantFrom(0, 100, 200, 400, 617).map((thousandths) => thousandths / 1000);

function chances(piles: number): fc.Arbitrary<PlanRequest['kicks']> {
  const row = fc.array(chance, { minLength: piles, maxLength: piles });
  return fc
    .record({
      within: row,
      pairs: fc.array(fc.array(highChance, { minLength: piles, maxLength: piles }), {
        minLength: piles,
        maxLength: piles
      }),
      common: fc.record({ withPile: row, within: chance })
    })
    .map(({ within, pairs, common }) => ({
      within,
      between: pairs.map((_row, one) =>
        pairs.map((_column, other) =>
          one === other ? 0 : pairs[Math.min(one, other)][Math.max(one, other)]
        )
      ),
      common
    }));
}
