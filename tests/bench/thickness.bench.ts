/**
 * Times the statistics of thickness: moments from bins against moments of the raw list at 10^4, 10^5
 * and 10^6 readings (the cost from bins must not grow with them), a sorter's hand from
 * 5,000 spot checks, taps as strata, and advice on sampling for 40 pallets. Prints least and median of
 * the rounds, in milliseconds, and asserts that the fast way and the plain one agree.
 */
import { createRandom, randomNormal } from '$lib/engine';
import {
  type PalletSample,
  type SpotCheck,
  doubleSample,
  estimateGrade,
  gradeByDoubleSample,
  learnHand,
  sampleAdvice
} from '$lib/engine/statistics';
import {
  type ThicknessBins,
  binsFromPairs,
  momentsOfBins,
  momentsOfList,
  quantilesMm
} from '$lib/engine/thickness';

let sink = 0;

function times(run: () => number, rounds: number): { least: number; median: number } {
  const each = Array.from({ length: rounds }, () => {
    const start = performance.now();
    sink += run();
    return performance.now() - start;
  }).sort((one, other) => one - other);
  return { least: each[0], median: each[each.length >> 1] };
}

function print(name: string, { least, median }: { least: number; median: number }, note = '') {
  console.log(`${name.padEnd(52)} ${least.toFixed(3)} / ${median.toFixed(3)} ms ${note}`);
}

const random = createRandom(17);
const thickness = () =>
  Math.round(100 * Math.min(12, Math.max(2.5, 5.8 + 0.9 * randomNormal(random))));

function binsOf(hundredths: readonly number[]): ThicknessBins {
  const counts = new Map<number, number>();
  for (const value of hundredths) counts.set(value, (counts.get(value) ?? 0) + 1);
  return binsFromPairs(counts);
}

console.log('least / median of the rounds');
for (const count of [10_000, 100_000, 1_000_000]) {
  const list = Array.from({ length: count }, thickness);
  const bins = binsOf(list);
  const raw = Float64Array.from(list, (value) => value / 100);
  const [one, other] = [momentsOfBins(bins), momentsOfList(raw)];
  if (!one.ok || !other.ok || Math.abs(one.meanMm - other.mean) > 1e-9)
    throw new Error('moments from bins and from the list differ');
  const fromBins = times(() => {
    const moments = momentsOfBins(bins);
    return moments.ok ? moments.meanMm : 0;
  }, 400);
  const fromList = times(() => {
    const moments = momentsOfList(raw);
    return moments.ok ? moments.mean : 0;
  }, 15);
  const quantiles = times(() => {
    const result = quantilesMm(bins, [0.05, 0.25, 0.5, 0.75, 0.95]);
    return result.ok ? result.quantilesMm[2] : 0;
  }, 400);
  print(`moments from ${bins.counts.length} bins, ${count} readings`, fromBins);
  print(
    `moments of the raw list, ${count} readings`,
    fromList,
    `(${(fromList.median / fromBins.median).toFixed(0)} times the bins)`
  );
  print(`five quantiles from bins, ${count} readings`, quantiles);
}

const checks: SpotCheck[] = Array.from({ length: 5000 }, () => {
  const thicknessMm = thickness() / 100;
  const felt = thicknessMm + 0.4 * randomNormal(random);
  return { pile: felt >= 6.3 ? 1 : felt >= 5.1 ? 2 : 3, thicknessMm };
});
const hand = learnHand(checks, 3);
if (!hand.ok) throw new Error(hand.reason);
print(
  'a hand from 5,000 spot checks, 3 piles',
  times(() => {
    const learnt = learnHand(checks, 3);
    return learnt.ok ? learnt.sdMm : 0;
  }, 30),
  '(aim below 100 ms)'
);

const tappedPallets = Array.from({ length: 40 }, (_, index) => ({
  palletId: String(index),
  slates: 500,
  bins: binsOf(Array.from({ length: 10 }, thickness)),
  taps: [
    [150, 220, 120],
    [0, 0, 0]
  ],
  checks: [
    [8, 11, 6].map((count) => binsOf(Array.from({ length: count }, thickness))),
    [0, 0, 0].map(() => binsOf([]))
  ]
}));
print(
  'taps as strata, 40 pallets, 1,000 checks, 40 bars',
  times(() => {
    const sample = doubleSample(tappedPallets);
    if (!sample.ok) throw new Error(sample.reason);
    let total = 0;
    for (let bar = 0; bar < 40; bar++) {
      const told = gradeByDoubleSample(sample, { fromMm: 3 + bar / 5, toMm: 3.2 + bar / 5 });
      if (told.ok) total += told.countHigh;
    }
    return total;
  }, 15),
  '(aim below 100 ms)'
);

const pallets: PalletSample[] = Array.from({ length: 40 }, (_, index) => ({
  palletId: String(index),
  slates: 500,
  bins: binsOf(index < 12 ? Array.from({ length: 15 }, thickness) : [])
}));
print(
  'five grades of 40 pallets estimated',
  times(() => {
    let total = 0;
    for (const fromMm of [3, 4, 5, 6, 7]) {
      const grade = estimateGrade(pallets, { fromMm, toMm: fromMm + 1 });
      if (grade.ok) total += grade.countHigh;
    }
    return total;
  }, 30)
);
for (const within of [1500, 600])
  print(
    `advice on sampling 40 pallets, ± ${within} of 20,000`,
    times(() => {
      const advice = sampleAdvice(pallets, [6.5, 5.8, 5], within);
      return advice.ok ? advice.slates : 0;
    }, 5)
  );
console.log(`sink ${sink.toFixed(3)}`);
