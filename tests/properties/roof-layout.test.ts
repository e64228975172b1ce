/** Whole slopes of every shape, with and without openings. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type RoofLayout,
  type Slope,
  type SlopeEdge,
  type SlopeLayout,
  layOutRoof,
  makeSlope,
  piecesInRun,
  slateSpec,
  slopeProblems
} from '$lib/engine/roof';
import { rounds } from '../support/rounds.ts';
import { closestJoints } from '../support/joint-walk.ts';

const RUNS = { seed: 90_125, numRuns: rounds(125, 1000) };

const anySpec = fc
  .record({
    size: fc.constantFrom([600, 300], [500, 250], [400, 200], [500, 300], [350, 250]),
    headlapMm: fc.integer({ min: 55, max: 110 }),
    nailing: fc.constantFrom('centre' as const, 'head' as const)
  })
  .map(({ size: [lengthMm, widthMm], headlapMm, nailing }) =>
    slateSpec({ lengthMm, widthMm, headlapMm, nailing })
  );

const anyEdge: fc.Arbitrary<SlopeEdge> = fc.oneof(
  fc.constant({ kind: 'verge' as const, insetAtTopMm: 0 }),
  fc.constant({ kind: 'abutment' as const, insetAtTopMm: 0 }),
  fc
    .integer({ min: 200, max: 4000 })
    .map((insetAtTopMm) => ({ kind: 'hip' as const, insetAtTopMm })),
  fc
    .integer({ min: 200, max: 4000 })
    .map((insetMm) => ({ kind: 'valley' as const, insetAtTopMm: -insetMm })),
  fc
    .integer({ min: 30, max: 90 })
    .map((planAngleDegrees) => ({ kind: 'hip' as const, planAngleDegrees }))
);

const anySlope = fc
  .record({
    rafterLengthMm: fc.integer({ min: 1500, max: 7000 }),
    eaveWidthMm: fc.integer({ min: 4000, max: 14_000 }),
    pitchDegrees: fc.integer({ min: 20, max: 60 }),
    left: anyEdge,
    right: anyEdge,
    setOutFrom: fc.constantFrom('left' as const, 'right' as const),
    hasOpening: fc.boolean(),
    openingAt: fc.record({
      across: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
      up: fc.double({ min: 0, max: 0.6, noNaN: true }),
      widthMm: fc.integer({ min: 300, max: 1200 }),
      heightMm: fc.integer({ min: 150, max: 1500 })
    })
  })
  .map(({ hasOpening, openingAt, ...given }) =>
    makeSlope({
      id: 'one',
      ...given,
      openings: hasOpening
        ? [
            {
              kind: 'rooflight',
              fromLeftMm: Math.round(openingAt.across * given.eaveWidthMm),
              widthMm: openingAt.widthMm,
              fromEaveMm: Math.round(openingAt.up * given.rafterLengthMm),
              heightMm: openingAt.heightMm
            }
          ]
        : []
    })
  );

type Spec = ReturnType<typeof slateSpec>;

/** A cheap expectation for loops over every piece of a roof. */
function must(holds: boolean, otherwise: string): void {
  if (!holds) throw new Error(otherwise);
}

/** Runs a check on every sound pair of slope and slate, and proves that most were sound. */
function forRoofs(check: (laid: SlopeLayout, roof: RoofLayout, spec: Spec, slope: Slope) => void) {
  let sound = 0;
  fc.assert(
    fc.property(anySlope, anySpec, (slope, spec) => {
      const roof = layOutRoof([slope], spec);
      expect(roof.ok).toBe(slopeProblems(slope, spec).length === 0);
      if (!roof.ok) return;
      sound++;
      check(roof.slopes[0], roof, spec, slope);
    }),
    RUNS
  );
  expect(sound).toBeGreaterThan(RUNS.numRuns / 3);
}

