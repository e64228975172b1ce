import { describe, expect, it } from 'vitest';
import { type Cluster, twoStageMean } from './clusters.ts';
import { meanOfDrawnPallets } from './drawn-pallets.ts';

const NOTHING_USUAL = { alike: 0.3, worth: 0 };
const opened = (size: number, mean: number): Cluster =>
  Object.freeze({ size, sampled: 10, mean, variance: 1 });

function known(told: ReturnType<typeof meanOfDrawnPallets>) {
  if (!told.ok) throw new Error(told.reason);
  return told;
}

describe('meanOfDrawnPallets', () => {
  it('is the two-stage mean where no pallet stays closed, and misses what it misses', () => {
    const all = [opened(100, 6), opened(300, 7)];
    expect(meanOfDrawnPallets(all, [], 0.95, { alike: 0.5, worth: 2 })).toEqual(
      twoStageMean(all, [], 0.95)
    );
    expect(
      meanOfDrawnPallets([opened(100, 6)], [100], 0.95, { alike: 0.5, worth: 2 })
    ).toMatchObject({ ok: false, reason: 'one-pallet-of-many' });
  });

  it('has the two-stage variance of pallets of one size where nothing is taken as usual', () => {
    const list = [opened(100, 6), opened(100, 7), opened(100, 6.4)];
    const [own, plain] = [
      known(meanOfDrawnPallets(list, [100, 100], 0.95, NOTHING_USUAL)),
      known(twoStageMean(list, [100, 100], 0.95))
    ];
    expect(own.standardError).toBeCloseTo(plain.standardError, 12);
    expect(own.degreesOfFreedom).toBeCloseTo(plain.degreesOfFreedom, 10);
  });

  it('is less sure where the large pallets stay closed than where the small ones do', () => {
    const usual = { alike: 0.3, worth: 2 };
    const large = known(
      meanOfDrawnPallets([opened(50, 6), opened(60, 7)], [500, 600], 0.95, usual)
    );
    const small = known(
      meanOfDrawnPallets([opened(500, 6), opened(600, 7)], [50, 60], 0.95, usual)
    );
    expect(large.standardError).toBeGreaterThan(2 * small.standardError);
  });

  it('does not take two pallets that happen to be alike for proof that all are', () => {
    const alike = [opened(300, 6), opened(300, 6)];
    const closed = Array<number>(10).fill(300);
    const told = known(meanOfDrawnPallets(alike, closed, 0.95, { alike: 0.5, worth: 2 }));
    // c = 1/2 − 1/12 times s² = 2/3 of what pallets usually differ by, 1 · (1 + 0.1 − 1/300)
    const between = ((1 / 2 - 1 / 12) * 2 * (1 + 0.1 - 1 / 300)) / 3;
    const within = 2 * (1 / 4 - (1 / 2 - 1 / 12) / 2) * (1 / 10 - 1 / 300);
    expect(told.standardError).toBeCloseTo(Math.sqrt(between + within), 12);
  });
});
