import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '../random.ts';
import { type SpotCheck, learnHand, logPileChances } from './hand.ts';

/** Spot checks of a hand that cuts at 6.3 and 5.1 mm with a spread of 0.4 mm. */
function simulatedChecks(count: number, seed: number): SpotCheck[] {
  const random = createRandom(seed);
  return Array.from({ length: count }, () => {
    const thicknessMm = Math.round(580 + 90 * randomNormal(random)) / 100;
    const feltMm = thicknessMm + 0.4 * randomNormal(random);
    return { pile: feltMm >= 6.3 ? 1 : feltMm >= 5.1 ? 2 : 3, thicknessMm };
  });
}

const check = (pile: number, thicknessMm: number): SpotCheck => ({ pile, thicknessMm });

describe('learnHand', () => {
  it('says how many checks of which pile are missing', () => {
    expect(learnHand([], 3)).toEqual({ ok: false, reason: 'too-few-checks', missing: [3, 3, 3] });
    expect(learnHand([check(1, 7), check(2, 6), check(2, 6), check(2, 5)], 2)).toEqual({
      ok: false,
      reason: 'too-few-checks',
      missing: [2, 0]
    });
  });

  it('refuses piles and thicknesses that cannot be', () => {
    expect(() => learnHand([check(3, 6)], 2)).toThrow(/out-of-range/);
    expect(() => learnHand([check(0, 6)], 2)).toThrow(/out-of-range/);
    expect(() => learnHand([check(1.5, 6)], 2)).toThrow(/not-whole/);
    expect(() => learnHand([check(1, Number.NaN)], 2)).toThrow(/not-finite/);
    expect(() => learnHand([], 1)).toThrow(/out-of-range/);
  });

  it('gives bounds where no slate was misplaced', () => {
    const checks = [7, 6.8, 6.6].map((x) => check(1, x));
    const thin = [6.1, 5.2, 5].map((x) => check(2, x));
    expect(learnHand(Object.freeze([...checks, ...thin]), 2)).toEqual({
      ok: false,
      reason: 'separated',
      thresholdsBetweenMm: [{ fromMm: 6.1, toMm: 6.6 }]
    });
    // equal thickness on both piles still leaves a spread of 0 possible
    expect(learnHand([...checks, ...thin, check(2, 6.6)], 2)).toEqual({
      ok: false,
      reason: 'separated',
      thresholdsBetweenMm: [{ fromMm: 6.6, toMm: 6.6 }]
    });
  });

  it('refuses a hand that does not follow thickness', () => {
    const either = [4, 5, 6, 7].flatMap((x) => [check(1, x), check(2, x)]);
    expect(learnHand(either, 2)).toEqual({ ok: false, reason: 'not-by-thickness' });
    const reversed = [4, 4.2, 5, 5.6].map((x) => check(1, x));
    const other = [5.1, 6, 6.5, 7].map((x) => check(2, x));
    expect(learnHand([...reversed, ...other], 2)).toEqual({
      ok: false,
      reason: 'not-by-thickness'
    });
  });

  it('agrees with a likelihood searched over a grid', () => {
    const checks = simulatedChecks(120, 11);
    const hand = learnHand(checks, 3);
    if (!hand.ok) throw new Error(hand.reason);
    const logLikelihood = (thresholdsMm: number[], sdMm: number) =>
      checks.reduce(
        (sum, { pile, thicknessMm }) =>
          sum + logPileChances({ thresholdsMm, sdMm }, thicknessMm)[pile - 1],
        0
      );
    const [upper, lower] = hand.thresholdsMm;
    expect(logLikelihood([upper, lower], hand.sdMm)).toBeCloseTo(hand.logLikelihood, 8);
    for (const step of [0.1, 0.01, 0.001])
      for (const [a, b, c] of [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
        [1, 1, 1],
        [1, -1, 0]
      ])
        for (const sign of [step, -step])
          expect(
            logLikelihood([upper + sign * a, lower + sign * b], hand.sdMm + sign * c)
          ).toBeLessThan(hand.logLikelihood);
  });

  it('has standard errors that match the curvature of the likelihood', () => {
    const checks = [5, 5.5, 6, 6.5, 7].flatMap((x, i) => [
      ...new Array<SpotCheck>(2 * i + 1).fill(check(1, x)),
      ...new Array<SpotCheck>(9 - 2 * i).fill(check(2, x))
    ]);
    const hand = learnHand(checks, 2);
    if (!hand.ok) throw new Error(hand.reason);
    const [threshold] = hand.thresholdsMm;
    expect(threshold).toBeCloseTo(6, 10); // the checks mirror each other around 6 mm
    const at = (shift: number) =>
      checks.reduce(
        (sum, { pile, thicknessMm }) =>
          sum +
          logPileChances({ thresholdsMm: [threshold + shift], sdMm: hand.sdMm }, thicknessMm)[
            pile - 1
          ],
        0
      );
    // by symmetry threshold and spread are uncorrelated, so one curvature gives the error
    const curvature = (at(1e-3) - 2 * at(0) + at(-1e-3)) / 1e-6;
    expect(hand.thresholdStandardErrorsMm[0]).toBeCloseTo(1 / Math.sqrt(-curvature), 5);
  });

  it('has standard errors that allow for threshold and spread being learnt together', () => {
    const checks = simulatedChecks(60, 13).map(({ pile, thicknessMm }) =>
      check(pile === 1 ? 1 : 2, thicknessMm)
    );
    const hand = learnHand(checks, 2);
    if (!hand.ok) throw new Error(hand.reason);
    const step = 1e-3;
    const at = (i: number, j: number) =>
      checks.reduce((sum, { pile, thicknessMm }) => {
        const tried = {
          thresholdsMm: [hand.thresholdsMm[0] + i * step],
          sdMm: hand.sdMm + j * step
        };
        return sum + logPileChances(tried, thicknessMm)[pile - 1];
      }, 0);
    const byThreshold = (2 * at(0, 0) - at(1, 0) - at(-1, 0)) / step ** 2;
    const bySpread = (2 * at(0, 0) - at(0, 1) - at(0, -1)) / step ** 2;
    const byBoth = (at(1, -1) + at(-1, 1) - at(1, 1) - at(-1, -1)) / (4 * step ** 2);
    const determinant = byThreshold * bySpread - byBoth ** 2;
    expect(Math.abs(byBoth) / Math.sqrt(byThreshold * bySpread)).toBeGreaterThan(0.1);
    expect(hand.thresholdStandardErrorsMm[0]).toBeCloseTo(Math.sqrt(bySpread / determinant), 4);
    expect(hand.sdStandardErrorMm).toBeCloseTo(Math.sqrt(byThreshold / determinant), 4);
  });

  it('recovers the hand that made the checks within three standard errors', () => {
    const hand = learnHand(simulatedChecks(5000, 12), 3);
    if (!hand.ok) throw new Error(hand.reason);
    expect(Math.abs(hand.thresholdsMm[0] - 6.3)).toBeLessThan(
      3 * hand.thresholdStandardErrorsMm[0]
    );
    expect(Math.abs(hand.thresholdsMm[1] - 5.1)).toBeLessThan(
      3 * hand.thresholdStandardErrorsMm[1]
    );
    expect(Math.abs(hand.sdMm - 0.4)).toBeLessThan(3 * hand.sdStandardErrorMm);
    expect(hand.thresholdStandardErrorsMm[0]).toBeLessThan(0.03);
    expect(hand.checks).toBe(5000);
  });
});

describe('logPileChances', () => {
  it('is a half on a threshold and adds up to one', () => {
    const chances = logPileChances({ thresholdsMm: [6, 5], sdMm: 0.5 }, 6).map(Math.exp);
    expect(chances[0]).toBeCloseTo(0.5, 15);
    expect(chances.reduce((sum, chance) => sum + chance)).toBeCloseTo(1, 14);
  });
});
