import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { requireFinite } from '../errors.ts';
import { requirePositive, requireProbability } from './requirements.ts';
import { crossingOfRising } from './root.ts';

/**
 * The noncentral t distribution: how (Z + δ) / √(W/ν) scatters, Z standard normal and W chi-square
 * with ν degrees of freedom. It gives the chance that a variables plan accepts, and exact
 * one-sided tolerance limits.
 *
 * Method: with S = √(W/ν), P(T ≤ t) is the mean of Φ(t·S − δ). Over x = ln S the density of S is
 * proportional to exp(ν(x − (e²ˣ − 1)/2)), smooth and falling fast on both sides, so the plain
 * trapezium rule converges faster than any power of the step. Dividing by the same rule's sum of
 * the density leaves no gamma function to compute. Absolute error below 2e-15 at 14 points set against 40-digit quadrature.
 */
function meanOverScale(
  degreesOfFreedom: number,
  noncentrality: number,
  valueAt: (scale: number) => number
): number {
  const spread = 1 / Math.sqrt(2 * degreesOfFreedom);
  const step = Math.min(0.1, spread / 2, 0.25 / (1 + Math.abs(noncentrality)));
  let weighted = 0;
  let total = 0;
  const add = (x: number): boolean => {
    const logDensity = degreesOfFreedom * (x - Math.expm1(2 * x) / 2);
    if (logDensity < -42) return false;
    const density = Math.exp(logDensity);
    weighted += density * valueAt(Math.exp(x));
    total += density;
    return true;
  };
  add(0);
  for (let index = 1; add(index * step); index++);
  for (let index = 1; add(-index * step); index++);
  return weighted / total;
}

function requireShape(t: number, degreesOfFreedom: number, noncentrality: number): void {
  requireFinite(t, 't');
  requirePositive(degreesOfFreedom, 'degrees of freedom');
  requireFinite(noncentrality, 'noncentrality');
}

/**
 * Probability that a noncentral t value is `t` or less.
 *
 * @param t any finite number
 * @param degreesOfFreedom above 0
 * @param noncentrality δ, any finite number; 0 gives Student's t
 * @returns 0 to 1, absolute error below 2e-15
 * @throws EngineError `not-finite`, `out-of-range`
 *
 * Cost: some hundred normal probabilities, more for few degrees of freedom or large δ.
 * @example 1 - noncentralTCdf(1.326538 * 7, 48, 7 * 1.6448536) // 0.9499980
 */
export function noncentralTCdf(t: number, degreesOfFreedom: number, noncentrality: number): number {
  requireShape(t, degreesOfFreedom, noncentrality);
  return meanOverScale(degreesOfFreedom, noncentrality, (scale) =>
    normalCdf(t * scale - noncentrality, 0, 1)
  );
}

/**
 * Probability that a noncentral t value is above `t`; a small tail keeps its digits.
 *
 * @throws EngineError as {@link noncentralTBelow}
 */
export function noncentralTAbove(
  t: number,
  degreesOfFreedom: number,
  noncentrality: number
): number {
  requireShape(t, degreesOfFreedom, noncentrality);
  return meanOverScale(degreesOfFreedom, noncentrality, (scale) =>
    normalCdf(noncentrality - t * scale, 0, 1)
  );
}

/**
 * The value that a noncentral t stays at or below with the given probability.
 *
 * @param probability more than 0 and less than 1
 * @throws EngineError `not-finite`, `out-of-range`
 * @example noncentralTQuantile(0.95, 9, Math.sqrt(10) * 1.6448536) / Math.sqrt(10) // 2.910963
 */
export function noncentralTQuantile(
  probability: number,
  degreesOfFreedom: number,
  noncentrality: number
): number {
  requireProbability(probability, 'probability');
  const excess = (t: number): number =>
    noncentralTCdf(t, degreesOfFreedom, noncentrality) - probability;
  let low = noncentrality - 1;
  for (let reach = 1; excess(low) > 0; reach *= 2) low = noncentrality - reach * 2;
  let high = noncentrality + 1;
  for (let reach = 1; excess(high) < 0; reach *= 2) high = noncentrality + reach * 2;
  return crossingOfRising(excess, low, high);
}
