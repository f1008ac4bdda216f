/** Inverse and determinant of the small symmetric matrices of least squares. */

export type Matrix = readonly (readonly number[])[];

/** By Gauss and Jordan's elimination with the largest pivot; a matrix that has no inverse gives a determinant of 0. */
export const inverted = (matrix: Matrix): { readonly inverse: number[][]; readonly determinant: number } => {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  let determinant = 1;
  for (let column = 0; column < size; column++) {
    let best = column;
    for (let row = column + 1; row < size; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
    const pivotRow = rows[best]!;
    if (best !== column) {
      rows[best] = rows[column]!;
      rows[column] = pivotRow;
      determinant = -determinant;
    }
    const pivot = pivotRow[column]!;
    determinant *= pivot;
    if (pivot === 0) break;
    for (let k = 0; k < 2 * size; k++) pivotRow[k]! /= pivot;
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const factor = rows[row]![column]!;
      if (factor !== 0) for (let k = 0; k < 2 * size; k++) rows[row]![k]! -= factor * pivotRow[k]!;
    }
  }
  return { inverse: rows.map((row) => row.slice(size)), determinant };
};

export const times = (matrix: Matrix, vector: readonly number[]): number[] =>
  matrix.map((row) => row.reduce((sum, value, i) => sum + value * vector[i]!, 0));
