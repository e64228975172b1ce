import { describe, expect, it } from 'vitest';
import { countPieces, runDemand } from './demand.ts';
import { setOutPerps } from './perps.ts';
import { piecesInCourse } from './pieces.ts';
import { slateSpec } from './slate-spec.ts';
import { type Slope, makeSlope } from './slope-shape.ts';

const SPEC = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const LINE = { tailMm: 1000, headMm: 1500, marginMm: 200, holeMm: 1310 };

function runsOf(given: Partial<Slope>, line = LINE) {
  const slope = makeSlope({
    id: 'one',
    rafterLengthMm: 4000,
    eaveWidthMm: 2427,
    pitchDegrees: 35,
    ...given
  });
  return piecesInCourse(slope, line, setOutPerps(slope, SPEC).bonds.A, SPEC);
}

describe('piecesInCourse', () => {
  it('lays whole slates from verge to verge', () => {
    const runs = runsOf({});
    expect(countPieces(runs)).toEqual({ full: 10, cut: 0, slateAndAHalf: 0, slateAndAHalfCut: 0 });
    expect(runs[0].leftMm).toBe(-50);
    expect(runs[0].rightMm).toBeCloseTo(2477, 9);
  });

  it('cuts the slates a hip crosses, by hand', () => {
    // The hip loses 1 mm for 2 mm of rafter: at the tail it stands at 2427 − 500 = 1927, at the top
    // of the margin at 1827, at the head at 1677. Slates start at −50 and every 253 mm.
    const [{ pieces }] = runsOf({ right: { kind: 'hip', insetAtTopMm: 2000 } });
    expect(pieces).toHaveLength(8);
    expect(pieces[6]).toMatchObject({ kind: 'cut', leftMm: 1468, widthMm: 250, tailWidthMm: 250 });
    expect(pieces[6].headWidthMm).toBeCloseTo(209, 9);
    expect(pieces[7]).toMatchObject({ kind: 'cut', leftMm: 1721 });
    expect(pieces[7].tailWidthMm).toBeCloseTo(206, 9);
    expect(pieces[7].marginWidthMm).toBeCloseTo(106, 9);
    expect(pieces[7].headWidthMm).toBe(0);
  });

  it('lays a narrow end and its neighbour as one slate-and-a-half', () => {
    // 100 mm further in: the last piece would be 106 mm at its tail.
    const [run] = runsOf({ right: { kind: 'hip', insetAtTopMm: 2400 } });
    const last = run.pieces[run.pieces.length - 1];
    expect(last).toMatchObject({ kind: 'slate-and-a-half', isCut: true, leftMm: 1468 });
    expect(last.tailWidthMm).toBeCloseTo(359, 9);
    expect(runDemand(run)).toEqual({
      slates: 6,
      startsWithSlateAndAHalf: false,
      endsWithSlateAndAHalf: true
    });
  });

  it('leaves a strip no wider than a joint to the joint', () => {
    // The hip stands at 1726 at the tail, 5 mm past the start of the eighth slate.
    const [{ pieces }] = runsOf({ right: { kind: 'hip', insetAtTopMm: 4 * 701 } }, LINE);
    expect(pieces).toHaveLength(7);
  });

  it.each([
    ['takes the margin exactly', 1000, 200, 2],
    ['falls a millimetre short of it', 1000, 199, 1],
    ['starts a millimetre late', 1001, 400, 1],
    ['only meets the heads', 1300, 400, 1]
  ])('an opening that %s leaves %d', (_, fromEaveMm, heightMm, runs) => {
    const found = runsOf({
      openings: [{ kind: 'rooflight', fromLeftMm: 900, widthMm: 600, fromEaveMm, heightMm }]
    });
    expect(found).toHaveLength(runs);
    expect(countPieces(found).full).toBeLessThan(10);
  });

  it('lays nothing where the slope has closed', () => {
    const line = { tailMm: 3999, headMm: 4499, marginMm: 1, holeMm: 4309 };
    const hip = { kind: 'hip', insetAtTopMm: 1213.5 } as const;
    expect(runsOf({ left: hip, right: hip }, line)).toEqual([]);
  });

  it('counts a lone slate-and-a-half at the left end of its run', () => {
    const piece = {
      kind: 'slate-and-a-half' as const,
      isCut: true,
      leftMm: 0,
      widthMm: 300,
      tailWidthMm: 300,
      marginWidthMm: 300,
      headWidthMm: 300,
      slateLeftMm: 0,
      slateRightMm: 300,
      holdsNail: true
    };
    expect(runDemand({ leftMm: 0, rightMm: 300, pieces: [piece] })).toEqual({
      slates: 0,
      startsWithSlateAndAHalf: true,
      endsWithSlateAndAHalf: false
    });
  });
});
