import { describe, expect, it } from 'vitest';
import { binsFromPairs } from '$lib/engine/thickness';
import { withRisks } from '$lib/engine/delivery';
import type { PalletTally, SampleDraw } from '$lib/job';
import { plansOf } from './delivery-judging-plan.ts';
import { type PlanChoice, drawAct, packedPallets, workOutPlan } from './delivery-plan.ts';

const choice: PlanChoice = {
  from: 'anywhere',
  kind: 'attributes',
  level: 'II',
  aqlPercent: 1.5,
  severity: 'normal',
  good: { share: 0.05, acceptance: 0.95 },
  poor: { share: 0.15, acceptance: 0.075 }
};

const pallet = (
  label: string,
  slates: number,
  layers?: number,
  perLayer?: number
): PalletTally => ({
  palletId: label,
  label,
  slates,
  layers,
  perLayer,
  gaugedBins: binsFromPairs([]),
  putBackBins: binsFromPairs([]),
  piledBins: binsFromPairs([]),
  gauged: 0,
  sampled: 0,
  tapped: 0,
  setAside: 0,
  onPile: new Map(),
  sorted: 0
});

describe('a plan worked out', () => {
  it('by attributes: 5,000 slates, level II, 1.5 % (MIL-STD-105E, table II-A)', () => {
    const plan = workOutPlan(choice, 5000);
    expect(plan).toMatchObject({ ok: true, planSize: 200, acceptAtMost: 7, everySlate: false });
    if (!plan.ok) return;
    expect(plan.sellersRisk).toBeGreaterThan(0);
    expect(plan.sellersRisk).toBeLessThan(0.05);
    expect(plan.buyersRisk).toBeLessThanOrEqual(0.1);
    expect(plan.curve[0]).toEqual({ share: 0, acceptance: 1 });
  });

  it('by variables: 5,000 slates, 1.5 % (MIL-STD-414, table of M: 75 slates, 3.17 %)', () => {
    const plan = workOutPlan({ ...choice, kind: 'variables' }, 5000);
    expect(plan).toMatchObject({ ok: true, planSize: 75, byThickness: { allowedShare: 0.0317 } });
  });

  it('of its own: 5 % at 95 % and 15 % at 7.5 % take 80 slates, 7 outside', () => {
    const plan = workOutPlan({ ...choice, kind: 'own' }, 5000);
    expect(plan).toMatchObject({ ok: true, planSize: 80, acceptAtMost: 7, poorShare: 0.15 });
  });

  it.each<[string, Partial<PlanChoice>, number]>([
    ['lot-too-small', {}, 1],
    ['lot-too-small', { kind: 'variables' }, 2],
    ['lot-beyond-table', { kind: 'variables' }, 10_001],
    ['cell-in-doubt', { aqlPercent: 10 }, 8],
    ['sample-exceeds-lot', { kind: 'own' }, 79],
    ['sample-exceeds-lot', { drawAtLeast: 5001 }, 5000],
    ['fewer-than-plan', { drawAtLeast: 199 }, 5000],
    ['points-wrong', { kind: 'own', poor: { share: 0.05, acceptance: 0.1 } }, 5000],
    ['points-wrong', { kind: 'own', good: { share: 0, acceptance: 0.95 } }, 5000],
    ['points-wrong', { kind: 'own', poor: { share: 0.15, acceptance: 1 } }, 5000]
  ])('refuses: %s', (reason, more, lot) => {
    expect(workOutPlan({ ...choice, ...more }, lot)).toMatchObject({ ok: false, reason });
  });

  it('has a curve that never rises and ends where hardly anything is accepted', () => {
    for (const kind of ['attributes', 'variables', 'own'] as const)
      for (const lot of [40, 400, 4000]) {
        const plan = workOutPlan({ ...choice, kind, aqlPercent: 4 }, lot);
        if (!plan.ok) continue;
        const chances = plan.curve.map(({ acceptance }) => acceptance);
        for (let index = 1; index < chances.length; index++)
          expect(chances[index]).toBeLessThanOrEqual(chances[index - 1] + 1e-12);
        const end = plan.curve[plan.curve.length - 1];
        expect(end.acceptance <= 0.1 || end.share >= 0.999).toBe(true);
      }
  });
});

