/** A piece that the layout says takes its nail has room for it, and one that it reports has not. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type SlateSpec,
  type Slope,
  type SlopeLayout,
  layOutRoof,
  makeSlope,
  slateSpec
} from '$lib/engine/roof';
import { rounds } from '../support/rounds.ts';

const RUNS = { seed: 27_182, numRuns: rounds(40, 300) };

interface Bounds {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Whether a round patch of slate lies in the slope, clear of openings and between two bounds. */
function patchFits(slope: Slope, bounds: Bounds, x: number, y: number, radiusMm: number): boolean {
  if (x - radiusMm < bounds.fromMm || x + radiusMm > bounds.toMm || !isSlate(slope, x, y))
    return false;
  // Every opening here is larger than the patch, so that the rim sees whatever reaches into it.
  for (let turn = 0; turn < 48; turn++) {
    const angle = (turn * Math.PI) / 24;
    if (!isSlate(slope, x + radiusMm * Math.cos(angle), y + radiusMm * Math.sin(angle)))
      return false;
  }
  return true;
}

/** Whether a point lies on the slope and in no opening. */
function isSlate({ openings, ...slope }: Slope, x: number, y: number): boolean {
  const up = y / slope.rafterLengthMm;
  const edge = (side: Slope['left']) => {
    if (!('insetAtTopMm' in side)) throw new Error('edges are given by their inset here');
    return up * side.insetAtTopMm - (side.kind === 'verge' ? slope.vergeOverhangMm : 0);
  };
  if (x < edge(slope.left) || x > slope.eaveWidthMm - edge(slope.right)) return false;
  return !openings.some(
    (hole) =>
      x > hole.fromLeftMm &&
      x < hole.fromLeftMm + hole.widthMm &&
      y > hole.fromEaveMm &&
      y < hole.fromEaveMm + hole.heightMm
  );
}

/** Whether a strip as wide as the patch runs down to what shows, past no opening but at its tail. */
function hangsTogether(
  slope: Slope,
  x: number,
  { holeMm, tailMm }: { readonly holeMm: number; readonly tailMm: number },
  radiusMm: number
): boolean {
  return !slope.openings.some(
    (hole) =>
      hole.fromEaveMm > tailMm &&
      hole.fromEaveMm < holeMm &&
      x + radiusMm > hole.fromLeftMm &&
      x - radiusMm < hole.fromLeftMm + hole.widthMm
  );
}

/** Whether some place of the hole line has that much slate round it, walked in half millimetres. */
function hasPatch(
  slope: Slope,
  bounds: Bounds,
  lines: { readonly holeMm: number; readonly tailMm: number },
  radiusMm: number
): boolean {
  for (let x = bounds.fromMm; x <= bounds.toMm; x += 0.5)
    if (
      hangsTogether(slope, x, lines, radiusMm) &&
      patchFits(slope, bounds, x, lines.holeMm, radiusMm)
    )
      return true;
  return false;
}

const edge = fc.oneof(
  fc.constant({ kind: 'verge' as const, insetAtTopMm: 0 }),
  fc
    .integer({ min: 50, max: 2500 })
    .map((inset) => ({ kind: 'hip' as const, insetAtTopMm: inset })),
  fc
    .integer({ min: 50, max: 2500 })
    .map((inset) => ({ kind: 'valley' as const, insetAtTopMm: -inset }))
);
const roof = fc.record({
  size: fc.constantFrom([500, 250], [400, 200], [300, 150]),
  nailing: fc.constantFrom('centre' as const, 'head' as const),
  rafterLengthMm: fc.integer({ min: 1500, max: 2600 }),
  eaveWidthMm: fc.integer({ min: 3000, max: 5000 }),
  left: edge,
  right: edge,
  opening: fc.option(
    fc.record({
      fromLeftMm: fc.integer({ min: 900, max: 1400 }),
      widthMm: fc.integer({ min: 60, max: 700 }),
      fromEaveMm: fc.integer({ min: 300, max: 700 }),
      heightMm: fc.integer({ min: 40, max: 600 })
    })
  )
});

/** Every piece of the courses with its hole line and where the slate it is cut from reaches. */
function piecesOf(laid: SlopeLayout, spec: SlateSpec) {
  return laid.courses.flatMap((course) =>
    course.runs.flatMap(({ pieces }) =>
      pieces.map((piece) => {
        const isTop = course.kind === 'top';
        const fromTailMm = isTop ? laid.undereave.holeFromTailMm : laid.holeFromTailMm;
        const isWide = piece.kind === 'slate-and-a-half';
        return {
          piece,
          blankMm: isWide ? spec.slateAndAHalfWidthMm : spec.widthMm,
          tailMm: course.tailMm,
          holeMm: course.tailMm + fromTailMm,
          bounds: { fromMm: piece.slateLeftMm, toMm: piece.slateRightMm }
        };
      })
    )
  );
}

