/**
 * Times exact natural breaks from bins against a general library's optimal classification
 * (simple-statistics, ckmeans) on the raw list of readings, 5 classes, and asserts that both reach
 * the same optimum. The ratio is given twice: bins at hand, as the app keeps them, and bins made
 * from the list first. Pass the largest number of readings to stop earlier.
 */
import { ckmeans } from 'simple-statistics';
import { createRandom, randomNormal } from '$lib/engine';
import { naturalBreaks } from '$lib/engine/grading';
import type { ThicknessBins } from '$lib/engine/thickness';

const PILES = 5;
const largest = Number(process.argv[2] ?? 1_000_000);
let sink = 0;

/** Readings in mm to 0.01: a mixture of two quarry beds, seeded. */
function readings(count: number): Float64Array {
  const random = createRandom(5);
  return Float64Array.from({ length: count }, () => {
    const mean = random() < 0.6 ? 5.4 : 7.1;
    const thicknessMm = mean + 0.8 * randomNormal(random);
    return Math.round(100 * Math.min(12, Math.max(2.5, thicknessMm))) / 100;
  });
}

/** The app's bins from a raw list, by counting. */
function binsOf(list: Float64Array): ThicknessBins {
  const counts = new Float64Array(4001);
  for (const thicknessMm of list) counts[Math.round(thicknessMm * 100)]++;
  const occupied = Array.from(counts.keys()).filter((hundredths) => counts[hundredths] > 0);
  return {
    hundredths: Int32Array.from(occupied),
    counts: Float64Array.from(occupied, (hundredths) => counts[hundredths])
  };
}

function sumOfSquaresWithin(clusters: number[][]): number {
  let within = 0;
  for (const cluster of clusters) {
    const origin = cluster[0];
    let sum = 0;
    for (const value of cluster) sum += value - origin;
    const mean = sum / cluster.length;
    for (const value of cluster) within += (value - origin - mean) ** 2;
  }
  return within;
}

function times(run: () => void, rounds: number): { least: number; median: number } {
  const each = Array.from({ length: rounds }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((one, other) => one - other);
  return { least: each[0], median: each[each.length >> 1] };
}

function ownBreaks(bins: ThicknessBins): number {
  const result = naturalBreaks(bins, PILES);
  if (!result.ok) throw new Error(result.reason);
  sink += result.withinSumOfSquares;
  return result.withinSumOfSquares;
}

for (const count of [10_000, 100_000, 1_000_000].filter((size) => size <= largest)) {
  const list = readings(count);
  const bins = binsOf(list);
  const raw = Array.from(list);

  const own = ownBreaks(bins);
  let clusters: number[][] = [];
  const library = times(
    () => {
      clusters = ckmeans(raw, PILES);
      sink += clusters.length;
    },
    count > 100_000 ? 3 : 5
  );
  const theirs = sumOfSquaresWithin(clusters);
  if (Math.abs(own - theirs) > 1e-9 * theirs)
    throw new Error(`optima differ: ${own} from bins, ${theirs} from the list`);

  const fromBins = times(() => ownBreaks(bins), 101);
  const withBinning = times(() => ownBreaks(binsOf(list)), 21);
  console.log(
    `${count} readings, ${bins.hundredths.length} bins, ${PILES} piles, same optimum ${own.toFixed(6)} mm²:\n` +
      `  ckmeans on the list   min ${library.least.toFixed(1)} ms, median ${library.median.toFixed(1)} ms\n` +
      `  from bins             min ${fromBins.least.toFixed(3)} ms, median ${fromBins.median.toFixed(3)} ms, ` +
      `${(library.median / fromBins.median).toFixed(0)} × faster\n` +
      `  making the bins too   min ${withBinning.least.toFixed(3)} ms, median ${withBinning.median.toFixed(3)} ms, ` +
      `${(library.median / withBinning.median).toFixed(0)} × faster`
  );
}
if (!Number.isFinite(sink)) throw new Error('a figure is not a number');
