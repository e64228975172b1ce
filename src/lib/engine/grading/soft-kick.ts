import { EngineError, requireFinite } from '../errors.ts';
import { toHundredths } from '../units.ts';

/**
 * How far the step that stands up on the roof scatters about the difference of two thicknesses. Each
 * slate is taken for its mean thickness; on the roof its edge at the joint is a little thicker or
 * thinner, and what it lies on tilts it. Left out everywhere, a joint kicks exactly where the
 * thicknesses differ by more than the kick allowance: the limit for scatter 0.
 */
export interface KickSoftness {
  /** Variance of the step that is the same on every pile, mm². */
  readonly varianceMm2: number;
  /** What of the pile's own variance of thickness comes on top, 0 or more. */
  readonly pileShare: number;
}

/** Taper of a slate from left to right where nobody measured it: our value, its SD in mm. */
export const ASSUMED_TAPER_SD_MM = 0.3;

/** Shares of a pile's variance and of the taper's that reach a step by way of the slates below. */
const VARIANCE_FROM_BELOW = 0.63;
const TAPER_FROM_BELOW = 0.4;

/**
 * The scatter of the step at a joint, from what makes it.
 *
 * @param taperSdMm SD of a slate's taper from left to right at the line it bears on, mm
 * @param gaugeSdMm SD of a reading about the slate's thickness, mm
 * @param leverage (gauge + headlap) ÷ length of the slate, 0 to 1: how much of what lies under its
 * tail a slate hands on to where the next course bears
 *
 * Definition: s² = taper²/2 + 2 gauge² + leverage² (0.63 σ² + 0.4 taper²), σ² the pile's variance. The
 * first two are two half tapers and two readings; the last is how differently two neighbours are
 * borne by the slates below, found with rigid slates in double lap
 * (`tests/properties/soft-kick.test.ts`).
 *
 * @throws EngineError `out-of-range`, `not-finite`
 * @example
 * kickSoftness(0.3, 0, 0.57).varianceMm2; // 0.0567
 */
export function kickSoftness(taperSdMm: number, gaugeSdMm: number, leverage: number): KickSoftness {
  for (const [value, name] of [
    [taperSdMm, 'SD of taper'],
    [gaugeSdMm, 'SD of the gauge'],
    [leverage, 'leverage']
  ] as const) {
    requireFinite(value, name);
    if (value < 0) throw new EngineError('out-of-range', `${name} is ${value}; give 0 or more`);
  }
  return {
    varianceMm2: taperSdMm ** 2 * (1 / 2 + TAPER_FROM_BELOW * leverage ** 2) + 2 * gaugeSdMm ** 2,
    pileShare: VARIANCE_FROM_BELOW * leverage ** 2
  };
}

/**
 * SD of the step at a joint between slates of a pile of this variance, mm. To a thousandth, far finer
 * than anybody knows it, so that piles share their chances by step.
 */
export function stepSdMm(softness: KickSoftness, pileVarianceMm2: number): number {
  const sdMm = Math.sqrt(softness.varianceMm2 + softness.pileShare * pileVarianceMm2);
  return Math.round(1000 * sdMm) / 1000;
}

/**
 * The chance that a joint kicks whose slates differ by d hundredths of a millimetre, for d from 0 to
 * `most`: K(d) = Φ((d − τ)/s) + Φ((−d − τ)/s), with τ the kick allowance. With s = 0 the plain rule:
 * 1 above the allowance, 0 up to and with it.
 *
 * Accuracy: 1e-10. Cost: linear in `most`.
 *
 * @throws EngineError `out-of-range` for a negative allowance, `not-finite`
 */
export function kickBySteps(kickAllowanceMm: number, sdMm: number, most: number): Float64Array {
  const chances = new Float64Array(most + 1);
  const allowance = toHundredths(kickAllowanceMm);
  if (allowance < 0)
    throw new EngineError(
      'out-of-range',
      `kick allowance is ${kickAllowanceMm} mm; give 0 or more`
    );
  for (let step = 0; step <= most; step++)
    chances[step] =
      sdMm === 0
        ? Number(step > allowance)
        : normalBelow((step - allowance) / 100 / sdMm) +
          normalBelow((-step - allowance) / 100 / sdMm);
  return chances;
}

const KNOTS_A_UNIT = 100;
const FARTHEST = 8;

/** Φ and φ at steps of 0.01 from −8 to 8, by Simpson's rule from −8. */
const knots = (() => {
  const count = 2 * FARTHEST * KNOTS_A_UNIT + 1;
  const below = new Float64Array(count);
  const density = new Float64Array(count);
  const phi = (z: number) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  const width = 1 / KNOTS_A_UNIT;
  density[0] = phi(-FARTHEST);
  for (let knot = 1; knot < count; knot++) {
    const z = -FARTHEST + knot * width;
    density[knot] = phi(z);
    below[knot] =
      below[knot - 1] + (width / 6) * (density[knot - 1] + 4 * phi(z - width / 2) + density[knot]);
  }
  return { below, density };
})();

/** The standard normal distribution, by cubic Hermite between knots; 0 or 1 beyond 8. */
export function normalBelow(z: number): number {
  if (z <= -FARTHEST) return 0;
  if (z >= FARTHEST) return 1;
  const at = (z + FARTHEST) * KNOTS_A_UNIT;
  const knot = Math.min(Math.floor(at), knots.below.length - 2);
  const t = at - knot;
  const [low, high] = [knots.below[knot], knots.below[knot + 1]];
  const [rise, fall] = [knots.density[knot] / KNOTS_A_UNIT, knots.density[knot + 1] / KNOTS_A_UNIT];
  return (
    low +
    t * (rise + t * (3 * (high - low) - 2 * rise - fall + t * (2 * (low - high) + rise + fall)))
  );
}
