import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { gradeFigures, crossValidationRound, suitTheRoof } from '$lib/engine/grading';
import { type ThicknessBins, binsFromPairs, mergeBins } from '$lib/engine/thickness';

const COURSES = Array.from({ length: 72 }, () => ({ slates: 50, joints: 49 }));
const ROOF = { stockSlates: 4038, courses: COURSES, kickAllowanceMm: 1.5, reserve: 0.045 };
const ROUNDS = 3;

/** Six pallets of 673 slates, their means 0.5 mm apart and their slates log-normal about them. */
function delivery(seed: number): number[][] {
  const random = createRandom(seed);
  return Array.from({ length: 6 }, () => {
    const meanMm = 6 + 0.5 * randomNormal(random);
    return Array.from({ length: 673 }, () =>
      Math.min(
        2000,
        Math.max(150, Math.round(100 * meanMm * Math.exp(0.095 * randomNormal(random))))
      )
    );
  });
}

const binsOf = (hundredths: readonly number[]): ThicknessBins =>
  binsFromPairs(hundredths.map((value) => [value, 1] as const));

function suited(bins: ThicknessBins): readonly number[] | undefined {
  const cut = suitTheRoof({ ...ROOF, bins, piles: 3 });
  return cut.ok ? cut.thresholdsMm : undefined;
}

const per100 = (bins: ThicknessBins, thresholdsMm: readonly number[]): number =>
  gradeFigures({ ...ROOF, bins })(thresholdsMm).roof?.expectedKickersPer100Joints ?? NaN;

describe('slates held out', () => {
  // Figures by simulation: the stock is known here, so what the boundaries really come to is too.
  it('tell what boundaries fitted to 400 readings come to on the stock, where the fit tells nearly 0', () => {
    let [fitted, told, real] = [0, 0, 0];
    const deliveries = 24;
    for (let at = 0; at < deliveries; at++) {
      const stock = delivery(500 + at);
      const pallets = stock.map((slates) => ({ slates: 673, bins: binsOf(slates.slice(0, 67)) }));
      const sample = mergeBins(pallets.map(({ bins }) => bins));
      const thresholdsMm = suited(sample);
      if (!thresholdsMm) throw new Error('this stock can be cut');
      fitted += per100(sample, thresholdsMm) / deliveries;
      real += per100(binsOf(stock.flat()), thresholdsMm) / deliveries;
      const random = createRandom(at);
      for (let round = 0; round < ROUNDS; round++)
        told +=
          (crossValidationRound(ROOF, pallets, [suited], random)[0] ?? NaN) / ROUNDS / deliveries;
    }
    expect(fitted).toBeLessThan(real / 2);
    expect(told).toBeGreaterThan(0.6 * real);
    expect(told).toBeLessThan(1.6 * real);
  });
});
