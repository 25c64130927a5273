/**
 * Solves a·x = b for a symmetric positive definite matrix, by Cholesky decomposition.
 * @param a rows, n × n; b length n
 * Source: Golub & Van Loan, Matrix Computations, algorithm 4.2.1.
 */
export function solveSymmetric(a: readonly Float64Array[], b: Float64Array): Float64Array {
  const n = b.length;
  const lower = a.map((row) => Float64Array.from(row));
  for (let column = 0; column < n; column++) {
    for (let row = column; row < n; row++) {
      let value = lower[row]![column]!;
      for (let k = 0; k < column; k++) value -= lower[row]![k]! * lower[column]![k]!;
      lower[row]![column] = row === column ? Math.sqrt(value) : value / lower[column]![column]!;
    }
  }
  const x = Float64Array.from(b);
  for (let row = 0; row < n; row++) {
    for (let k = 0; k < row; k++) x[row]! -= lower[row]![k]! * x[k]!;
    x[row]! /= lower[row]![row]!;
  }
  for (let row = n - 1; row >= 0; row--) {
    for (let k = row + 1; k < n; k++) x[row]! -= lower[k]![row]! * x[k]!;
    x[row]! /= lower[row]![row]!;
  }
  return x;
}
