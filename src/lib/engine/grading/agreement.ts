import { EngineError, requireFinite, requireWhole } from '../errors.ts';

/**
 * How a sorter's taps and the gauge agree: row by tapped pile, column by the pile that the gauge
 * says, each entry a count of slates checked both ways.
 */
export type AgreementTable = readonly (readonly number[])[];

/**
 * How much each kind of disagreement counts: `equal` (any difference is as bad), `linear` (by the
 * number of piles apart), `quadratic` (by its square), or agreement weights of one's own, 1 for full
 * agreement, row by row.
 */
export type AgreementWeights = 'equal' | 'linear' | 'quadratic' | readonly (readonly number[])[];

export interface Kappa {
  readonly ok: true;
  /** 1 for full agreement, 0 for what chance alone gives, below 0 for worse. */
  readonly kappa: number;
  /** Its standard error, not assuming that kappa is 0. */
  readonly standardError: number;
  /** Weighted share of agreement seen, and that expected by chance. */
  readonly observed: number;
  readonly expected: number;
  /** Slates checked both ways. */
  readonly slates: number;
}

/** No slate was checked both ways, or chance alone would agree fully (all slates in one cell). */
export interface NoKappa {
  readonly ok: false;
  readonly reason: 'too-few' | 'no-variation';
}

/**
 * Counts pairs of tapped and gauged pile into a table.
 *
 * @param pairs tapped pile and gauged pile of each slate checked both ways, 1 for the thickest
 * @param piles how many piles there are, 1 or more
 * @throws EngineError `not-whole`; `out-of-range` for a pile that is not among them
 * @example agreementTable([{ tapped: 1, gauged: 2 }], 2) // [[0, 1], [0, 0]]
 */
export function agreementTable(
  pairs: readonly { readonly tapped: number; readonly gauged: number }[],
  piles: number
): number[][] {
  requireWhole(piles, 1, 'number of piles');
  const table = Array.from({ length: piles }, () => new Array<number>(piles).fill(0));
  for (const { tapped, gauged } of pairs) {
    for (const pile of [tapped, gauged]) {
      requireWhole(pile, 1, 'pile');
      if (pile > piles) throw new EngineError('out-of-range', `pile ${pile} of ${piles}`);
    }
    table[tapped - 1][gauged - 1]++;
  }
  return table;
}

/**
 * Cohen's kappa, weighted: agreement beyond what chance would give.
 *
 * @param table square, counts of 0 or more; not modified
 * @param weights how much each kind of disagreement counts
 * @returns kappa with its standard error; or `too-few` for an empty table, `no-variation` where
 * chance alone agrees fully and kappa has no meaning
 *
 * Definition: kappa = (observed − expected) ÷ (1 − expected) with weighted shares. Standard error
 * after Fleiss, Cohen and Everitt (1969), for large samples and kappa not assumed 0; it is 0 for a
 * table in full agreement. Accuracy: a few units in the last place. Cost: cells of the table.
 *
 * @throws EngineError `wrong-length`, `out-of-range`, `not-finite`
 * Source: J. L. Fleiss, J. Cohen, B. S. Everitt, Psychological Bulletin 72 (1969), from memory;
 * checked against published tables.
 * @example weightedKappa([[88, 14, 18], [10, 40, 10], [2, 6, 12]], 'equal') // 0.4915, SE 0.0510
 */
export function weightedKappa(table: AgreementTable, weights: AgreementWeights): Kappa | NoKappa {
  const slates = requireTable(table);
  if (slates === 0) return { ok: false, reason: 'too-few' };
  const size = table.length;
  const weight = weightMatrix(weights, size);
  const share = table.map((row) => row.map((count) => count / slates));
  const rowShare = share.map((row) => sumOf(row));
  const columnShare = share.map((_row, column) => sumOf(share.map((row) => row[column])));

  const observed = sumOverCells(size, (row, column) => weight[row][column] * share[row][column]);
  const expected = sumOverCells(
    size,
    (row, column) => weight[row][column] * rowShare[row] * columnShare[column]
  );
  const room = 1 - expected;
  if (room <= 1e-12) return { ok: false, reason: 'no-variation' };

  const rowWeight = weight.map((row) => sumOf(row.map((one, column) => one * columnShare[column])));
  const columnWeight = weight.map((_row, column) =>
    sumOf(weight.map((row, index) => row[column] * rowShare[index]))
  );
  const spread = sumOverCells(size, (row, column) => {
    const deviation =
      weight[row][column] * room - (rowWeight[row] + columnWeight[column]) * (1 - observed);
    return share[row][column] * deviation * deviation;
  });
  const centre = observed * expected - 2 * expected + observed;
  return {
    ok: true,
    kappa: (observed - expected) / room,
    standardError: Math.sqrt(Math.max(0, spread - centre * centre) / slates) / (room * room),
    observed,
    expected,
    slates
  };
}

/**
 * Agreement weights from weights of disagreement, 0 for agreement: 1 − weight ÷ the largest. Kappa
 * is the same whichever of the two a source prints.
 *
 * @throws EngineError `out-of-range` where no disagreement has a weight above 0
 */
export function agreementFromDisagreement(
  disagreement: readonly (readonly number[])[]
): number[][] {
  const largest = Math.max(...disagreement.flat());
  if (!(largest > 0)) throw new EngineError('out-of-range', 'no disagreement has a weight above 0');
  return disagreement.map((row) => row.map((weight) => 1 - weight / largest));
}

function weightMatrix(weights: AgreementWeights, size: number): readonly (readonly number[])[] {
  if (typeof weights !== 'string') {
    if (weights.length !== size || weights.some((row) => row.length !== size))
      throw new EngineError('wrong-length', `weights must be ${size} by ${size}, as the table`);
    for (const weight of weights.flat()) requireFinite(weight, 'weight');
    return weights;
  }
  const most = Math.max(1, size - 1);
  const agreement = {
    equal: (apart: number) => (apart === 0 ? 1 : 0),
    linear: (apart: number) => 1 - apart / most,
    quadratic: (apart: number) => 1 - (apart / most) ** 2
  }[weights];
  return Array.from({ length: size }, (_row, row) =>
    Array.from({ length: size }, (_cell, column) => agreement(Math.abs(row - column)))
  );
}

/** Slates in the table; throws unless it is square and holds counts. */
function requireTable(table: AgreementTable): number {
  for (const row of table) {
    if (row.length !== table.length)
      throw new EngineError('wrong-length', `${row.length} columns for ${table.length} rows`);
    for (const count of row) {
      requireFinite(count, 'count');
      if (count < 0) throw new EngineError('out-of-range', `count is ${count}; give 0 or more`);
    }
  }
  return sumOf(table.flat());
}

function sumOverCells(size: number, cell: (row: number, column: number) => number): number {
  let sum = 0;
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) sum += cell(row, column);
  return sum;
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, number) => sum + number, 0);
}
