import { EngineError, requireFinite } from '../errors.ts';
import { type LikelihoodAt, maximiseConcave } from './maximise-concave.ts';
import { intervalSlopes, logit, probit } from './links.ts';

/** So many observations that share their covariates and fell into one class. */
export interface OrderedRow {
  readonly covariates: readonly number[];
  /** Class, 1 for the lowest. */
  readonly category: number;
  /** Observations, 0 or more. */
  readonly count: number;
}

/** A fitted ordered regression. */
export interface OrderedFit {
  readonly ok: true;
  /** One for each covariate; a positive one moves observations to higher classes. */
  readonly coefficients: readonly number[];
  /** Cuts between classes on the latent scale, rising. */
  readonly cuts: readonly number[];
  /** Covariance of the cuts followed by the coefficients, from the observed information. */
  readonly covariance: readonly (readonly number[])[];
  readonly logLikelihood: number;
  readonly iterations: number;
}

/** A standard error this many times its parameter means that the data put no end to it. */
const BOUNDLESS = 1000;

/**
 * Ordered probit or logit regression by maximum likelihood: how covariates move observations
 * between classes that have an order but no distances.
 *
 * @param rows grouped observations, all with the same number of covariates (which may be 0); not
 * modified
 * @param categories number of classes, at least 2
 * @param link `probit` for normal, `logit` for logistic latent errors
 * @returns cuts ζ and coefficients β of P(class ≤ k) = F(ζₖ − xβ); or `empty-class` with the first
 * class that has no observation, or `not-determined` where the data separate or covariates repeat
 * each other
 *
 * Accuracy: the top of a concave likelihood, to about 1e-9 of a standard error. Covariates should
 * be of the order of 1, and centred where their mean is far from 0. Cost: rows × (classes +
 * covariates) for each of some ten steps.
 *
 * @throws EngineError `wrong-length` for rows of unequal length, `out-of-range` for a class or count
 * outside its range, `not-finite`
 * @example
 * orderedRegression([{ covariates: [], category: 1, count: 30 }, { covariates: [], category: 2, count: 70 }], 2, 'logit');
 * // cuts [log(3/7)] = [−0.8473]
 */
export function orderedRegression(
  rows: readonly OrderedRow[],
  categories: number,
  link: 'probit' | 'logit'
):
  | OrderedFit
  | { readonly ok: false; readonly reason: 'empty-class'; readonly category: number }
  | { readonly ok: false; readonly reason: 'not-determined' } {
  const width = requireRows(rows, categories);
  const totals = new Array<number>(categories).fill(0);
  for (const { category, count } of rows) totals[category - 1] += count;
  const empty = totals.indexOf(0);
  if (empty >= 0) return { ok: false, reason: 'empty-class', category: empty + 1 };

  const start = [...startingCuts(totals), ...new Array<number>(width).fill(0)];
  const shape = link === 'probit' ? probit : logit;
  const likelihood = (parameters: readonly number[]): LikelihoodAt => {
    const size = parameters.length;
    const gradient = new Array<number>(size).fill(0);
    const information = parameters.map(() => new Array<number>(size).fill(0));
    let value = 0;
    for (const { covariates, category, count } of rows) {
      if (count === 0) continue;
      let shift = 0;
      for (let j = 0; j < width; j++) shift += parameters[categories - 1 + j] * covariates[j];
      const lower = category === 1 ? -1 : category - 2;
      const upper = category === categories ? -1 : category - 1;
      const slopes = intervalSlopes(
        shape,
        lower < 0 ? -Infinity : parameters[lower] - shift,
        upper < 0 ? Infinity : parameters[upper] - shift
      );
      if (slopes.value === -Infinity) return { value: -Infinity, gradient, information };
      value += count * slopes.value;
      // ends of the interval: own cut minus Σ β x, so each parameter moves them by 1, −x or 0
      for (let i = 0; i < size; i++) {
        const slopeI = i < categories - 1 ? 0 : -covariates[i - categories + 1];
        const fromI = i === lower ? 1 : slopeI;
        const toI = i === upper ? 1 : slopeI;
        if (fromI === 0 && toI === 0) continue;
        gradient[i] += count * (slopes.atFrom * fromI + slopes.atTo * toI);
        const bentFrom = slopes.fromFrom * fromI + slopes.fromTo * toI;
        const bentTo = slopes.fromTo * fromI + slopes.toTo * toI;
        for (let j = 0; j <= i; j++) {
          const slopeJ = j < categories - 1 ? 0 : -covariates[j - categories + 1];
          const fromJ = j === lower ? 1 : slopeJ;
          const toJ = j === upper ? 1 : slopeJ;
          information[i][j] -= count * (bentFrom * fromJ + bentTo * toJ);
        }
      }
    }
    for (let i = 0; i < size; i++)
      for (let j = 0; j < i; j++) information[j][i] = information[i][j];
    return { value, gradient, information };
  };

  const top = maximiseConcave(start, likelihood);
  if (!top.ok) return top;
  const boundless = top.at.some(
    (parameter, i) => Math.sqrt(top.covariance[i][i]) > BOUNDLESS * (1 + Math.abs(parameter))
  );
  if (boundless) return { ok: false, reason: 'not-determined' };
  return {
    ok: true,
    coefficients: top.at.slice(categories - 1),
    cuts: top.at.slice(0, categories - 1),
    covariance: top.covariance,
    logLikelihood: top.value,
    iterations: top.iterations
  };
}

/** Cuts at the log odds of the running shares: rising, and a fair place to begin for both links. */
function startingCuts(totals: readonly number[]): number[] {
  const all = totals.reduce((sum, total) => sum + total, 0);
  let passed = 0;
  return totals.slice(0, -1).map((total) => {
    passed += total;
    return Math.log(passed / (all - passed)) / 1.7;
  });
}

function requireRows(rows: readonly OrderedRow[], categories: number): number {
  if (!Number.isInteger(categories) || categories < 2)
    throw new EngineError('out-of-range', `${categories} classes; give at least 2`);
  const width = rows.length === 0 ? 0 : rows[0].covariates.length;
  for (const [index, { covariates, category, count }] of rows.entries()) {
    if (covariates.length !== width)
      throw new EngineError(
        'wrong-length',
        `row ${index} has ${covariates.length} covariates, the first ${width}`
      );
    if (!Number.isInteger(category) || category < 1 || category > categories)
      throw new EngineError(
        'out-of-range',
        `row ${index} is in class ${category} of ${categories}`
      );
    requireFinite(count, `count of row ${index}`);
    if (count < 0) throw new EngineError('out-of-range', `row ${index} counts ${count}`);
    for (const covariate of covariates) requireFinite(covariate, `covariate of row ${index}`);
  }
  return width;
}
