import hypergeometricCdf from '@stdlib/stats-base-dists-hypergeometric-cdf';
import { describe, expect, it } from 'vitest';
import { acceptanceInLot, countInLot, planRisks } from '$lib/engine/delivery';

// Two oracles: a library (@stdlib, by log gamma) and fractions of whole numbers, exact by the
// definition Σ C(bad, k) · C(lot − bad, n − k) / C(lot, n).

/** C(n, k), exact. */
function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let product = 1n;
  for (let at = 1; at <= Math.min(k, n - k); at++)
    product = (product * BigInt(n - Math.min(k, n - k) + at)) / BigInt(at);
  return product;
}

/** Lots in which at most `most` of a sample are bad, and all lots. */
function tail(lot: number, bad: number, sample: number, most: number): readonly [bigint, bigint] {
  let ways = 0n;
  for (let k = 0; k <= most; k++) ways += choose(bad, k) * choose(lot - bad, sample - k);
  return [ways, choose(lot, sample)];
}

const toNumber = ([part, whole]: readonly [bigint, bigint]): number =>
  Number((part * 10n ** 30n) / whole) / 1e30;

/** Size of the lot, slates drawn, most that may be outside. */
const PLANS: readonly (readonly [number, number, number])[] = [
  [40, 7, 1],
  [50, 5, 1],
  [300, 32, 3],
  [1000, 80, 7],
  [5000, 32, 3],
  [5000, 40, 3],
  [5000, 40, 4],
  [12_000, 315, 21]
];

describe('plans on one delivery', () => {
  it.each(PLANS)('lot %i, sample %i, at most %i outside', (lotSize, sampleSize, acceptAtMost) => {
    const plan = { sampleSize, acceptAtMost };
    for (const share of [0, 0.005, 0.01, 0.025, 0.04, 0.1, 0.2, 0.5, 1]) {
      const bad = Math.round(lotSize * share);
      const found = acceptanceInLot(plan, lotSize, bad);
      const exact = toNumber(tail(lotSize, bad, sampleSize, acceptAtMost));
      expect(found, `${bad} bad`).toBeCloseTo(exact, 11);
      const library = hypergeometricCdf(acceptAtMost, lotSize, bad, sampleSize);
      expect(found, `${bad} bad, library`).toBeCloseTo(library, 9);
    }
  });

  it('risks of 40 slates from 5,000, with at most 3 outside, at 4 and 20 %', () => {
    const risks = planRisks({ sampleSize: 40, acceptAtMost: 3 }, 5000, 0.04, 0.2);
    expect(risks.sellersRisk).toBeCloseTo(1 - toNumber(tail(5000, 200, 40, 3)), 11);
    expect(risks.buyersRisk).toBeCloseTo(toNumber(tail(5000, 1000, 40, 3)), 11);
  });
});

describe('how many of a delivery are outside', () => {
  /** Whether a tail is below 1/40, in whole numbers. */
  const isRare = ([part, whole]: readonly [bigint, bigint]): boolean => part * 40n < whole;

  it('is the range of the counts whose tails are both at least 2.5 %, for every sample of a lot', () => {
    let ranges = 0;
    for (const lotSize of [6, 17, 40])
      for (let sampled = 1; sampled <= lotSize; sampled += sampled < 6 ? 1 : 5)
        for (let found = 0; found <= sampled; found++) {
          const inside = Array.from({ length: lotSize + 1 }, (_, bad) => bad).filter((bad) => {
            if (bad < found || bad > lotSize - (sampled - found)) return false;
            const [below, all] = tail(lotSize, bad, sampled, found - 1);
            return !isRare(tail(lotSize, bad, sampled, found)) && !isRare([all - below, all]);
          });
          const told = countInLot({ found, sampled, lotSize }, 0.95);
          expect(told).toEqual({
            ok: true,
            count: { low: inside[0], high: inside.at(-1), level: 0.95 }
          });
          ranges++;
        }
    expect(ranges).toBeGreaterThan(150);
  });

  it.each([
    [0, 40, 5000],
    [1, 40, 5000],
    [3, 80, 4200],
    [4, 100, 4200],
    [20, 200, 12_000]
  ])('%i of %i in %i: the ends hold, and one slate further does not', (found, sampled, lotSize) => {
    const told = countInLot({ found, sampled, lotSize }, 0.95);
    if (!told.ok) throw new Error(told.reason);
    const { low, high } = told.count;
    const upper = (bad: number) => tail(lotSize, bad, sampled, found);
    const lower = (bad: number): readonly [bigint, bigint] => {
      const [below, all] = tail(lotSize, bad, sampled, found - 1);
      return [all - below, all];
    };
    expect([isRare(upper(high)), isRare(upper(high + 1))]).toEqual([false, true]);
    expect(isRare(lower(low))).toBe(false);
    if (low > found) expect(isRare(lower(low - 1))).toBe(true);
    else expect(low).toBe(found);
  });
});
