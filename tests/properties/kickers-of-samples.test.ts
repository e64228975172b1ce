import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { kickChances, whatIf } from '$lib/engine/courses';
import {
  type KickSoftness,
  gradeFigures,
  kickSoftness,
  misgradedPiles,
  splitIntoPiles
} from '$lib/engine/grading';
import { normalMisgrading } from '$lib/engine/grading/misgrading';
import { type ThicknessBins, binsFromPairs, mergeBins, totalCount } from '$lib/engine/thickness';
import { report, rounds } from '../support/rounds.ts';

const ALLOWANCE_MM = 0.3;
const STOCK = 6000;
const GAUGE_SD_MM = 0.2;

/** A skewed stock, log-normal about 6.3 mm, thinnest first, in hundredths. */
const stock = ((): number[] => {
  const random = createRandom(15);
  return Array.from({ length: STOCK }, () =>
    Math.round(630 * Math.exp(0.2 * randomNormal(random)))
  ).sort((one, other) => one - other);
})();

const binsOf = (hundredths: readonly number[]): ThicknessBins =>
  binsFromPairs(hundredths.map((value) => [value, 1] as const));

const scaledTo = (bins: ThicknessBins, slates: number): ThicknessBins =>
  mergeBins([bins], [totalCount(bins) > 0 ? slates / totalCount(bins) : 0]);

/** Bounds of equal piles, falling, mm. */
const boundsOf = (piles: number): number[] =>
  Array.from({ length: piles - 1 }, (_, at) => stock[Math.floor((STOCK * (at + 1)) / piles)] / 100)
    .reverse()
    .filter((mm, at, all) => at === 0 || mm < all[at - 1]);

/** Kickers in 100 joints, pile by pile through the whole stock, told slate by slate. */
function trueKickers(piles: readonly (readonly number[])[]): number {
  let sum = 0;
  for (const pile of piles) {
    let kicking = 0;
    let below = 0;
    for (const [at, value] of pile.entries()) {
      while (pile[below] < value - 100 * ALLOWANCE_MM) below++;
      kicking += below;
      if (at > 0 && value < pile[at - 1]) throw new Error('thinnest first');
    }
    sum += (pile.length / STOCK) * ((2 * kicking) / (pile.length * (pile.length - 1)));
  }
  return 100 * sum;
}

/** The slates each pile takes, thickest pile first. */
const sorted = (boundsMm: readonly number[]): number[][] =>
  [...boundsMm, -Infinity].map((low, at) =>
    stock.filter((value) => value >= 100 * low && value < 100 * (at > 0 ? boundsMm[at - 1] : 1e6))
  );

/** What a plan is priced with: kickers in 100 joints when each pile is laid by its slates. */
function told(piles: readonly ThicknessBins[], softness?: KickSoftness): number {
  const { within } = kickChances(piles, ALLOWANCE_MM, undefined, softness);
  const slates = piles.map(totalCount);
  const all = slates.reduce((sum, n) => sum + n, 0);
  return 100 * within.reduce((sum, chance, at) => sum + (chance * slates[at]) / all, 0);
}

const samples = (
  piles: number,
  readings: number,
  tell: (bins: ThicknessBins) => number
): number => {
  const random = createRandom(100 * piles + readings);
  const tried = rounds(readings > 50 ? 1000 : 6000, 12_000);
  let sum = 0;
  for (let round = 0; round < tried; round++)
    sum += tell(
      binsOf(Array.from({ length: readings }, () => stock[Math.floor(random() * STOCK)]))
    );
  return sum / tried;
};