describe('a list drawn', () => {
  const plan = workOutPlan({ ...choice, kind: 'own' }, 400);
  const pallets = [pallet('A', 200, 4, 50), pallet('B', 200, 5, 40)];

  it('names its plan, and the same seed gives the same list', () => {
    if (!plan.ok) throw new Error(plan.reason);
    const act = drawAct({ ...choice, kind: 'own' }, plan, pallets, 9);
    expect(act).toEqual(drawAct({ ...choice, kind: 'own' }, plan, pallets, 9));
    expect(act?.body).toMatchObject({ plan: 'own', planSize: 80, acceptAtMost: 7, seed: 9 });
    expect(act?.body.positions).toHaveLength(80);
    expect(act?.body.positions.filter(({ palletId }) => palletId === 'A')).toHaveLength(40);
  });

  it('of few layers says so (J74), and the same seed gives the same list', () => {
    if (!plan.ok) throw new Error(plan.reason);
    const few = { ...choice, kind: 'own', from: 'few-layers' } as const;
    const act = drawAct(few, plan, pallets, 9);
    expect(act?.body.fewLayers).toBe(true);
    expect(act).toEqual(drawAct(few, plan, pallets, 9));
    expect(act?.body.positions).toHaveLength(80);
    expect('fewLayers' in (drawAct(choice, plan, pallets, 9)?.body ?? {})).toBe(false);
  });

  it('that draws more than the plan asks is one plan: chosen, drawn and judged', () => {
    const own: PlanChoice = {
      ...choice,
      kind: 'own',
      good: { share: 0.04, acceptance: 0.95 },
      poor: { share: 0.2, acceptance: 0.1 },
      drawAtLeast: 40
    };
    const chosen = workOutPlan(own, 5000);
    if (!chosen.ok) throw new Error(chosen.reason);
    expect(chosen).toMatchObject({ planSize: 32, sampleSize: 40, acceptAtMost: 4 });
    // scipy 1.17 hypergeom(5000, 200, 40) and (5000, 1000, 40): beyond 4, and up to 4
    expect(chosen.sellersRisk).toBeCloseTo(0.0205297, 6);
    expect(chosen.buyersRisk).toBeCloseTo(0.0751022, 6);

    const act = drawAct(own, chosen, [pallet('A', 5000, 50, 100)], 9);
    expect(act?.body).toMatchObject({ planSize: 40, acceptAtMost: 4 });
    const draw = { id: 'd', at: '', value: act?.body } as unknown as SampleDraw;
    const judged = withRisks(plansOf(draw, 5000).plan, 5000);
    for (const figure of ['sampleSize', 'acceptAtMost', 'sellersRisk', 'buyersRisk'] as const)
      expect(judged[figure]).toBe(chosen[figure]);
  });

  it('says where no number keeps both risks for so many', () => {
    const own: PlanChoice = {
      ...choice,
      kind: 'own',
      good: { share: 0.04, acceptance: 0.95 },
      poor: { share: 0.2, acceptance: 0.1 }
    };
    const broken = (drawAtLeast: number): boolean | undefined => {
      const plan = workOutPlan({ ...own, drawAtLeast }, 5000);
      return plan.ok ? plan.isBuyersRiskBroken : undefined;
    };
    // scipy binom: for 36 slates 4 are needed for the seller, and pass 20 % 12.7 times in 100.
    expect([32, 33, 36, 40].map(broken)).toEqual([false, false, true, false]);
  });

  it('needs to know how each pallet is packed', () => {
    const { wrong } = packedPallets([pallet('A', 200), pallet('B', 200, 3, 40), pallet('C', 0)]);
    expect(wrong).toEqual([
      { label: 'A', reason: 'layers-missing' },
      { label: 'B', reason: 'holds-less' }
    ]);
  });
});