describe('the nail of a cut piece', () => {
  it('has 25 mm of slate round it, or the piece is reported, on random roofs', () => {
    const seen = { held: 0, reported: 0 };
    fc.assert(
      fc.property(roof, ({ size: [lengthMm, widthMm], nailing, opening, ...rest }) => {
        const spec = slateSpec({ lengthMm, widthMm, headlapMm: 75, nailing });
        const openings = opening ? [{ kind: 'rooflight' as const, ...opening }] : [];
        const result = layOutRoof(
          [makeSlope({ id: 'one', pitchDegrees: 40, ...rest, openings })],
          spec
        );
        if (!result.ok) return;
        const [laid] = result.slopes;
        let reported = 0;
        for (const { piece, blankMm, tailMm, holeMm, bounds } of piecesOf(laid, spec)) {
          // The slate is no wider than slates are, and covers what shows of it.
          expect(bounds.toMm - bounds.fromMm).toBeLessThan(blankMm + 0.01);
          expect(bounds.fromMm).toBeLessThan(piece.leftMm + 0.01);
          expect(bounds.toMm).toBeGreaterThan(piece.leftMm + piece.widthMm - 0.01);
          if (!piece.isCut && piece.holdsNail) continue;
          const hasRoom = (radiusMm: number) =>
            hasPatch(laid.slope, bounds, { holeMm, tailMm }, radiusMm);
          // Half a millimetre to both sides for the steps of the walk.
          if (piece.holdsNail) {
            seen.held++;
            expect(hasRoom(24.4), JSON.stringify(piece)).toBe(true);
            continue;
          }
          expect(piece.isCut).toBe(true);
          reported++;
          expect(hasRoom(25.6), JSON.stringify(piece)).toBe(false);
        }
        seen.reported += reported;
        const check = laid.checks.find(({ code }) => code === 'cuts-without-nail');
        expect(check?.pieces ?? 0).toBeGreaterThanOrEqual(reported);
        if (reported === 0 && laid.undereave.runs.every(holdAll)) expect(check).toBeUndefined();
      }),
      RUNS
    );
    expect(seen.held).toBeGreaterThan(RUNS.numRuns);
    expect(seen.reported).toBeGreaterThan(RUNS.numRuns);
  }, 60_000);

  it('is reported where there is room beside a valley, but beyond the slate it is cut from', () => {
    const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 75, nailing: 'head' });
    let beyond = 0;
    for (let fromLeftMm = 24; fromLeftMm <= 48; fromLeftMm += 2)
      for (let insetMm = 40; insetMm <= 100; insetMm += 20) {
        const result = layOutRoof(
          [
            makeSlope({
              ...{ id: 'one', rafterLengthMm: 2000, eaveWidthMm: 3100, pitchDegrees: 40 },
              left: { kind: 'valley', insetAtTopMm: -insetMm },
              openings: [
                { kind: 'chimney', fromLeftMm, widthMm: 500, fromEaveMm: 120, heightMm: 500 }
              ]
            })
          ],
          spec
        );
        if (!result.ok) throw new Error('refused');
        const [laid] = result.slopes;
        for (const { piece, tailMm, holeMm, bounds } of piecesOf(laid, spec)) {
          const lines = { tailMm, holeMm };
          const slope = { ...laid.slope, right: { kind: 'verge' as const, insetAtTopMm: 0 } };
          const fits = hasPatch(slope, bounds, lines, piece.holdsNail ? 24.4 : 25.6);
          expect(fits, JSON.stringify(piece)).toBe(piece.holdsNail);
          const wider = { fromMm: bounds.fromMm - 20, toMm: bounds.toMm + 20 };
          if (!piece.holdsNail && hasPatch(slope, wider, lines, 25.6)) beyond++;
        }
      }
    expect(beyond).toBeGreaterThan(10);
  });

  it('is reported where a hip has taken the hole of a piece that is wide at its tail', () => {
    // The hip stands at 2,377 at the eave and loses 1 mm for each mm of rafter.
    const spec = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 70 });
    const slope = makeSlope({
      id: 'one',
      rafterLengthMm: 2300,
      eaveWidthMm: 2377,
      pitchDegrees: 40,
      right: { kind: 'hip', insetAtTopMm: 2300 }
    });
    const result = layOutRoof([slope], spec);
    if (!result.ok) throw new Error('refused');
    const [laid] = result.slopes;
    const runOut = laid.courses.flatMap(({ runs, tailMm }) =>
      runs
        .flatMap(({ pieces }) => pieces)
        .filter(
          (piece) =>
            piece.tailWidthMm >= 150 && 2377 - (tailMm + laid.holeFromTailMm) < piece.leftMm
        )
    );
    expect(runOut.length).toBeGreaterThan(1);
    expect(runOut.filter((piece) => piece.holdsNail)).toEqual([]);
    expect(laid.checks.map(({ code }) => code)).toContain('cuts-without-nail');
  });
});

function holdAll({ pieces }: { readonly pieces: readonly { readonly holdsNail: boolean }[] }) {
  return pieces.every((piece) => piece.holdsNail);
}
