import { expect, it } from 'vitest';
import { type Random, createRandom, randomNormal } from '$lib/engine';
import { type PalletSample, estimateGrade, sampleAdvice } from '$lib/engine/statistics';
import { binsFromPairs, gradeIntervals } from '$lib/engine/thickness';
import { leastShare, mostShare, rounds } from '../support/rounds.ts';

/**
 * Advice tried on invented deliveries whose truth is known: gauged as advised, each pile's count must
 * lie within the ± asked for in about 90 deliveries of 100. With 300 deliveries the standard error of
 * that figure is 1.7 in a hundred.
 */
const FULL = 300;
const DELIVERIES = rounds(75, FULL);
const CUTS_MM = [6.9, 5.85];

interface Stock {
  readonly name: string;
  readonly slatesOnPallet: number;
  /** Slates gauged on each pallet before the advice is asked. */
  readonly first: readonly number[];
  readonly palletSdMm: number;
  readonly withinSlates: number;
}

const STOCKS: readonly Stock[] = [
  {
    name: 'six pallets, ten gauged of each',
    slatesOnPallet: 670,
    first: [10, 10, 10, 10, 10, 10],
    palletSdMm: 0.35,
    withinSlates: 101
  },
  {
    name: 'six pallets gauged unequally',
    slatesOnPallet: 670,
    first: [228, 16, 94, 16, 218, 222],
    palletSdMm: 0.35,
    withinSlates: 101
  },
  {
    name: 'ten pallets all but alike, five opened',
    slatesOnPallet: 300,
    first: [8, 8, 8, 8, 8, 0, 0, 0, 0, 0],
    palletSdMm: 0.1,
    withinSlates: 90
  },
  {
    name: 'six pallets, three gauged of each',
    slatesOnPallet: 670,
    first: [3, 3, 3, 3, 3, 3],
    palletSdMm: 0.35,
    withinSlates: 150
  }
];

/** Every slate of each pallet, 0.01 mm, in the order in which it would be gauged. */
function delivered(random: Random, { slatesOnPallet, first, palletSdMm }: Stock): number[][] {
  return first.map(() => {
    const mean = 600 + 100 * palletSdMm * randomNormal(random);
    return Array.from({ length: slatesOnPallet }, () =>
      Math.round(mean + 50 * randomNormal(random))
    );
  });
}

const sampleOf = (pallets: readonly number[][], gauged: readonly number[]): PalletSample[] =>
  pallets.map((slates, index) => ({
    palletId: String(index),
    slates: slates.length,
    bins: binsFromPairs(slates.slice(0, gauged[index]).map((at) => [at, 1]))
  }));

it.each(STOCKS)('brings each count within the ± asked for: $name', (stock) => {
  const bands = gradeIntervals(CUTS_MM);
  const near = bands.map(() => 0);
  let asked = 0;
  for (let delivery = 0; delivery < DELIVERIES; delivery++) {
    const pallets = delivered(createRandom(70_000 + delivery), stock);
    const gauged = [...stock.first];
    const advice = sampleAdvice(sampleOf(pallets, gauged), CUTS_MM, stock.withinSlates);
    if (!advice.ok) throw new Error(advice.reason);
    asked += advice.slates;
    for (const { palletId, slates } of advice.draws) gauged[Number(palletId)] += slates;
    const sample = sampleOf(pallets, gauged);
    for (const [pile, band] of bands.entries()) {
      const grade = estimateGrade(sample, band);
      if (!grade.ok) throw new Error(grade.reason);
      const from = Math.round(100 * band.fromMm);
      const really = pallets.flat().filter((at) => at >= from && at < 100 * band.toMm).length;
      if (Math.abs(grade.count - really) <= stock.withinSlates) near[pile]++;
    }
  }
  const shares = near.map((deliveries) => deliveries / DELIVERIES);
  // the two larger piles decide how much is asked for; the smallest is then known better
  for (const share of shares) expect(share).toBeGreaterThan(leastShare(0.86, DELIVERIES, FULL));
  expect((shares[1] + shares[2]) / 2).toBeLessThan(mostShare(0.95, DELIVERIES, FULL));
  expect(asked / DELIVERIES).toBeGreaterThan(50);
});
