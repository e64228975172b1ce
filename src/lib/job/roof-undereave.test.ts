import { describe, expect, it } from 'vitest';
import { layOutRoof, makeSlope, slateSpec } from '$lib/engine/roof';
import { type JobView, emptyPart } from '$lib/journal';
import { undereaveServedAtMost } from './roof-undereave.ts';

const SPEC = slateSpec({ lengthMm: 500, widthMm: 250, headlapMm: 100 });
const SLOPE = makeSlope({ id: 'a', rafterLengthMm: 5450, eaveWidthMm: 7900, pitchDegrees: 35 });

function roof() {
  const laid = layOutRoof([SLOPE], SPEC);
  if (!laid.ok) throw new Error(laid.reason);
  return laid;
}

function viewOf(...palletsSetAside: Record<string, number>[]): JobView {
  const parts = palletsSetAside.map((setAside, n) => [
    `pallet:${n}`,
    { ...emptyPart(`pallet:${n}`), setAside }
  ]);
  return new Map(parts as [string, object][]) as unknown as JobView;
}

describe('undereave slates from slates set aside', () => {
  it('are none while none is set aside, or none is marked for the row', () => {
    expect(undereaveServedAtMost(viewOf(), roof())).toBe(0);
    expect(undereaveServedAtMost(viewOf({ 'colour|return': 4 }), roof())).toBe(0);
  });

  it('are those marked for the row on all pallets, less those that will not do', () => {
    const view = viewOf(
      { 'colour|undereave': 3, 'colour|scrap': 9, 'dullRing|undereave': 5 },
      { 'broken|undereave': 4, 'twisted|undereave': 2 }
    );
    expect(undereaveServedAtMost(view, roof())).toBe(7);
  });

  it('are no more than the row takes, slate-and-a-halves apart', () => {
    const { undereaveSlates } = roof().totals;
    expect(undereaveServedAtMost(viewOf({ 'colour|undereave': 500 }), roof())).toBe(
      undereaveSlates
    );
  });
});
