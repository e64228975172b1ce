/** Cut pieces on random roofs, looked at by a checker that knows outlines and points and nothing else. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CutShape,
  type Slope,
  coursesRoundOpening,
  cutShape,
  layOutRoof,
  makeSlope,
  slateSpec
} from '$lib/engine/roof';
import { rounds } from '../support/rounds.ts';

const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });

type Point = readonly [number, number];

const anyEdge = fc.oneof(
  fc.record({ kind: fc.constant('verge' as const), insetAtTopMm: fc.constant(0) }),
  fc.record({
    kind: fc.constant('hip' as const),
    insetAtTopMm: fc.integer({ min: 200, max: 3500 })
  }),
  fc.record({
    kind: fc.constant('valley' as const),
    insetAtTopMm: fc.integer({ min: -3500, max: -200 })
  })
);
const anySlope = fc
  .record({
    rafterLengthMm: fc.integer({ min: 2500, max: 6000 }),
    eaveWidthMm: fc.integer({ min: 7500, max: 10_000 }),
    pitchDegrees: fc.integer({ min: 22, max: 60 }),
    left: anyEdge,
    right: anyEdge,
    openings: fc.option(
      fc.record({
        kind: fc.constant('chimney' as const),
        fromLeftMm: fc.integer({ min: 3600, max: 3900 }),
        widthMm: fc.integer({ min: 300, max: 1100 }),
        fromEaveMm: fc.integer({ min: 300, max: 1200 }),
        heightMm: fc.integer({ min: 300, max: 1000 })
      })
    )
  })
  .map(({ openings, ...rest }) =>
    makeSlope({ id: 'a', ...rest, openings: openings ? [openings] : [] })
  );

/** Twice the area to the left of a line through two points; above 0 where the third lies left of it. */
function turn([ax, ay]: Point, [bx, by]: Point, [px, py]: Point): number {
  return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
}

/** Whether a point lies in a convex shape whose corners go against the clock. */
function isIn(corners: readonly Point[], point: Point): boolean {
  return corners.every((corner, at) => turn(corner, corners[(at + 1) % corners.length], point) > 0);
}

/** What is slated of a slope, edges run on below the eave by its overhang. */
function outlineOf(slope: Slope): Point[] {
  const over = (edge: Slope['left']) => (edge.kind === 'verge' ? slope.vergeOverhangMm : 0);
  const inset = (edge: Slope['left']) => ('insetAtTopMm' in edge ? edge.insetAtTopMm : NaN);
  const at = (share: number): [Point, Point] => [
    [share * inset(slope.left) - over(slope.left), share * slope.rafterLengthMm],
    [
      slope.eaveWidthMm - share * inset(slope.right) + over(slope.right),
      share * slope.rafterLengthMm
    ]
  ];
  const [footLeft, footRight] = at(-1);
  const [topLeft, topRight] = at(1);
  return [footLeft, footRight, topRight, topLeft];
}

function areaOf(corners: readonly Point[]): number {
  return (
    corners.reduce((sum, [x, y], at) => {
      const [nextX, nextY] = corners[(at + 1) % corners.length];
      return sum + x * nextY - nextX * y;
    }, 0) / 2
  );
}

