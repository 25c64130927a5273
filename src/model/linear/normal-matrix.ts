import type { BandedMatrix } from './banded-matrix.js';
import type { Inequalities } from './inequalities.js';

/** Room for Gᵀ·W·G: as many diagonals as a row reaches over. Columns of a row ascend. */
export function emptyNormalMatrix({ cost, starts, columns }: Inequalities): BandedMatrix {
  let reach = 0;
  for (let row = 0; row + 1 < starts.length; row++) {
    reach = Math.max(reach, columns[starts[row + 1]! - 1]! - columns[starts[row]!]!);
  }
  return { reach, entries: new Float64Array(cost.length * (reach + 1)) };
}

/** Sets the matrix to Gᵀ·W·G. @param weights W, one a row of G */
export function setNormalMatrix(
  { reach, entries }: BandedMatrix,
  { starts, columns, values }: Inequalities,
  weights: Float64Array,
): void {
  entries.fill(0);
  for (let row = 0; row < weights.length; row++) {
    const weight = weights[row]!;
    const first = starts[row]!;
    const end = starts[row + 1]!;
    for (let at = first; at < end; at++) {
      const base = columns[at]! * reach + reach;
      const weighed = weight * values[at]!;
      for (let other = first; other <= at; other++) {
        entries[base + columns[other]!]! += weighed * values[other]!;
      }
    }
  }
}