describe('a laid out slope', () => {
  it('areas of the courses sum to the area of the slope', () => {
    forRoofs((laid) => {
      const sum = laid.courses.reduce((area, course) => area + course.areaM2, 0);
      expect(sum).toBeCloseTo(laid.totals.areaM2, 9);
    });
  });

  it('the area of the slope is its trapezium less the opening', () => {
    forRoofs((laid, _roof, _spec, slope) => {
      const first = laid.courses[0];
      const last = laid.courses[laid.courses.length - 1];
      const mean =
        (first.tailRightMm - first.tailLeftMm + last.marginRightMm - last.marginLeftMm) / 2;
      const openings = slope.openings.reduce((sum, one) => sum + one.widthMm * one.heightMm, 0);
      const area = mean * (slope.rafterLengthMm + slope.eaveOverhangMm) - openings;
      expect(laid.totals.areaM2).toBeCloseTo(area / 1e6, 6);
    });
  });

  it('gauge never above the maximum, with the least number of spaces, and headlap never lost', () => {
    forRoofs((laid) => {
      expect(laid.gaugeMm).toBeLessThanOrEqual(laid.maximumGaugeMm + 1e-6);
      expect(laid.headlapGainedMm).toBeGreaterThanOrEqual(-1e-6);
      if (laid.spaces > 1)
        expect(laid.fixingLengthMm / (laid.spaces - 1)).toBeGreaterThan(laid.maximumGaugeMm);
    });
  });

  it('batten lines rise evenly to the gap under the ridge, and carry every head', () => {
    forRoofs((laid, _roof, spec, slope) => {
      const { battens, courses } = laid;
      expect(battens[battens.length - 1].fromEaveMm).toBeCloseTo(
        slope.rafterLengthMm - slope.ridgeGapMm,
        6
      );
      const aboveNails = spec.nailing === 'head' ? spec.headNailLineMm : 0;
      for (const course of courses) {
        expect(course.headMm - aboveNails).toBeCloseTo(course.battenMm, 6);
        const carrier = battens[Math.min(course.course, battens.length - 1)];
        expect(carrier.fromEaveMm).toBeCloseTo(course.battenMm, 6);
      }
      for (const batten of battens.slice(1))
        expect(batten.fromEaveMm - battens[batten.batten - 1].fromEaveMm).toBeCloseTo(
          batten.stepMm,
          6
        );
    });
  });

  it('marks of both bonds strictly rise', () => {
    forRoofs((laid) => {
      for (const { marksMm } of Object.values(laid.perps.bonds))
        for (let index = 1; index < marksMm.length; index++)
          expect(marksMm[index]).toBeGreaterThan(marksMm[index - 1]);
    });
  });

  it('pieces of a run cover its width at the tail, less joints within their limits', () => {
    forRoofs((laid, _roof, spec) => {
      for (const course of laid.courses) {
        for (const { pieces } of course.runs)
          for (let index = 1; index < pieces.length; index++) {
            const joint =
              pieces[index].leftMm - pieces[index - 1].leftMm - pieces[index - 1].widthMm;
            must(joint > spec.jointMinMm - 1e-6, `joint of ${joint} mm in course ${course.course}`);
            must(joint < spec.jointMaxMm + 1e-6, `joint of ${joint} mm in course ${course.course}`);
          }
        if (course.runs.length !== 1) continue;
        const [{ pieces }] = course.runs;
        const covered = pieces.reduce((sum, piece) => sum + piece.tailWidthMm, 0);
        const width = course.tailRightMm - course.tailLeftMm;
        const jointsAtMost = (pieces.length + 1) * spec.jointMaxMm + 2 * spec.jointMaxMm;
        expect(covered).toBeLessThanOrEqual(width + 1e-6);
        expect(width - covered).toBeLessThanOrEqual(jointsAtMost + 1e-6);
      }
    });
  });

  it('covers the width exactly, joint by joint, where both sides are square and nothing is open', () => {
    let plain = 0;
    forRoofs((laid, _roof, _spec, slope) => {
      if (laid.perps.finish === undefined || slope.openings.length > 0) return;
      plain++;
      for (const course of laid.courses) {
        const [run] = course.runs;
        const { jointMm } = laid.perps.bonds[course.bond];
        const covered = run.pieces.reduce((sum, piece) => sum + piece.widthMm, 0);
        expect(covered + (run.pieces.length - 1) * jointMm).toBeCloseTo(
          course.tailRightMm - course.tailLeftMm,
          4
        );
      }
    });
    expect(plain).toBeGreaterThan(RUNS.numRuns / 25);
  });

  it('uncut slates of neighbouring courses break joint by half a slate, within the widest joint', () => {
    let whole = 0;
    forRoofs((laid, _roof, spec) => {
      const lapMm = closestJoints(laid.courses, (piece) => !piece.isCut);
      if (lapMm === Infinity) return;
      if (laid.perps.isWhole) whole++;
      must(
        lapMm >= spec.widthMm / 2 - spec.jointMaxMm - 1e-6,
        `side lap of ${lapMm} mm for slates of ${spec.widthMm} mm`
      );
    });
    expect(whole).toBeGreaterThan(RUNS.numRuns / 50);
  });

  it('demand agrees with the pieces, run by run, and its heights rise', () => {
    forRoofs((laid, roof) => {
      let height = -Infinity;
      for (const demand of roof.demand) {
        expect(demand.heightMm).toBeGreaterThan(height);
        height = demand.heightMm;
        const course = laid.courses[demand.course - 1];
        expect(demand.runs.map(piecesInRun)).toEqual(course.runs.map((run) => run.pieces.length));
      }
      const wide = roof.demand
        .flatMap((demand) => demand.runs)
        .reduce(
          (sum, run) =>
            sum + Number(run.startsWithSlateAndAHalf) + Number(run.endsWithSlateAndAHalf),
          0
        );
      expect(wide).toBe(roof.totals.slateAndAHalves);
      const slates = roof.demand
        .flatMap((demand) => demand.runs)
        .reduce((sum, run) => sum + run.slates, 0);
      expect(slates).toBe(roof.totals.slates);
    });
  });

  it('no piece reaches past the slope or under an opening that takes its margin', () => {
    forRoofs((laid, _roof, _spec, slope) => {
      for (const course of laid.courses) {
        const marginTop = course.tailMm + course.marginMm;
        const from = Math.min(course.tailLeftMm, course.marginLeftMm);
        const to = Math.max(course.tailRightMm, course.marginRightMm);
        for (const piece of course.runs.flatMap((run) => run.pieces)) {
          must(piece.leftMm >= from - 1e-6, `a piece left of course ${course.course}`);
          must(piece.leftMm + piece.widthMm <= to + 1e-6, `a piece right of ${course.course}`);
          for (const opening of slope.openings) {
            const takesMargin =
              opening.fromEaveMm <= course.tailMm &&
              opening.fromEaveMm + opening.heightMm >= marginTop;
            const isBeside =
              piece.leftMm + piece.widthMm <= opening.fromLeftMm + 1e-6 ||
              piece.leftMm >= opening.fromLeftMm + opening.widthMm - 1e-6;
            must(isBeside || !takesMargin, `a piece under an opening in course ${course.course}`);
          }
        }
      }
    });
  });

  it('the mirror image has the mirrored pieces and the same demand', () => {
    forRoofs((laid, _roof, spec, slope) => {
      const mirrored = layOutRoof([mirrorOf(slope)], spec);
      if (!mirrored.ok) throw new Error('the mirror image was refused');
      const [turned] = mirrored.slopes;
      expect(turned.perps.bonds.A.marksMm.length).toBe(laid.perps.bonds.A.marksMm.length);
      for (const [index, mark] of laid.perps.bonds.A.marksMm.entries())
        expect(turned.perps.bonds.A.marksMm[index]).toBeCloseTo(mark, 6);
      expect(turned.totals.slates).toBe(laid.totals.slates);
      expect(turned.totals.slateAndAHalves).toBe(laid.totals.slateAndAHalves);
      for (const [index, course] of laid.courses.entries()) {
        const plain = course.runs.flatMap((run) => run.pieces);
        const other = turned.courses[index].runs.flatMap((run) => run.pieces).reverse();
        must(other.length === plain.length, `pieces lost in course ${course.course}`);
        for (const [place, piece] of plain.entries()) {
          const left = slope.eaveWidthMm - other[place].leftMm - other[place].widthMm;
          must(Math.abs(left - piece.leftMm) < 1e-6, `a piece moved in course ${course.course}`);
          must(other[place].kind === piece.kind, `a piece changed in course ${course.course}`);
        }
      }
    });
  });
});