describe('a cut piece in full', () => {
  it('holds every point of its slate within the slope and no other, on random slopes', () => {
    let [raked, points, toPoint, notched] = [0, 0, 0, 0];
    fc.assert(
      fc.property(
        anySlope,
        fc.array(
          fc.tuple(
            fc.double({ min: 0.01, max: 0.99, noNaN: true }),
            fc.double({ min: 0.01, max: 0.99, noNaN: true })
          ),
          {
            minLength: 3,
            maxLength: 3
          }
        ),
        (slope, shares) => {
          const roof = layOutRoof([slope], spec);
          if (!roof.ok) return;
          const [laid] = roof.slopes;
          const outline = outlineOf(laid.slope);
          for (const course of laid.courses)
            for (const piece of course.runs.flatMap((run) => run.pieces)) {
              const shape: CutShape = cutShape(piece, course, laid.slope);
              const [fromMm, toMm] = [piece.slateLeftMm, piece.slateRightMm];
              const topMm = course.tailMm + shape.lengthMm;
              expect(areaOf(shape.corners)).toBeGreaterThan(0);
              if (shape.rakes.length > 0) raked++;
              if (shape.headWidthMm === 0) toPoint++;
              notched += shape.notches.length;
              for (const [x, y] of shares) {
                const point: Point = [
                  fromMm + x * (toMm - fromMm),
                  course.tailMm + y * (topMm - course.tailMm)
                ];
                points++;
                expect(isIn(shape.corners, point)).toBe(isIn(outline, point));
                const [opening] = laid.slope.openings;
                if (!opening) continue;
                const isOut =
                  point[0] > opening.fromLeftMm &&
                  point[0] < opening.fromLeftMm + opening.widthMm &&
                  point[1] > opening.fromEaveMm &&
                  point[1] < opening.fromEaveMm + opening.heightMm;
                const isNotched = shape.notches.some(
                  (notch) =>
                    point[0] > fromMm + notch.fromLeftMm &&
                    point[0] < fromMm + notch.fromLeftMm + notch.widthMm &&
                    point[1] > course.tailMm + notch.fromTailMm &&
                    point[1] < course.tailMm + notch.fromTailMm + notch.heightMm
                );
                if (isIn(shape.corners, point)) expect(isNotched).toBe(isOut);
              }
            }
        }
      ),
      { seed: 183, numRuns: rounds(30, 1000) }
    );
    expect(raked).toBeGreaterThan(300);
    expect(points).toBeGreaterThan(5000);
    expect(toPoint).toBeGreaterThan(10);
    expect(notched).toBeGreaterThan(20);
  });

  it('is as wide at tail and head as the piece, and the areas that show make up the slope', () => {
    fc.assert(
      fc.property(anySlope, (slope) => {
        const roof = layOutRoof([slope], spec);
        if (!roof.ok) return;
        const [laid] = roof.slopes;
        for (const course of laid.courses) {
          const strips = course.runs.flatMap((run) =>
            run.pieces.map((piece) => {
              const shape = cutShape(piece, course, laid.slope);
              expect(shape.tailWidthMm).toBeCloseTo(piece.tailWidthMm, 6);
              expect(shape.headWidthMm).toBeLessThan(piece.headWidthMm + 1e-6);
              const widest = piece.kind === 'slate-and-a-half' ? spec.slateAndAHalfWidthMm : 250;
              expect(Math.max(shape.tailWidthMm, shape.headWidthMm)).toBeLessThan(widest + 0.01);
              return ((piece.tailWidthMm + piece.marginWidthMm) / 2) * course.marginMm;
            })
          );
          const shown = strips.reduce((sum, area) => sum + area, 0) / 1e6;
          const cutOut = laid.slope.openings.length > 0 ? 0.5 : 0;
          // Joints lie between the pieces; a rake that ends inside a margin is drawn as a straight line.
          expect(shown).toBeGreaterThan(course.areaM2 * 0.95 - 0.06);
          expect(shown).toBeLessThan(course.areaM2 + 0.06 + cutOut);
        }
      }),
      { seed: 184, numRuns: rounds(30, 1000) }
    );
  });
});

describe('the courses round an opening', () => {
  it('are those below, those cut and those above, and no course is two of them', () => {
    const courses = Array.from({ length: 15 }, (_, n) => ({
      course: n + 1,
      tailMm: -50 + n * 200,
      headMm: 450 + n * 200
    }));
    // by hand: heads at 450, 650, 850; tails at 1550
    expect(coursesRoundOpening(courses, { fromEaveMm: 900, heightMm: 600 })).toEqual({
      below: 3,
      above: 9,
      cut: [4, 5, 6, 7, 8]
    });
    expect(coursesRoundOpening(courses, { fromEaveMm: 100, heightMm: 100 }).below).toBeUndefined();
    expect(coursesRoundOpening(courses, { fromEaveMm: 2700, heightMm: 900 }).above).toBeUndefined();
  });
});
