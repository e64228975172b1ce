import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Random, createRandom, randomNormal, shuffled } from '$lib/engine';
import { type PalletSince, stockDrift } from '$lib/engine/statistics';
import { type ThicknessBins, binsFromPairs } from '$lib/engine/thickness';
import { leastShare, mostShare, rounds } from '../support/rounds.ts';

const SEED = 20_260_803;
const FULL = 200;
const JOBS = rounds(50, FULL);
const LOOK_EVERY = 10;

/** A job: what each pallet is like, what was sampled of it, and how it is sorted. */
interface Job {
  readonly meansMm: readonly number[];
  /** One SD for all pallets, or one each. */
  readonly sdMm: number | readonly number[];
  readonly sampled: readonly number[];
  readonly slates: number;
  readonly shiftMm: number;
  /** Pallets in the order they are sorted, one after the other; or all pallets mixed. */
  readonly order: readonly number[] | 'mixed';
}

/** Whether a job of which all slates are gauged is ever called drifted. */
function isEverDrifted(job: Job, random: Random): boolean {
  const { meansMm, sampled, slates, shiftMm } = job;
  const draw = (pallet: number, byMm: number): number => {
    const sdMm = typeof job.sdMm === 'number' ? job.sdMm : job.sdMm[pallet];
    return Math.round(100 * (meansMm[pallet] + byMm + sdMm * randomNormal(random)));
  };
  const samples = meansMm.map((_, pallet) =>
    binsFromPairs(Array.from({ length: sampled[pallet] }, () => [draw(pallet, 0), 1]))
  );
  const order = job.order === 'mixed' ? meansMm.map((_, pallet) => pallet) : job.order;
  const oneByOne = order.flatMap((pallet) => Array<number>(slates).fill(pallet));
  const sorting = job.order === 'mixed' ? shuffled(oneByOne, random) : oneByOne;
  const since = meansMm.map((): [number, number][] => []);
  return sorting.some((pallet, place) => {
    since[pallet].push([draw(pallet, shiftMm), 1]);
    if ((place + 1) % LOOK_EVERY !== 0) return false;
    const result = stockDrift(
      samples.map((sample, own) => ({ sample, since: binsFromPairs(since[own]) }))
    );
    return result.ok && result.drifted;
  });
}

function alarms(jobOf: (random: Random) => Job, seed: number): number {
  let called = 0;
  for (let job = 0; job < JOBS; job++) {
    const random = createRandom(seed * 10_000 + job);
    if (isEverDrifted(jobOf(random), random)) called++;
  }
  return called / JOBS;
}

const rising = (meansMm: readonly number[]): number[] =>
  meansMm.map((_, pallet) => pallet).sort((one, other) => meansMm[one] - meansMm[other]);

const ONE_STOCK: Job = {
  meansMm: [6],
  sdMm: 0.6,
  sampled: [60],
  slates: 400,
  shiftMm: 0,
  order: [0]
};
const SIX_MEANS_MM = [5.54, 5.87, 6.05, 5.69, 6.14, 7.04];
const SIX: Job = {
  meansMm: SIX_MEANS_MM,
  sdMm: 0.55,
  sampled: [17, 17, 17, 17, 17, 17],
  slates: 60,
  shiftMm: 0,
  order: rising(SIX_MEANS_MM)
};
const TWO: Job = {
  ...ONE_STOCK,
  meansMm: [5.5, 6.7],
  sampled: [20, 20],
  slates: 100,
  order: [1, 0]
};

