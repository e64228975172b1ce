/** The two bonds across a width square at both ends. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BondLayout, type BondPair, layBonds, slateSpec } from '$lib/engine/roof';
import { rounds } from '../support/rounds.ts';

const RUNS = { seed: 20_417, numRuns: rounds(500, 1500) };

const anySpec = fc
  .record({
    widthMm: fc.integer({ min: 150, max: 400 }),
    jointMinMm: fc.integer({ min: 2, max: 4 }),
    jointRangeMm: fc.integer({ min: 0, max: 3 })
  })
  .map(({ widthMm, jointMinMm, jointRangeMm }) =>
    slateSpec({
      lengthMm: 500,
      widthMm,
      headlapMm: 100,
      jointMinMm,
      jointMaxMm: jointMinMm + jointRangeMm
    })
  );
type Spec = ReturnType<typeof slateSpec>;

/** Widths from 1.6 slates to 60, in tenths of a mm. */
const anyWidth = fc
  .integer({ min: 16, max: 600 })
  .chain((tenths) => fc.integer({ min: 0, max: 99 }).map((more) => (tenths + more / 100) / 10));

function gaps({ pieces }: BondLayout): number[] {
  return pieces
    .slice(1)
    .map((piece, index) => piece.leftMm - pieces[index].leftMm - pieces[index].widthMm);
}

function demandOf(pair: BondPair): number {
  return [...pair.A.pieces, ...pair.B.pieces].reduce(
    (sum, { kind }) => sum + (kind === 'slate-and-a-half' ? 1.5 : 1),
    0
  );
}

function lay(spec: Spec, slates: number): BondPair {
  return layBonds(slates * spec.widthMm, spec);
}

describe('bonds', () => {
  it('cover the width exactly, marks strictly rising, every joint within its limits', () => {
    let whole = 0;
    fc.assert(
      fc.property(anySpec, anyWidth, (spec, slates) => {
        const pair = lay(spec, slates);
        whole += Number(pair.isWhole);
        for (const bond of [pair.A, pair.B]) {
          const last = bond.pieces[bond.pieces.length - 1];
          expect(bond.pieces[0].leftMm).toBe(0);
          expect(Math.abs(last.leftMm + last.widthMm - slates * spec.widthMm)).toBeLessThan(1e-6);
          for (const gap of gaps(bond)) {
            expect(gap).toBeGreaterThan(spec.jointMinMm - 1e-6);
            expect(gap).toBeLessThan(spec.jointMaxMm + 1e-6);
          }
          for (const piece of bond.pieces) expect(piece.widthMm).toBeGreaterThan(0);
        }
      }),
      RUNS
    );
    expect(whole).toBeGreaterThan(RUNS.numRuns / 15);
    expect(whole).toBeLessThan((RUNS.numRuns * 14) / 15);
  });

  it('break joint by half a slate, within one joint, wherever both slates are whole', () => {
    fc.assert(
      fc.property(anySpec, anyWidth, (spec, slates) => {
        const { A, B } = lay(spec, slates);
        const edges = ({ pieces }: BondLayout) =>
          pieces
            .slice(1)
            .filter(
              (piece, index) =>
                ![piece, pieces[index]].some(
                  ({ kind, widthMm }) =>
                    kind === 'cut' ||
                    (kind !== 'full' && widthMm < spec.slateAndAHalfWidthMm - 1e-6)
                )
            )
            .map((piece) => piece.leftMm);
        for (const inA of edges(A))
          for (const inB of edges(B)) {
            const apart = Math.abs(inA - inB);
            if (apart < spec.widthMm)
              expect(Math.abs(apart - (spec.widthMm + A.jointMm) / 2)).toBeLessThanOrEqual(
                spec.jointMaxMm + 1e-6
              );
          }
      }),
      RUNS
    );
  });

  it('finish whole without cuts, and cut at the nearest whole width without any', () => {
    fc.assert(
      fc.property(anySpec, anyWidth, (spec, slates) => {
        const pair = lay(spec, slates);
        const atNearest = layBonds(pair.nearestWholeWidthMm, spec);
        expect(atNearest.isWhole).toBe(true);
        expect(atNearest.cutPieces).toBe(0);
        if (pair.isWhole) expect(pair.nearestWholeWidthMm).toBe(slates * spec.widthMm);
        else expect(pair.cutPieces).toBeGreaterThan(0);
      }),
      RUNS
    );
  });

  it('never cut below the limit where slates are at least 200 mm wide and the course has three', () => {
    fc.assert(
      fc.property(anySpec, anyWidth, (spec, slates) => {
        fc.pre(spec.widthMm >= 205 && slates >= 3);
        expect(lay(spec, slates).narrowestCutMm ?? Infinity).toBeGreaterThanOrEqual(
          spec.narrowestCutMm - 1e-6
        );
      }),
      RUNS
    );
  });

  it('ask for no fewer slates when the width grows, from three slates up', () => {
    fc.assert(
      fc.property(anySpec, anyWidth, fc.integer({ min: 1, max: 400 }), (spec, slates, moreMm) => {
        fc.pre(slates >= 3);
        const narrow = slates * spec.widthMm;
        expect(demandOf(layBonds(narrow + moreMm, spec))).toBeGreaterThanOrEqual(
          demandOf(layBonds(narrow, spec))
        );
      }),
      RUNS
    );
  });

  it('mirror each other: turned round, whole bonds are the same two bonds', () => {
    let whole = 0;
    fc.assert(
      fc.property(anySpec, anyWidth, (spec, slates) => {
        const pair = lay(spec, slates);
        if (!pair.isWhole) return;
        whole++;
        const width = slates * spec.widthMm;
        const turned = ({ pieces }: BondLayout) =>
          pieces.map((piece) => width - piece.leftMm - piece.widthMm).reverse();
        const plain = ({ pieces }: BondLayout) => pieces.map((piece) => piece.leftMm);
        const isOdd = pair.A.pieces.some(({ kind }) => kind === 'slate-and-a-half');
        const mirrorOfA = isOdd ? pair.B : pair.A;
        for (const [index, mark] of turned(pair.A).entries())
          expect(mark).toBeCloseTo(plain(mirrorOfA)[index], 6);
      }),
      RUNS
    );
    expect(whole).toBeGreaterThan(100);
  });
});
