import { describe, expect, it } from 'vitest';
import { type Random, createRandom, shuffled } from '$lib/engine';
import { gradeFigures, pileOf } from '$lib/engine/grading';
import { combinedSdMm, normalMisgrading } from '$lib/engine/grading/misgrading';
import { binsFromPairs } from '$lib/engine/thickness';
import { SEED, slatesOf, sumOfSquares } from './grading-cases.ts';

/** A stock of 2,000 slates of two beds, by the hundredth. */
const bins = binsFromPairs(
  Array.from({ length: 2000 }, (_slate, index) => [
    (index % 5 < 3 ? 520 : 680) + ((index * 37) % 161) - ((index * 53) % 101),
    1
  ])
);
const course = { slates: 21, joints: 20 };
const ground = {
  bins,
  stockSlates: 2000,
  courses: new Array<typeof course>(60).fill(course),
  kickAllowanceMm: 1,
  // So that the piles of every packing hold what their courses need, though they vary.
  reserve: 0.15
};
const thresholdsMm = [6.8, 5.6];
const PACKINGS = 400;

describe('expected kickers of misgraded piles', () => {
  it.each([
    { gaugeMm: 0.1, handMm: 0 },
    { gaugeMm: 0.05, handMm: 0.3 },
    { gaugeMm: 0.2, handMm: 0.6 }
  ])(
    'equal simulated packing and laying: gauge $gaugeMm mm, hand $handMm mm',
    ({ gaugeMm, handMm }) => {
      const chanceAbove = normalMisgrading(combinedSdMm(gaugeMm, handMm));
      const figures = gradeFigures({ ...ground, chanceAbove })(thresholdsMm);
      const sharp = gradeFigures(ground)(thresholdsMm);
      const packings = simulate(
        gaugeMm,
        handMm,
        figures.piles.map(({ courses }) => courses)
      );
      for (const [index, { kickProbability }] of figures.piles.entries())
        expectMean(
          packings.map(({ kickShares }) => kickShares[index]),
          kickProbability
        );
      const kickers = packings.map(({ onRoof }) => onRoof);
      const error = expectMean(kickers, figures.roof?.expectedKickers ?? Number.NaN);
      // Piles taken as sharp would be refuted.
      expect(mean(kickers) - (sharp.roof?.expectedKickers ?? Number.NaN)).toBeGreaterThan(
        10 * error
      );
    }
  );
});

interface Packing {
  /** Of all neighbours in a pile laid out in one row, the share that kicks; thickest pile first. */
  readonly kickShares: readonly number[];
  /** Kickers in the courses of the roof. */
  readonly onRoof: number;
}

/** Sorts the stock by erring gauge and hand, over and over, and lays the piles as they come. */
function simulate(gaugeMm: number, handMm: number, coursesOf: readonly number[]): Packing[] {
  const random = createRandom(SEED);
  const slates = slatesOf(bins);
  return Array.from({ length: PACKINGS }, () => {
    const piles: number[][] = [[], [], []];
    for (const slate of slates) {
      const felt = slate + gaugeMm * normal(random) + handMm * normal(random);
      piles[pileOf(felt, thresholdsMm) - 1].push(slate);
    }
    const rows = piles.map((pile) => shuffled(pile, random));
    return {
      kickShares: rows.map((row) => kickersIn(row) / (row.length - 1)),
      onRoof: rows.reduce((sum, row, index) => sum + kickersOnRoof(row, coursesOf[index]), 0)
    };
  });
}

function kickersOnRoof(row: readonly number[], courses: number): number {
  const { slates } = course;
  expect(row.length).toBeGreaterThanOrEqual(courses * slates);
  let kickers = 0;
  for (let laid = 0; laid < courses; laid++)
    kickers += kickersIn(row.slice(laid * slates, (laid + 1) * slates));
  return kickers;
}

function kickersIn(row: readonly number[]): number {
  let kickers = 0;
  for (let at = 1; at < row.length; at++)
    if (Math.round(100 * Math.abs(row[at] - row[at - 1])) > 100 * ground.kickAllowanceMm) kickers++;
  return kickers;
}

/** A normal error by Box and Muller's polar angle: none of the engine's own. */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Within five standard errors of the simulation's mean; gives the standard error. */
function expectMean(values: readonly number[], expected: number): number {
  const error = Math.sqrt(sumOfSquares(values) / (values.length - 1) / values.length);
  expect(error).toBeGreaterThan(0);
  expect(Math.abs(mean(values) - expected)).toBeLessThan(5 * error);
  return error;
}
