import { describe, expect, it } from 'vitest';
import { reservesWithinRisk, roofPlans, runOutChances } from './run-out.ts';
import { aCourse, aPile, aRequest, planOf } from '../../../../../tests/support/course-requests.ts';

const request = aRequest([aCourse(1, 460), aCourse(2, 480)], [aPile(500), aPile(500)]);
const plan = planOf(request);

describe('runOutChances', () => {
  it('is the normal chance of fewer slates than laid: Φ(−2.025) = 0.02143', () => {
    const piles = runOutChances(plan, [
      { meanSlates: 500, sdSlates: 20 },
      { meanSlates: 500, sdSlates: 0 }
    ]);
    expect(plan.piles[0].slates).toBe(460);
    expect(piles[0].chance).toBeCloseTo(0.0214337, 6); // computed with the error function of another library
    expect(piles[1].chance).toBe(0);
  });

  it('counts slates that are expected to break', () => {
    const counted = { meanSlates: 500, sdSlates: 0 };
    expect(runOutChances(plan, [counted, counted], [40, 21]).map(({ chance }) => chance)).toEqual([
      0, 1
    ]);
  });

  it('never runs out of a pile that is not laid', () => {
    const idle = planOf(aRequest([aCourse(1, 5)], [aPile(5), aPile(0)]));
    expect(
      runOutChances(idle, [
        { meanSlates: 5, sdSlates: 0 },
        { meanSlates: 0, sdSlates: 3 }
      ])
    ).toEqual([
      { pile: 1, chance: 0 },
      { pile: 2, chance: 0 }
    ]);
  });

  it('stays within 0 and 1 where the estimate is hopeless', () => {
    const hopeless = runOutChances(plan, [
      { meanSlates: -9000, sdSlates: 1 },
      { meanSlates: 1, sdSlates: 1 }
    ]);
    expect(hopeless.map(({ chance }) => chance)).toEqual([1, 1]);
  });

  it('refuses estimates for other piles, negative and missing figures', () => {
    const known = { meanSlates: 1, sdSlates: 1 };
    expect(() => runOutChances(plan, [known])).toThrow(/1 estimates/);
    expect(() => runOutChances(plan, [known, { meanSlates: 1, sdSlates: -1 }])).toThrow(/below 0/);
    expect(() => runOutChances(plan, [known, { meanSlates: Number.NaN, sdSlates: 1 }])).toThrow(
      /finite/
    );
  });
});

describe('roofPlans', () => {
  const estimates = [
    { meanSlates: 500, sdSlates: 20 },
    { meanSlates: 500, sdSlates: 5 }
  ];
  const none = [0, 0];
  const within = (mostChance: number, breakages = none) => ({ estimates, mostChance, breakages });

  it('raises reserves just far enough to hold every chance of the rule under the limit', () => {
    const { byRule, heldUnder, raisedBy } = roofPlans(request, within(0.025));
    if (byRule.status !== 'optimal') throw new Error('the stock suffices');
    // Φ⁻¹(0.025) = −1.96: 500 − 1.96 × 20 + 0.5 = 461.3 and 500 − 1.96 × 5 + 0.5 = 490.7
    expect(raisedBy).toEqual([39, 10]);
    expect(heldUnder).toBe(0.025);
    for (const { chance } of runOutChances(byRule, estimates))
      expect(chance).toBeLessThanOrEqual(0.025);
    // what is left over is told by the reserve asked for, which is none
    expect(byRule.piles.map(({ slates, spareSlates }) => slates + spareSlates)).toEqual([500, 500]);
  });

  it('never lowers the reserve that was asked for', () => {
    const cautious = { ...request, piles: [aPile(500, 40), aPile(500, 15)] };
    expect(roofPlans(cautious, within(0.2)).raisedBy).toEqual([0, 0]);
  });

  it('holds the chance with the slates that are expected to break', () => {
    const breakages = [30, 12];
    const roomy = { ...request, piles: [aPile(540), aPile(540)] };
    const wide = [
      { meanSlates: 540, sdSlates: 20 },
      { meanSlates: 540, sdSlates: 5 }
    ];
    const held = roofPlans(roomy, { estimates: wide, mostChance: 0.1, breakages });
    const loose = roofPlans(roomy, { estimates: wide, mostChance: 0.1, breakages: none });
    expect(held.raisedBy.map((slates, pile) => slates - loose.raisedBy[pile])).toEqual(breakages);
    if (held.byRule.status !== 'optimal') throw new Error('the stock suffices');
    for (const { chance } of runOutChances(held.byRule, wide, breakages))
      expect(chance).toBeLessThanOrEqual(0.1);
  });

  it('makes the plan by the rule without the limit where none holds it, and says so', () => {
    const plans = roofPlans(request, within(0.0001));
    expect(plans.byRule.status).toBe('optimal');
    expect(plans.heldUnder).toBeUndefined();
    expect(plans.raisedBy).toEqual([0, 0]);
    expect(() => roofPlans(request, within(0))).toThrow(/above 0/);
  });

  it('is short both ways where the stock is, and holds nothing where nothing is known', () => {
    const short = roofPlans({ ...request, piles: [aPile(500), aPile(400)] }, within(0.1));
    expect([short.byRule.status, short.mostEven.status]).toEqual(['short', 'short']);
    const { heldUnder, byRule, mostEven } = roofPlans(request);
    expect(heldUnder).toBeUndefined();
    expect([byRule.status, mostEven.status]).toEqual(['optimal', 'optimal']);
  });
});

describe('reservesWithinRisk', () => {
  it('keeps back what lies beyond the limit, and never less than nothing more', () => {
    const uncertain = { meanSlates: 500, sdSlates: 20 };
    // Φ((473.5 − 500) / 20) = 0.0926 and Φ((474.5 − 500) / 20) = 0.1011: 474 may be laid
    expect(reservesWithinRisk([aPile(500, 10)], [uncertain], 0.1)).toEqual([16]);
    expect(reservesWithinRisk([aPile(500, 10)], [uncertain], 0.1, [5])).toEqual([21]);
    expect(reservesWithinRisk([aPile(500, 40)], [uncertain], 0.1)).toEqual([0]);
    expect(reservesWithinRisk([], [], 0.1)).toEqual([]);
    expect(() => reservesWithinRisk([aPile(500)], [], 0.1)).toThrow(/0 estimates/);
  });

  it('is what the plan by the rule raises', () => {
    const estimates = [
      { meanSlates: 500, sdSlates: 20 },
      { meanSlates: 500, sdSlates: 5 }
    ];
    const risk = { estimates, mostChance: 0.1, breakages: [0, 0] };
    expect(roofPlans(request, risk).raisedBy).toEqual(
      reservesWithinRisk(request.piles, estimates, 0.1)
    );
  });
});
