import { describe, expect, it } from 'vitest';
import { acceptance } from '$lib/engine/delivery';
import { leastAcceptance, plansOf } from './delivery-judging-plan.ts';
import type { SampleDraw } from '$lib/job/delivery-sample.ts';

const POSITIONS = Array.from({ length: 100 }, (_, at) => ({
  palletId: 'a',
  layer: 1,
  place: at + 1
}));
const RISKS = {
  good: { share: 0.04, acceptance: 0.95 },
  poor: { share: 0.115, acceptance: 0.1 }
};

/** A list of 100 places drawn with these fields. */
function drawn(fields: object): SampleDraw {
  return { value: { positions: POSITIONS, plan: 'own', ...fields } } as unknown as SampleDraw;
}

describe('leastAcceptance', () => {
  it('is 0 where nothing is outside', () => {
    expect(leastAcceptance(100, 0)).toBe(0);
  });

  it('passes 95 times in 100, and one slate less would not', () => {
    for (const [sampleSize, share, least] of [
      [100, 0.04, 7],
      [20, 0.05, 3],
      [1, 0.04, 0]
    ]) {
      expect(leastAcceptance(sampleSize, share)).toBe(least);
      const passes = (acceptAtMost: number) => acceptance({ sampleSize, acceptAtMost }, share);
      expect(passes(least)).toBeGreaterThanOrEqual(0.95);
      if (least > 0) expect(passes(least - 1)).toBeLessThan(0.95);
    }
  });
});

describe('plansOf', () => {
  it('takes a list that named no plan to accept 4 % outside, by common practice', () => {
    const { plan, variables } = plansOf(drawn({}), 4200);
    expect(plan).toMatchObject({ sampleSize: 100, acceptAtMost: 7, acceptableShare: 0.04 });
    expect(plan.basis.map(({ standing }) => standing)).toEqual(['common practice']);
    expect(variables).toBeUndefined();
  });

  it('a list of an older release, that drew more than its plan, gets the number for all of it', () => {
    const { plan } = plansOf(drawn({ planSize: 80, acceptAtMost: 5, ...RISKS }), 4200);
    // Binomial(100, 0.04): 7 or fewer outside 95.3 times in 100, 6 or fewer 89.4 times (R pbinom).
    expect(plan).toMatchObject({ sampleSize: 100, acceptAtMost: 7, acceptableShare: 0.04 });
    expect(plan.basis.map(({ standing }) => standing)).toEqual(['computed']);
  });

  it('keeps to what a list was drawn by, and counts slates of an earlier list beside it', () => {
    const list = drawn({ planSize: 100, acceptAtMost: 8, ...RISKS });
    expect(plansOf(list, 4200).plan).toMatchObject({ sampleSize: 100, acceptAtMost: 8 });
    expect(plansOf(list, 4200, 112).plan.sampleSize).toBe(112);
  });

  it('says of a list in few layers, or of slates of an earlier one that count, that its risks are others', () => {
    const byOne = { ...drawn({}), id: 'b' };
    const few = { ...drawn({ fewLayers: true }), id: 'a' };
    expect('isInFewLayers' in plansOf(byOne, 4200).plan).toBe(false);
    expect(plansOf(few, 4200).plan.isInFewLayers).toBe(true);
    expect('isInFewLayers' in plansOf(byOne, 4200, 100, [few, byOne]).plan).toBe(false);
    expect(plansOf(byOne, 4200, 112, [few, byOne]).plan.isInFewLayers).toBe(true);
    expect('isInFewLayers' in plansOf({ ...byOne, id: '0' }, 4200, 112, [few]).plan).toBe(false);
  });

  it('of a variables list gives that plan too', () => {
    const { plan, variables } = plansOf(drawn({ plan: 'variables', aqlPercent: 4 }), 4200);
    expect(plan.acceptableShare).toBe(0.04);
    expect(variables?.allowedShare).toBeGreaterThan(0.04);
  });
});
