/**
 * A symmetric positive definite matrix with `reach` diagonals on either side of the main one: row
 * after row, the entries in columns row − reach … row.
 */
export interface BandedMatrix {
  readonly reach: number;
  readonly entries: Float64Array;
}

/** A pivot that is less of its diagonal is rounding, and holds its unknown where it is. */
const LOST = 1e-15;

/**
 * Factors L·D·Lᵀ in place of the matrix: D on the diagonal, L below it.
 * Source: Golub and Van Loan, Matrix Computations, section 4.3, band Cholesky (from memory).
 */
export function factorBanded({ reach, entries }: BandedMatrix): void {
  const width = reach + 1;
  const count = entries.length / width;
  for (let row = 0; row < count; row++) {
    const first = Math.max(0, row - reach);
    const base = row * width + reach - row;
    for (let column = first; column < row; column++) {
      const other = column * width + reach - column;
      let sum = entries[base + column]!;
      for (let at = Math.max(first, column - reach); at < column; at++) {
        sum -= entries[base + at]! * entries[other + at]!;
      }
      entries[base + column] = sum;
    }
    // Until here the row holds L·D; the diagonal takes L·D·L.
    const diagonal = entries[base + row]!;
    let pivot = diagonal;
    for (let at = first; at < row; at++) {
      const scaled = entries[base + at]!;
      const factor = scaled / entries[at * width + reach]!;
      pivot -= scaled * factor;
      entries[base + at] = factor;
    }
    entries[base + row] = pivot > LOST * diagonal ? pivot : Number.POSITIVE_INFINITY;
  }
}

/** Solves with the factors. @param right the right side; becomes the solution */
export function solveFactored(factors: BandedMatrix, right: Float64Array): void {
  solveLower(factors, right);
  solveUpper(factors, right);
}

// A loop a function: of several in one, the later ones throw away what was compiled for the first.

function solveLower({ reach, entries }: BandedMatrix, right: Float64Array): void {
  const width = reach + 1;
  for (let row = 0; row < right.length; row++) {
    const base = row * width + reach - row;
    let sum = right[row]!;
    for (let at = Math.max(0, row - reach); at < row; at++) sum -= entries[base + at]! * right[at]!;
    right[row] = sum;
  }
}

/** The diagonal and the upper half. */
function solveUpper({ reach, entries }: BandedMatrix, right: Float64Array): void {
  const last = right.length - 1;
  for (let row = last; row >= 0; row--) {
    let solved = right[row]! / entries[row * reach + reach + row]!;
    for (let below = Math.min(last, row + reach); below > row; below--) {
      solved -= entries[below * reach + reach + row]! * right[below]!;
    }
    right[row] = solved;
  }
}
