import { describe, expect, it } from 'vitest';
import { planWithinRisk, reservesWithinRisk, runOutChances } from './run-out.ts';
import { aCourse, aPile, aRequest, planOf } from '../../../../../tests/support/course-requests.ts';

const request = aRequest([aCourse(1, 460), aCourse(2, 480)], [aPile(500), aPile(500)]);
const plan = planOf(request);

describe('runOutChances', () => {
  it('is the normal chance of fewer slates than laid: Φ(−2.025) = 0.02143', () => {
    const { piles, anyAtMost } = runOutChances(plan, [
      { meanSlates: 500, sdSlates: 20 },
      { meanSlates: 500, sdSlates: 0 }
    ]);
    expect(plan.piles[0].slates).toBe(460);
    expect(piles[0].chance).toBeCloseTo(0.0214337, 6); // computed with the error function of another library
    expect(piles[1].chance).toBe(0);
    expect(anyAtMost).toBe(piles[0].chance);
  });

  it('counts slates that are expected to break', () => {
    const counted = { meanSlates: 500, sdSlates: 0 };
    expect(
      runOutChances(plan, [counted, counted], [40, 21]).piles.map(({ chance }) => chance)
    ).toEqual([0, 1]);
  });

  it('never runs out of a pile that is not laid', () => {
    const idle = planOf(aRequest([aCourse(1, 5)], [aPile(5), aPile(0)]));
    expect(
      runOutChances(idle, [
        { meanSlates: 5, sdSlates: 0 },
        { meanSlates: 0, sdSlates: 3 }
      ])
    ).toEqual({
      piles: [
        { pile: 1, chance: 0 },
        { pile: 2, chance: 0 }
      ],
      anyAtMost: 0
    });
  });

  it('stays within 0 and 1 where the estimate is hopeless', () => {
    const hopeless = runOutChances(plan, [
      { meanSlates: -9000, sdSlates: 1 },
      { meanSlates: 1, sdSlates: 1 }
    ]);
    expect(hopeless.piles.map(({ chance }) => chance)).toEqual([1, 1]);
    expect(hopeless.anyAtMost).toBe(1);
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

describe('planWithinRisk', () => {
  const estimates = [
    { meanSlates: 500, sdSlates: 20 },
    { meanSlates: 500, sdSlates: 5 }
  ];

  it('raises reserves just far enough to hold every chance under the limit', () => {
    const held = planWithinRisk(request, estimates, 0.025);
    if (held.result.status !== 'optimal') throw new Error('the stock suffices');
    // Φ⁻¹(0.025) = −1.96: 500 − 1.96 × 20 + 0.5 = 461.3 and 500 − 1.96 × 5 + 0.5 = 490.7
    expect(held.raisedBy).toEqual([39, 10]);
    for (const { chance } of runOutChances(held.result, estimates).piles)
      expect(chance).toBeLessThanOrEqual(0.025);
  });

  it('never lowers the reserve that was asked for', () => {
    const cautious = { ...request, piles: [aPile(500, 40), aPile(500, 15)] };
    expect(planWithinRisk(cautious, estimates, 0.2).raisedBy).toEqual([0, 0]);
  });

  it('holds the chance with the slates that are expected to break', () => {
    const breakages = [30, 12];
    const held = planWithinRisk(request, estimates, 0.1, breakages);
    const loose = planWithinRisk(request, estimates, 0.1);
    expect(held.raisedBy.map((slates, pile) => slates - loose.raisedBy[pile])).toEqual(breakages);
    if (loose.result.status !== 'optimal') throw new Error('the stock suffices');
    const roomy = { ...request, piles: [aPile(540), aPile(540)] };
    const wide = [
      { meanSlates: 540, sdSlates: 20 },
      { meanSlates: 540, sdSlates: 5 }
    ];
    const { result } = planWithinRisk(roomy, wide, 0.1, breakages);
    if (result.status !== 'optimal') throw new Error('the stock suffices');
    for (const { chance } of runOutChances(result, wide, breakages).piles)
      expect(chance).toBeLessThanOrEqual(0.1);
  });

  it('is short where the risk cannot be held', () => {
    expect(planWithinRisk(request, estimates, 0.0001).result).toMatchObject({ status: 'short' });
    expect(() => planWithinRisk(request, estimates, 0)).toThrow(/above 0/);
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

  it('is what a plan within the chance raises', () => {
    const estimates = [
      { meanSlates: 500, sdSlates: 20 },
      { meanSlates: 500, sdSlates: 5 }
    ];
    expect(planWithinRisk(request, estimates, 0.1).raisedBy).toEqual(
      reservesWithinRisk(request.piles, estimates, 0.1)
    );
  });
});
