/** A symmetric matrix as rows; only ever small here (one row for each parameter). */
export type SymmetricMatrix = readonly (readonly number[])[];

/**
 * Inverse of a positive definite matrix, by Cholesky's factor, or null where the matrix is not
 * positive definite to working precision: data that do not determine every parameter.
 *
 * The rows are scaled to a unit diagonal first, so that parameters in unlike units do no harm.
 * Cost: cubic in the rows.
 */
export function invertPositiveDefinite(matrix: SymmetricMatrix): number[][] | null {
  const size = matrix.length;
  const scale = matrix.map((row, index) => 1 / Math.sqrt(row[index]));
  if (!scale.every((value) => Number.isFinite(value) && value > 0)) return null;

  const factor = matrix.map(() => new Array<number>(size).fill(0));
  for (let row = 0; row < size; row++)
    for (let column = 0; column <= row; column++) {
      let rest = matrix[row][column] * scale[row] * scale[column];
      for (let k = 0; k < column; k++) rest -= factor[row][k] * factor[column][k];
      if (row > column) factor[row][column] = rest / factor[column][column];
      else if (rest > 1e-13) factor[row][row] = Math.sqrt(rest);
      else return null;
    }

  const inverse = matrix.map(() => new Array<number>(size).fill(0));
  for (let unit = 0; unit < size; unit++) {
    const solution = new Array<number>(size).fill(0);
    for (let row = 0; row < size; row++) {
      let rest = row === unit ? 1 : 0;
      for (let k = 0; k < row; k++) rest -= factor[row][k] * solution[k];
      solution[row] = rest / factor[row][row];
    }
    for (let row = size - 1; row >= 0; row--) {
      let rest = solution[row];
      for (let k = row + 1; k < size; k++) rest -= factor[k][row] * solution[k];
      solution[row] = rest / factor[row][row];
    }
    for (let row = 0; row < size; row++)
      inverse[row][unit] = solution[row] * scale[row] * scale[unit];
  }
  return inverse;
}

/** Matrix times vector. */
export function times(matrix: SymmetricMatrix, vector: readonly number[]): number[] {
  return matrix.map((row) => dot(row, vector));
}

/** Sum of products. */
export function dot(one: readonly number[], other: readonly number[]): number {
  let sum = 0;
  for (let index = 0; index < one.length; index++) sum += one[index] * other[index];
  return sum;
}
