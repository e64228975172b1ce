import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec } from '$lib/engine/roof';
import { type JobView, emptyPart } from '$lib/journal';
import { pileMaterials, undereaveNails } from './pile-materials.ts';
import { setAsideForUndereave } from './set-aside-for-undereave.ts';

const SPEC = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
// Fixing length 5450 − 25 − 450 = 4975; / 200 = 24.9, so 25 spaces of 199.
const SLOPE = makeSlope({ id: 'a', rafterLengthMm: 5450, eaveWidthMm: 7900, pitchDegrees: 35 });

function roof() {
  const laid = layOutRoof([SLOPE], SPEC);
  if (!laid.ok) throw new Error(laid.reason);
  return laid;
}

function viewOf(parts: Record<string, object>): JobView {
  return new Map(Object.entries(parts)) as unknown as JobView;
}

const setting = <T>(value: T) => [{ id: '1', at: '2026-01-01T00:00:00.000Z', value }];

describe('nails and mass by pile', () => {
  it('knows nothing without a thickness', () => {
    expect(pileMaterials(viewOf({}), roof())).toEqual([]);
  });

  it('takes the nominal thickness of the order while nothing is measured', () => {
    const delivery = setting({ supplier: '', nominalThicknessMm: 6 });
    const view = viewOf({ job: { ...emptyPart('job'), delivery } });
    const [all, ...others] = pileMaterials(view, roof());
    expect(others).toEqual([]);
    expect(all).toMatchObject({ pile: 0, thicknessMm: 6, nailLength: { nearestSoldMm: 35 } });
    expect(all.nails).toBeUndefined();
    // 2800 × 0.006 × 500 / 199
    expect(all.massKgPerM2).toBeCloseTo(42.21, 2);
    // 600 mm of 6 mm slates: 100, at 2.1 kg each
    expect(all.stack).toMatchObject({ slates: 100, heightMm: 600 });
    expect(all.stack.massKg).toBeCloseTo(210, 9);
  });

  it('gives each pile its nails by the adopted plan, two to a piece', () => {
    const pallet = {
      ...emptyPart('pallet:p'),
      declared: setting({ palletId: 'p', label: 'P', slates: 4 }),
      piles: {
        'g|1': { gauged: { '800': 2 }, tapped: {} },
        'g|2': { gauged: { '500': 2 }, tapped: {} }
      }
    };
    const grades = [{ ...setting({ method: 'byHand', thresholdsMm: [6.5] })[0], id: 'g' }];
    const courses = [
      { slopeId: 'a', course: 1, piles: [{ pile: 1, pieces: 31 }] },
      {
        slopeId: 'a',
        course: 2,
        piles: [
          { pile: 1, pieces: 10 },
          { pile: 2, pieces: 21 }
        ]
      }
    ];
    const plans = setting({
      gradesId: 'g',
      kickAllowanceMm: 1.5,
      expectedKickers: 0,
      joints: 60,
      courses
    });
    const view = viewOf({
      job: { ...emptyPart('job'), grades },
      plans: { plans },
      'pallet:p': pallet
    });
    const rows = pileMaterials(view, roof());
    expect(rows.map(({ pile, thicknessMm, nails }) => [pile, thicknessMm, nails])).toEqual([
      [1, 8, 82],
      [2, 5, 42]
    ]);
    // 2 × 8 + 20 = 36 and 2 × 5 + 20 = 30, each to the next 5 mm
    expect(rows.map((row) => row.nailLength.nearestSoldMm)).toEqual([40, 30]);
  });
});

describe('nails of the undereave row', () => {
  it('are those that the whole roof counts beyond the pieces of its courses', () => {
    const { totals } = roof();
    const { full, cut, slateAndAHalf } = totals.counts;
    expect(totals.undereaveSlateAndAHalves).toBeGreaterThan(0);
    expect(undereaveNails(roof())).toBe(totals.nails - 2 * (full + cut + slateAndAHalf));
  });
});

describe('slates set aside as undereave slates', () => {
  it('counts each reason over all pallets and uses, and says which will do', () => {
    const pallet = (setAside: object) => ({ ...emptyPart('pallet:p'), setAside });
    const view = viewOf({
      'pallet:p': pallet({ 'colour|undereave': 3, 'colour|return': 2, 'dullRing|scrap': 1 }),
      'pallet:q': pallet({ 'colour|undereave': 4, 'broken|cutPiece': 6 })
    });
    expect(setAsideForUndereave(view, { lengthMm: 300, widthMm: 250 })).toEqual([
      { reason: 'broken', slates: 6, use: { use: 'look', because: 'measure' } },
      { reason: 'dullRing', slates: 1, use: { use: 'no', because: 'unsound' } },
      { reason: 'colour', slates: 9, use: { use: 'yes' } }
    ]);
    expect(setAsideForUndereave(viewOf({}), { lengthMm: 300, widthMm: 250 })).toEqual([]);
  });
});