describe('demand over width', () => {
  it('asks for no fewer slates on a wider slope between square sides', () => {
    fc.assert(
      fc.property(
        anySpec,
        fc.integer({ min: 2000, max: 12_000 }),
        fc.integer({ min: 1, max: 900 }),
        (spec, eaveWidthMm, moreMm) => {
          const at = (width: number) => {
            const slope = makeSlope({
              id: 'one',
              rafterLengthMm: 3000,
              eaveWidthMm: width,
              pitchDegrees: 40
            });
            const roof = layOutRoof([slope], spec);
            if (!roof.ok) throw new Error('refused');
            return roof.totals.slates + 1.5 * roof.totals.slateAndAHalves;
          };
          expect(at(eaveWidthMm + moreMm)).toBeGreaterThanOrEqual(at(eaveWidthMm));
        }
      ),
      { seed: 7, numRuns: 200 }
    );
  });
});

function mirrorOf(slope: Slope): Slope {
  return {
    ...slope,
    left: slope.right,
    right: slope.left,
    setOutFrom: slope.setOutFrom === 'left' ? 'right' : 'left',
    openings: slope.openings.map((opening) => ({
      ...opening,
      fromLeftMm: slope.eaveWidthMm - opening.fromLeftMm - opening.widthMm
    }))
  };
}
