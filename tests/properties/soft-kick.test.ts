import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import { createRandom } from '$lib/engine';
import { kickChances } from '$lib/engine/courses';
import {
  type KickSoftness,
  gradeFigures,
  kickProbabilityWithin,
  kickSoftness,
  naturalBreaks,
  splitIntoPiles,
  suitTheRoof
} from '$lib/engine/grading';
import { type ThicknessBins, binsFromPairs, totalCount } from '$lib/engine/thickness';
import {
  ACROSS,
  COURSES,
  LEVERAGE,
  type RigidSlate,
  kicksOfRows,
  rigidStock,
  rowsOf
} from '../support/rigid-slates.ts';
import { report, rounds } from '../support/rounds.ts';

const ALLOWANCE_MM = 1.5;

function binsOfSlates(slates: readonly RigidSlate[]): ThicknessBins {
  return binsFromPairs(slates.map(({ thicknessMm }) => [Math.round(100 * thicknessMm), 1]));
}

/** Kickers per 100 joints as told and as laid, over all piles of a stock. */
function toldAndTrue(piles: number, taperSdMm: number, seed: number) {
  const random = createRandom(seed);
  const slates = rigidStock(12_000, 0.9, taperSdMm, random);
  const bins = binsOfSlates(slates);
  const cut = naturalBreaks(bins, piles);
  if (!cut.ok) throw new Error(cut.reason);
  const softness = kickSoftness(taperSdMm, 0, LEVERAGE);
  let [told, plain, laid] = [0, 0, 0];
  const bounds = [Infinity, ...cut.thresholdsMm, -Infinity];
  for (let pile = 0; pile < piles; pile++) {
    const own = slates.filter(
      ({ thicknessMm }) => thicknessMm < bounds[pile] && thicknessMm >= bounds[pile + 1]
    );
    const share = own.length / slates.length;
    told += 100 * share * kickProbabilityWithin(binsOfSlates(own), ALLOWANCE_MM, softness);
    plain += 100 * share * kickProbabilityWithin(binsOfSlates(own), ALLOWANCE_MM);
    const times = rounds(6, 30);
    const need = COURSES * ACROSS;
    for (let time = 0; time < times; time++) {
      // as many slates as the roof takes, drawn again where a pile has fewer
      const drawn = Array.from({ length: need }, () => own[Math.floor(random() * own.length)]);
      laid += (share * kicksOfRows(rowsOf(drawn, random), ALLOWANCE_MM)) / times;
    }
  }
  return { told, plain, laid };
}

/** Prints a row of what was told and laid, kickers in 100 joints. */
function tellRow(row: { piles: number; taper: number; told: number; plain: number; laid: number }) {
  const { piles, taper, told, plain, laid } = row;
  report(`soft kick, ${piles} piles, taper SD ${taper} mm`, {
    laid: laid.toFixed(2),
    told: told.toFixed(2),
    ratio: (told / laid).toFixed(2),
    'plain rule': plain.toFixed(2)
  });
}

describe('the soft kick, held to rigid slates in double lap', () => {
  it('tells within 20 % what is laid, for 1 to 4 piles at a taper of 0.3 to 0.5 mm', () => {
    const rows = [1, 2, 3, 4].flatMap((piles) =>
      [0.3, 0.4, 0.5].map((taper) => ({ piles, taper, ...toldAndTrue(piles, taper, 7 + piles) }))
    );
    for (const { piles, taper, told, plain, laid } of rows) {
      tellRow({ piles, taper, told, plain, laid });
      expect(told / laid, `${piles} piles, taper ${taper}`).toBeGreaterThan(0.8);
      expect(told / laid, `${piles} piles, taper ${taper}`).toBeLessThan(1.2);
    }
  });

  it('is told beyond: more piles, less and more taper', () => {
    for (const [piles, taper] of [
      [3, 0],
      [3, 0.2],
      [3, 0.8],
      [6, 0.3],
      [6, 0.5],
      [8, 0.5]
    ]) {
      const { told, plain, laid } = toldAndTrue(piles, taper, 70 + piles);
      tellRow({ piles, taper, told, plain, laid });
      // never worse than the plain rule tells it
      expect(Math.abs(told - laid)).toBeLessThanOrEqual(Math.abs(plain - laid) + 0.01);
    }
  });

  it('where the plain rule tells next to nothing, of narrow piles', () => {
    const { told, plain, laid } = toldAndTrue(4, 0.4, 3);
    expect(plain).toBeLessThan(laid / 2);
    expect(Math.abs(told - laid)).toBeLessThan(Math.abs(plain - laid));
  });
});