describe('a job without drift is called drifted in fewer than one of twenty, whatever the order', () => {
  it.each<[string, Job]>([
    ['one stock', ONE_STOCK],
    ['pallets of 5.5 and 6.7 mm, the thick one first', TWO],
    ['pallets of 5.5 and 6.7 mm, the thin one first', { ...TWO, order: [0, 1] }],
    ['six pallets that differ, from the thinnest', SIX],
    [
      'six pallets that differ, from the thickest',
      { ...SIX, order: rising(SIX_MEANS_MM).toReversed() }
    ],
    ['six pallets that differ, slates mixed', { ...SIX, order: 'mixed' }],
    [
      'the thickest pallet varies twice as much and comes first',
      { ...SIX, sdMm: [0.4, 0.4, 0.4, 0.4, 0.4, 0.8], order: [5, 0, 1, 2, 3, 4] }
    ]
  ])('%s', (_, job) => {
    expect(alarms(() => job, 1)).toBeLessThan(mostShare(0.05, JOBS, FULL));
  });

  it.each([0.1, 0.4])('three of eight pallets were not sampled, means vary by %d mm', (sdMm) => {
    const called = alarms((random) => {
      const meansMm = Array.from({ length: 8 }, () => 6 + sdMm * randomNormal(random));
      const sampled = [20, 20, 0, 20, 0, 20, 20, 0];
      return { meansMm, sdMm: 0.55, sampled, slates: 40, shiftMm: 0, order: rising(meansMm) };
    }, 2);
    expect(called).toBeLessThan(mostShare(0.05, JOBS, FULL));
  });
});

describe('a job that drifts is called drifted', () => {
  it.each<[string, Job, number, number]>([
    ['one stock, by 0.2 mm', ONE_STOCK, 0.2, 0.25],
    ['one stock, by 0.3 mm', ONE_STOCK, 0.3, 0.7],
    ['one stock, by half a millimetre thinner', ONE_STOCK, -0.5, 0.98],
    ['six pallets that differ, by 0.3 mm', SIX, 0.3, 0.9],
    ['six pallets that differ, by half a millimetre', SIX, -0.5, 0.99]
  ])('%s', (_, job, shiftMm, atLeast) => {
    expect(alarms(() => ({ ...job, shiftMm }), 3)).toBeGreaterThanOrEqual(
      leastShare(atLeast, JOBS, FULL)
    );
  });
});

describe('the shift and its interval', () => {
  const bins = fc
    .array(fc.tuple(fc.integer({ min: 300, max: 1000 }), fc.integer({ min: 1, max: 6 })), {
      maxLength: 12
    })
    .map(binsFromPairs);
  const pallets = fc.array(fc.record({ sample: bins, since: bins }), { maxLength: 6 });
  const check = <T>(property: fc.IProperty<T>) => fc.assert(property, { seed: SEED, numRuns: 300 });
  const near = (value: number, expected: number) =>
    expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-8 * (1 + Math.abs(expected)));
  const every = (list: readonly PalletSince[], change: (bins: ThicknessBins) => ThicknessBins) =>
    list.map(({ sample, since }) => ({ sample: change(sample), since: change(since) }));

  it('do not depend on the order of the pallets, nor on where thickness is counted from', () => {
    let compared = 0;
    check(
      fc.property(pallets, fc.integer({ min: 1, max: 900 }), (list, by) => {
        const own = stockDrift(list);
        const moved = every(list.toReversed(), ({ hundredths, counts }) => ({
          hundredths: hundredths.map((value) => value + by),
          counts
        }));
        const other = stockDrift(moved);
        expect(other.ok).toBe(own.ok);
        if (!own.ok || !other.ok) return;
        compared++;
        for (const key of ['shiftMm', 'lowMm', 'highMm'] as const) near(other[key], own[key]);
      })
    );
    expect(compared).toBeGreaterThan(100);
  });

  it('scale with thickness, and turn round with it', () => {
    check(
      fc.property(pallets, (list) => {
        const own = stockDrift(list);
        const turned = every(list, ({ hundredths, counts }) =>
          binsFromPairs([...hundredths].map((value, bin) => [3000 - 3 * value, counts[bin]]))
        );
        const other = stockDrift(turned);
        expect(other.ok).toBe(own.ok);
        if (!own.ok || !other.ok) return;
        near(other.shiftMm, -3 * own.shiftMm);
        near(other.lowMm, -3 * own.highMm);
        near(other.highMm, -3 * own.lowMm);
        expect(other.drifted).toBe(own.drifted);
      })
    );
  });

  it('hold no NaN, and 0 unless the stock drifted', () => {
    check(
      fc.property(pallets, (list) => {
        const result = stockDrift(list);
        if (!result.ok) return;
        for (const figure of [result.shiftMm, result.lowMm, result.highMm])
          expect(Number.isFinite(figure)).toBe(true);
        expect(result.drifted).toBe(result.lowMm > 0 || result.highMm < 0);
      })
    );
  });
});