describe('kickers told from a sample', () => {
  it('two readings of 500 slates each tell what the two readings tell', () => {
    const two = binsFromPairs([
      [500, 1],
      [700, 1]
    ]);
    expect(kickChances([two], 1.5).within).toEqual([1]);
    expect(kickChances([mergeBins([two], [500])], 1.5).within).toEqual([1]);
  });

  // Truth: every pair of a stock of 6,000 made here. The drawing is this file's own.
  it.each([2, 3, 4, 6, 8].flatMap((piles) => [20, 40, 100, 300].map((n) => [piles, n] as const)))(
    '%d piles from %d readings, scaled to the stock, within 3 in 100 of the truth',
    (piles, readings) => {
      const boundsMm = boundsOf(piles);
      const real = trueKickers(sorted(boundsMm));
      const plan = samples(piles, readings, (bins) =>
        told(splitIntoPiles(scaledTo(bins, STOCK), boundsMm))
      );
      const grades = samples(piles, readings, (bins) => {
        const ground = { bins, stockSlates: STOCK, courses: [], kickAllowanceMm: ALLOWANCE_MM };
        return gradeFigures(ground)(boundsMm).expectedKickersPer100Joints;
      });
      report(`${piles} piles, ${readings} readings`, {
        'told over true': (plan / real).toFixed(3)
      });
      expect(Math.abs(plan / real - 1)).toBeLessThan(0.03);
      expect(grades).toBeCloseTo(plan, 6);
    }
  );

  it('allows for slates on a wrong pile without taking a reading for a pair', () => {
    const boundsMm = boundsOf(4);
    const chance = normalMisgrading(GAUGE_SD_MM);
    const random = createRandom(4);
    const copies = 6;
    let real = 0;
    for (let copy = 0; copy < copies; copy++) {
      const piles: number[][] = Array.from({ length: 4 }, () => []);
      for (const value of stock) {
        const readMm = value / 100 + GAUGE_SD_MM * randomNormal(random);
        piles[boundsMm.filter((mm) => readMm < mm).length].push(value);
      }
      real += trueKickers(piles) / copies;
    }
    const ofSample = samples(4, 25, (bins) =>
      told(misgradedPiles(scaledTo(bins, STOCK), boundsMm, chance))
    );
    report('4 piles, 25 readings, gauge SD 0.2 mm', {
      true: real.toFixed(2),
      told: ofSample.toFixed(2)
    });
    expect(Math.abs(ofSample / real - 1)).toBeLessThan(0.03);
  });

  it.each(
    [20, 60, 300].flatMap((readings) => [
      { readings, rule: 'plain rule', softness: undefined },
      { readings, rule: 'soft kick', softness: kickSoftness(0.4, 0.05, 0.57) }
    ])
  )('$readings readings tell every screen the same figure, $rule', ({ readings, softness }) => {
    const random = createRandom(readings);
    const chanceAbove = normalMisgrading(GAUGE_SD_MM);
    const run = { slates: 40, startsWithSlateAndAHalf: false, endsWithSlateAndAHalf: false };
    const course = { slopeId: 's', course: 1, heightMm: 0, runs: [run] };
    for (let round = 0; round < rounds(40, 400); round++) {
      const bins = binsOf(
        Array.from({ length: readings }, () => stock[Math.floor(random() * STOCK)])
      );
      const piles = 1 + (round % 8);
      const boundsMm = boundsOf(piles);
      const stockOf = { bins, stockSlates: STOCK, courses: [] };
      const ground = { ...stockOf, kickAllowanceMm: ALLOWANCE_MM, softness };
      const scaled = scaledTo(bins, STOCK);
      // Grades, sharp and with slates on a wrong pile, against what a plan is priced with
      const sharp = gradeFigures(ground)(boundsMm);
      expect(sharp.expectedKickersPer100Joints).toBeCloseTo(
        told(splitIntoPiles(scaled, boundsMm), softness),
        6
      );
      const misgraded = gradeFigures({ ...ground, chanceAbove })(boundsMm);
      expect(misgraded.expectedKickersPer100Joints).toBeCloseTo(
        told(misgradedPiles(scaled, boundsMm, chanceAbove), softness),
        6
      );
      // unsorted, as Findings takes it from these figures and What if tells it
      const [row] = whatIf(
        [course],
        { spread: scaled, slates: STOCK, slateAndAHalves: 0, reservedShare: 0, softness },
        { thresholdsMm: [[]], kickAllowancesMm: [ALLOWANCE_MM], reservedShares: [0] }
      );
      expect(row.per100Joints).toBeCloseTo(sharp.unsorted.expectedKickersPer100Joints, 6);
      expect(told([bins], softness)).toBeCloseTo(sharp.unsorted.expectedKickersPer100Joints, 6);
    }
  });
});
