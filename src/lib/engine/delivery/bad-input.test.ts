import { describe, expect, it } from 'vitest';
import { EngineError } from '../errors.ts';
import { attributesPlan } from './attributes-plan.ts';
import { atMost, binomial, hypergeometric } from './count-distribution.ts';
import { judgeByAttributes } from './finding-outside-order.ts';
import { acceptanceNumberFor } from './judging-plan.ts';
import { countInLot, shareStandardError } from './finite-lot.ts';
import { noncentralTCdf } from './noncentral-t.ts';
import { acceptance, operatingCurve, planRisks } from './operating-characteristic.ts';
import { findAttributesPlan } from './plan-finder.ts';
import { clopperPearson } from './proportion-intervals.ts';
import { leastWhole } from './root.ts';
import { estimateShareOutside, judgeByVariables, shareBeyond } from './variables-judgement.ts';
import { variablesPlan } from './variables-plan.ts';

const plan = { sampleSize: 20, acceptAtMost: 1 };

describe('misuse throws', () => {
  it.each<[string, () => unknown]>([
    ['more bad than the lot', () => hypergeometric(10, 11, 5)],
    ['a sample larger than the lot', () => hypergeometric(10, 5, 11)],
    ['a share above 1', () => binomial(10, 1.1)],
    ['a lot that is not whole', () => attributesPlan(10.5, 'II', 1, 'normal')],
    ['a share that is NaN', () => acceptance(plan, Number.NaN)],
    ['a sample of 0', () => acceptance({ sampleSize: 0, acceptAtMost: 0 }, 0.1)],
    [
      'risk points the wrong way round',
      () => findAttributesPlan({ share: 0.1, acceptance: 0.9 }, { share: 0.05, acceptance: 0.1 })
    ],
    ['limits the wrong way round', () => planRisks(plan, 100, 0.1, 0.1)],
    ['more found than sampled', () => clopperPearson(3, 2, 0.95)],
    ['a level of 1', () => clopperPearson(1, 2, 1)],
    [
      'thickness limits the wrong way round',
      () => estimateShareOutside(5, 1, 5, { low: 6, high: 4 })
    ],
    ['no degrees of freedom', () => noncentralTCdf(1, 0, 0)],
    ['a quality index that is NaN', () => shareBeyond(Number.NaN, 5)]
  ])('%s', (_name, misuse) => {
    expect(misuse).toThrow(EngineError);
  });
});

describe('expected absence is a tagged result', () => {
  it.each<[string, unknown]>([
    ['lot-too-small', attributesPlan(1, 'II', 1, 'normal')],
    ['lot-too-small', attributesPlan(0, 'II', 1, 'normal')],
    ['lot-too-small', variablesPlan(2, 1)],
    ['sample-exceeds-lot', countInLot({ found: 0, sampled: 11, lotSize: 10 }, 0.95)],
    ['nothing-sampled', countInLot({ found: 0, sampled: 0, lotSize: 10 }, 0.95)],
    ['lot-empty', countInLot({ found: 0, sampled: 0, lotSize: 0 }, 0.95)],
    ['too-few', shareStandardError({ found: 0, sampled: 1, lotSize: 10 })],
    ['too-few', judgeByVariables([5, 5], { low: 4, high: 6 }, { allowedShare: 0.1 })]
  ])('%s', (reason, result) => {
    expect(result).toEqual({ ok: false, reason });
  });
});

describe('edges', () => {
  it('distributions with only one possible count', () => {
    expect(atMost(binomial(5, 0), 0)).toBe(1);
    expect(atMost(binomial(5, 1), 4)).toBe(0);
    expect(atMost(hypergeometric(5, 5, 3), 2)).toBe(0);
    expect(atMost(hypergeometric(5, 0, 3), 0)).toBe(1);
    expect(atMost(hypergeometric(5, 2, 5), 1)).toBe(0);
  });

  it('readings all alike: all in or all out', () => {
    const limits = { low: 4, high: 6 };
    const same = (value: number) => {
      const result = judgeByVariables([value, value, value], limits, { allowedShare: 0.1 });
      return result.ok && [result.judgement.shareOutside.total, result.judgement.accepted];
    };
    expect(same(5)).toEqual([0, true]);
    expect(same(4)).toEqual([0, true]);
    expect(same(6.1)).toEqual([1, false]);
  });

  it('a curve over a small lot gives each whole count once', () => {
    const curve = operatingCurve({ sampleSize: 2, acceptAtMost: 0 }, 4, 50, 1);
    expect(curve.map(({ share }) => share)).toEqual([0, 0.25, 0.5, 0.75, 1]);
    // By hand: 4·3/(4·3), 3·2/12, 2·1/12, 0, 0.
    for (const [index, expected] of [1, 1 / 2, 1 / 6, 0, 0].entries())
      expect(curve[index].acceptance).toBeCloseTo(expected, 15);
  });

  it('risks take whole slates to the careful side', () => {
    const risks = planRisks({ sampleSize: 10, acceptAtMost: 0 }, 100, 0.07, 0.2);
    expect(risks.sellersRisk).toBeCloseTo(1 - atMost(hypergeometric(100, 7, 10), 0), 15);
    expect(risks.buyersRisk).toBeCloseTo(atMost(hypergeometric(100, 20, 10), 0), 15);
  });

  it('looking at more slates than planned never costs the seller', () => {
    const judging = { ...plan, acceptableShare: 0.02, basis: [] };
    expect(acceptanceNumberFor(judging, 20)).toBe(1);
    const larger = acceptanceNumberFor(judging, 60);
    const promised = acceptance(plan, 0.02);
    expect(acceptance({ sampleSize: 60, acceptAtMost: larger }, 0.02)).toBeGreaterThanOrEqual(
      promised
    );
    expect(acceptance({ sampleSize: 60, acceptAtMost: larger - 1 }, 0.02)).toBeLessThan(promised);
  });

  it('a plan says accepted or refused as soon as nothing can change it', () => {
    const judging = { ...plan, acceptableShare: 0.02, basis: [] };
    expect(judgeByAttributes(judging, 19, 0).state).toBe('accepted');
    expect(judgeByAttributes(judging, 19, 1).state).toBe('unfinished');
    expect(judgeByAttributes(judging, 2, 2).state).toBe('refused');
  });

  it('leastWhole finds the first that is enough', () => {
    for (const first of [1, 2, 3, 17, 1000]) expect(leastWhole(1, (n) => n >= first)).toBe(first);
  });
});