describe('the soft kick and the plain rule', () => {
  const random = createRandom(5);
  const bins = binsOfSlates(rigidStock(400, 0.9, 0, random));
  const nothing: KickSoftness = { varianceMm2: 0, pileShare: 0 };

  it('agree to the last digit where nothing scatters, and in the limit', () => {
    const plain = kickProbabilityWithin(bins, ALLOWANCE_MM);
    expect(kickProbabilityWithin(bins, ALLOWANCE_MM, nothing)).toBeCloseTo(plain, 14);
    // steps of whole hundredths are decided by 0.005 mm or more, but for those at the allowance
    const near = kickProbabilityWithin(bins, ALLOWANCE_MM + 0.004, {
      varianceMm2: 1e-10,
      pileShare: 0
    });
    expect(near).toBeCloseTo(plain, 2);
    const [thick, thin] = splitIntoPiles(bins, [6.2]);
    const [soft, hard] = [nothing, undefined].map((softness) =>
      kickChances([thick, thin], ALLOWANCE_MM, undefined, softness)
    );
    expect(soft.between[0][1]).toBeCloseTo(hard.between[0][1], 14);
  });

  it('is the sum over all pairs of readings of their chance', () => {
    const softness = kickSoftness(0.4, 0.05, LEVERAGE);
    const few = binsFromPairs([
      [500, 2],
      [560, 1],
      [640, 3],
      [655, 1]
    ]);
    const mm = [5, 5, 5.6, 6.4, 6.4, 6.4, 6.55];
    const mean = mm.reduce((sum, value) => sum + value, 0) / mm.length;
    const variance = mm.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (mm.length - 1);
    const below = LEVERAGE ** 2 * (0.63 * variance + 0.4 * 0.4 ** 2);
    const s = Math.round(1000 * Math.sqrt(0.4 ** 2 / 2 + 2 * 0.05 ** 2 + below)) / 1000;
    let sum = 0;
    for (const [at, one] of mm.entries())
      for (const [other, two] of mm.entries())
        if (at !== other)
          sum +=
            normalCdf((one - two - ALLOWANCE_MM) / s, 0, 1) +
            normalCdf((two - one - ALLOWANCE_MM) / s, 0, 1);
    const expected = sum / (mm.length * (mm.length - 1));
    expect(kickProbabilityWithin(few, ALLOWANCE_MM, softness)).toBeCloseTo(expected, 9);
  });

  it('suits the roof by the same chances as the figures tell', () => {
    const softness = kickSoftness(0.4, 0.05, LEVERAGE);
    const courses = Array.from({ length: 12 }, () => ({ slates: 30, joints: 29 }));
    const roof = { bins, stockSlates: 400, courses, kickAllowanceMm: 0.8, softness };
    for (const piles of [1, 2, 4]) {
      const suited = suitTheRoof({ ...roof, piles });
      if (!suited.ok || suited.status === 'short') throw new Error('the roof can be laid');
      const figures = gradeFigures(roof)(suited.thresholdsMm);
      expect(figures.roof!.expectedKickers).toBeCloseTo(suited.expectedKickers, 9);
      expect(totalCount(bins)).toBe(400);
    }
  });

  it('in perfect order leaves what taper makes, and no less', () => {
    const softness = kickSoftness(0.5, 0, LEVERAGE);
    const courses = [{ slates: 400, joints: 399 }];
    const ground = { bins, stockSlates: 400, courses, kickAllowanceMm: 0.5 };
    const s = Math.round(1000 * Math.sqrt(0.25 * (0.5 + 0.4 * LEVERAGE ** 2))) / 1000;
    const alone = 2 * normalCdf(-0.5 / s, 0, 1);
    const soft = gradeFigures({ ...ground, softness })([]).perfectOrder;
    expect(soft.expectedKickersPer100Joints).toBeGreaterThanOrEqual(100 * alone - 1e-9);
    expect(soft.expectedKickersPer100Joints).toBeLessThan(100 * alone * 1.1);
  });
});
